import { Button, Field, Select } from '@fluentui/react-components'
import { useMemo, useState, type ReactElement } from 'react'
import type { ExchangeType } from '../../src/arithmetic/exchange'
import { barDrawing, barInWords } from '../../src/lesson/drawings'
import { storyHandout, type BarHelp } from '../../src/lesson/starterSheets'
import { drawStories, storyTypes, wishFor, type Story, type StoryWish } from '../../src/lesson/stories/story'
import { operationOf } from '../../src/lesson/words'
import { withAnswer } from '../../src/lesson/worked'
import { Card } from '../common/Card'
import { ChoiceField } from '../common/ChoiceField'
import { useStore } from '../common/pane'
import { SetNumber } from '../set/SetNumber'
import { CountField } from './CountField'
import { OBJECTIVE } from './objective'
import { LessonDrawing } from './LessonDrawing'
import { Take } from './Take'
import { useSetNumber } from './useSetNumber'

type StoryType = StoryWish['types'][0]
type Numbers = NonNullable<StoryWish['numbers']>

const NUMBERS: readonly (readonly [Numbers, string])[] = [
  ['whole', 'Whole numbers'],
  ['money', 'Pounds and pence'],
  ['measures', 'kg, m and l, one decimal place'],
]

/** The longest starting numbers to choose from. */
const LENGTHS: Readonly<Record<Numbers, readonly (readonly [StoryWish['digits'], string])[]>> = {
  whole: [
    [2, 'up to 99'],
    [3, 'up to 999'],
    [4, 'up to 9,999'],
  ],
  money: [
    [3, 'up to £9.99'],
    [4, 'up to £99.99'],
  ],
  measures: [
    [2, 'up to 9.9'],
    [3, 'up to 99.9'],
  ],
}

const HELP: readonly (readonly [BarHelp, string])[] = [
  ['given', 'With the numbers'],
  ['blank', 'Empty, to fill in'],
  ['none', 'No bars'],
]

const MOST_STORIES = 8
const STEPS = ['First step', 'Second step'] as const

/** Two-step stories that suit the lesson's objective unless chosen otherwise, their answers and bar models folded away. */
export function Stories(): ReactElement {
  const draw = useSetNumber()
  const { recipe } = useStore(OBJECTIVE)
  const [wish, setWish] = useState(() => wishFor(recipe))
  const [count, setCount] = useState(2)
  const [help, setHelp] = useState<BarHelp>('given')
  const { numbers } = wish
  const lengths = LENGTHS[numbers]
  const digits = lengths.find(([each]) => each === wish.digits)?.[0] ?? lengths.at(-1)?.[0] ?? 3
  const possible = useMemo(
    () => [storyTypes(digits, 0, numbers), storyTypes(digits, 1, numbers)] as const,
    [digits, numbers],
  )
  const [first, second] = [allowed(wish.types[0], possible[0]), allowed(wish.types[1], possible[1])]
  const reading = useMemo(
    () => drawStories({ numbers, types: [first, second], digits, seed: draw.set }, count),
    [numbers, first, second, digits, draw.set, count],
  )
  const stories = 'stories' in reading ? reading.stories : null
  const handout = useMemo(() => stories && storyHandout(stories, draw.set, help), [stories, draw.set, help])
  return (
    <>
      <Card title="The stories">
        <div className="recipe">
          <ChoiceField
            label="Numbers"
            value={numbers}
            options={NUMBERS}
            onChoose={(chosen) => {
              setWish({ ...wish, numbers: chosen })
            }}
          />
          <div className="halves">
            <ChoiceField
              label="Size"
              value={digits}
              options={lengths}
              onChoose={(chosen) => {
                setWish({ ...wish, digits: chosen })
              }}
            />
            <CountField label="How many" least={1} most={MOST_STORIES} value={count} onChoose={setCount} />
          </div>
          <TypeField
            label={STEPS[0]}
            value={first}
            types={possible[0]}
            onChoose={(type) => {
              setWish({ ...wish, types: [type, second] })
            }}
          />
          <TypeField
            label={STEPS[1]}
            value={second}
            types={possible[1]}
            onChoose={(type) => {
              setWish({ ...wish, types: [first, type] })
            }}
          />
          <ChoiceField label="Bars on the sheet" value={help} options={HELP} onChoose={setHelp} />
          <Button
            size="small"
            onClick={() => {
              setWish(wishFor(recipe))
            }}
          >
            As the lesson’s objective
          </Button>
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
              <LessonDrawing key={index} drawing={barDrawing(bar, 'all')} words={barInWords(bar, 'all')} />
            ))}
          </div>
        ))}
        <p>{answer}</p>
      </details>
    </section>
  )
}
