import { Field, Input, Select } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { aimsFor, WISH_COUNT, type Aim, type Wish } from '../../src/items/wish'
import { Card } from '../common/Card'
import { FORMS, MOST_DIGITS, TOPICS_BY_YEAR, wishOf, type Choices, type FormId } from './choices'

interface Parts {
  readonly choices: Choices
  readonly onChoose: (change: Partial<Choices>) => void
}

const OWN = 'own'
const DIGITS = Array.from({ length: MOST_DIGITS }, (_, index) => index + 1)

/** What kind of set it is to be, in plain words: operation, how many, numbers, and which questions. */
export function RecipeCard({ choices, onChoose }: Parts): ReactElement {
  const aims = aimsFor(wishOf(choices))
  const several = aims.filter(({ aim }) => isSeveral(aim))
  const single = aims.filter(({ aim }) => !isSeveral(aim))
  const objective = aims.find(({ aim }) => aim === choices.aim)?.objective ?? ''
  return (
    <Card title="What to set">
      <div className="recipe">
        <div className="pair">
          <Field label="Operation">
            <Select
              value={choices.operation}
              onChange={(_, { value }) => {
                onChoose({ operation: value as Wish['operation'] })
              }}
            >
              <option value="subtract">Subtraction</option>
              <option value="add">Addition</option>
              <option value="both">Both, in turn</option>
            </Select>
          </Field>
          <Field label="How many">
            <Input
              type="number"
              min={WISH_COUNT.least}
              max={WISH_COUNT.most}
              value={Number.isNaN(choices.count) ? '' : String(choices.count)}
              onChange={(_, { value }) => {
                onChoose({ count: value === '' ? NaN : Number(value) })
              }}
            />
          </Field>
        </div>
        <Field label="Numbers">
          <Select
            value={choices.topic === null ? OWN : String(choices.topic)}
            onChange={(_, { value }) => {
              onChoose({ topic: value === OWN ? null : Number(value) })
            }}
          >
            {TOPICS_BY_YEAR.map(({ year, topics }) => (
              <optgroup key={year} label={`Year ${year}`}>
                {topics.map(({ index, topic }) => (
                  <option key={index} value={index}>
                    {topic}
                  </option>
                ))}
              </optgroup>
            ))}
            <option value={OWN}>My own choice of numbers</option>
          </Select>
        </Field>
        {choices.topic === null && <OwnNumbersFields choices={choices} onChoose={onChoose} />}
        <Field label="Questions">
          <Select
            value={choices.aim}
            onChange={(_, { value }) => {
              onChoose({ aim: value as Aim })
            }}
          >
            {several.map(({ aim, name }) => (
              <option key={aim} value={aim}>
                {name}
              </option>
            ))}
            {single.length > 0 && (
              <optgroup label="All of one type">
                {single.map(({ aim, name }) => (
                  <option key={aim} value={aim}>
                    {name}
                  </option>
                ))}
              </optgroup>
            )}
          </Select>
        </Field>
        {objective !== '' && <p className="quiet">“{objective}”</p>}
      </div>
    </Card>
  )
}

const isSeveral = (aim: Aim) => aim === 'graded' || aim === 'mixed' || aim === 'why'

function OwnNumbersFields({ choices, onChoose }: Parts) {
  return (
    <>
      <Field label="Written as">
        <Select
          value={choices.form}
          onChange={(_, { value }) => {
            onChoose({ form: value as FormId })
          }}
        >
          {FORMS.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Select>
      </Field>
      <div className="halves">
        <DigitsField
          label="Top digits"
          value={choices.topDigits}
          onChange={(topDigits) => {
            onChoose({ topDigits })
          }}
        />
        <DigitsField
          label="Bottom digits"
          value={choices.bottomDigits}
          onChange={(bottomDigits) => {
            onChoose({ bottomDigits })
          }}
        />
      </div>
      <p className="quiet">Digits before the point.</p>
    </>
  )
}

function DigitsField(props: {
  readonly label: string
  readonly value: number
  readonly onChange: (digits: number) => void
}) {
  const { label, value, onChange } = props
  return (
    <Field label={label}>
      <Select
        value={String(value)}
        onChange={(_, chosen) => {
          onChange(Number(chosen.value))
        }}
      >
        {DIGITS.map((digits) => (
          <option key={digits} value={digits}>
            {digits}
          </option>
        ))}
      </Select>
    </Field>
  )
}
