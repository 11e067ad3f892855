import { Field, Select } from '@fluentui/react-components'
import { useMemo, useState, type ReactElement } from 'react'
import type { ExchangeType } from '../../src/arithmetic/exchange'
import { barDrawing, barInWords } from '../../src/lesson/drawings'
import { storyHandout } from '../../src/lesson/starterSheets'
import { drawStories, storyTypes, type Story, type StoryWish } from '../../src/lesson/stories/story'
import { operationOf } from '../../src/lesson/words'
import { withAnswer } from '../../src/lesson/worked'
import { Card } from '../common/Card'
import { SetNumber } from '../set/SetNumber'
import { CountField } from './CountField'
import { LessonDrawing } from './LessonDrawing'
import { Take } from './Take'
import { useSetNumber } from './useSetNumber'

type StoryType = StoryWish['types'][0]

const DIGITS = [2, 3, 4] as const
const MOST_STORIES = 8
const STEPS = ['First step', 'Second step'] as const

/** Two-step stories, their answers and bar models folded away. */
export function Stories(): ReactElement {
  const draw = useSetNumber()
  const [digits, setDigits] = useState<StoryWish['digits']>(3)
  const [count, setCount] = useState(2)
  const [chosen, setChosen] = useState<StoryWish['types']>(['any', 'any'])
  const possible = useMemo(() => [storyTypes(digits, 0), storyTypes(digits, 1)] as const, [digits])
  const [first, second] = [allowed(chosen[0], possible[0]), allowed(chosen[1], possible[1])]
  const reading = useMemo(
    () => drawStories({ types: [first, second], digits, seed: draw.set }, count),
    [first, second, digits, draw.set, count],
  )
  const stories = 'stories' in reading ? reading.stories : null
  const handout = useMemo(() => stories && storyHandout(stories, draw.set), [stories, draw.set])
  return (
    <>
      <Card title="The stories">
        <div className="recipe">
          <div className="halves">
            <Field label="Digits">
              <Select
                value={String(digits)}
                onChange={(_, { value }) => {
                  setDigits(DIGITS.find((each) => String(each) === value) ?? 3)
                }}
              >
                {DIGITS.map((each) => (
                  <option key={each} value={each}>
                    up to {each}
                  </option>
                ))}
              </Select>
            </Field>
            <CountField label="How many" least={1} most={MOST_STORIES} value={count} onChoose={setCount} />
          </div>
          <TypeField
            label={STEPS[0]}
            value={first}
            types={possible[0]}
            onChoose={(type) => {
              setChosen([type, second])
            }}
          />
          <TypeField
            label={STEPS[1]}
            value={second}
            types={possible[1]}
            onChoose={(type) => {
              setChosen([first, type])
            }}
          />
        </div>
        <SetNumber {...draw.field} />
        {'problem' in reading && (
          <p className="no-set" role="alert">
            <strong>! No story.</strong> {reading.problem}
          </p>
        )}
        {stories?.map((story, index) => (
          <Told key={`${draw.set} ${story.template} ${index}`} story={story} name={`Story ${index + 1}`} />
        ))}
      </Card>
      <Take handout={handout} />
    </>
  )
}

function allowed(type: StoryType, possible: readonly ExchangeType[]): StoryType {
  return possible.some((each) => each === type) ? type : 'any'
}

function TypeField(props: {
  readonly label: string
  readonly value: StoryType
  readonly types: readonly ExchangeType[]
  readonly onChoose: (type: StoryType) => void
}) {
  const { label, value, types, onChoose } = props
  return (
    <Field label={label}>
      <Select
        value={value}
        onChange={(_, choice) => {
          onChoose(types.find((type) => type === choice.value) ?? 'any')
        }}
      >
        <option value="any">Addition or subtraction, any type</option>
        {(['add', 'subtract'] as const).map((operation) => (
          <optgroup key={operation} label={operation === 'add' ? 'Addition' : 'Subtraction'}>
            {types
              .filter((type) => operationOf(type) === operation)
              .map((type) => (
                <option key={type} value={type}>
                  {type}
                </option>
              ))}
          </optgroup>
        ))}
      </Select>
    </Field>
  )
}

function Told({ story, name }: { readonly story: Story; readonly name: string }) {
  const { text, steps, answer, bars } = story
  return (
    <section className="piece">
      <h3>{name}</h3>
      <p>{text}</p>
      <details>
        <summary>Answer to {name}</summary>
        {steps.map((step, index) => (
          <div key={index}>
            <p>
              {STEPS[index]}: <span className="sum">{withAnswer(step)}</span>
            </p>
            {bars.slice(index, index + 1).map((bar) => (
              <LessonDrawing key={index} drawing={barDrawing(bar, true)} words={barInWords(bar, true)} />
            ))}
          </div>
        ))}
        <p>{answer}</p>
      </details>
    </section>
  )
}
