import { Field, Radio, RadioGroup } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { addressOf } from '../../../src/marksheet/layout/matrix'
import type { Review } from '../../../src/marksheet/marking/review'
import type { AskedName, Counting } from '../reviewer'

const NONE = 'none'

/** Asks which row counts for every name that stands for more than one. */
export function SameNames(props: {
  readonly names: readonly AskedName[]
  readonly reviews: readonly Review[]
  readonly counting: Counting
  readonly onChoose: (key: string, pupil: number | null) => void
}): ReactElement | null {
  const { names, reviews, counting, onChoose } = props
  if (names.length === 0) return null
  return (
    <div className="same-names">
      <p>
        These names stand in more than one row. Say which row counts; if they are two children, make their
        names differ in the sheet first.
      </p>
      {names.map(({ key, name, pupils, review }) => {
        const chosen = counting.get(key)
        return (
          <Field key={key} label={name}>
            <RadioGroup
              value={chosen === undefined ? '' : chosen === null ? NONE : String(chosen)}
              onChange={(_, { value }) => {
                onChoose(key, value === NONE ? null : Number(value))
              }}
            >
              {pupils.map((index) => (
                <Radio key={index} value={String(index)} label={rowInWords(reviews[review], index)} />
              ))}
              <Radio value={NONE} label="none of them" />
            </RadioGroup>
          </Field>
        )
      })}
    </div>
  )
}

function rowInWords(review: Review | undefined, index: number): string {
  const pupil = review?.pupils[index]
  if (!pupil) return ''
  const right = pupil.outcomes.filter((outcome) => outcome === 'correct').length
  const cell = pupil.nameCells.slice(0, 1).map(addressOf).join('')
  return `${cell}: ${right} right of ${pupil.answers.length}`
}
