import { Button } from '@fluentui/react-components'
import { useEffect, useId, useRef, type ReactElement } from 'react'
import type { Filing, Met } from '../../../src/marksheet/record/filing'
import { useBusy } from '../../common/pane'
import { counted } from '../../common/words'
import '../../common/WriteOver.css'
import { occasionInWords, type AskedFiling } from '../reviewer'
import { dayInWords } from './day'

const MOST_NAMES = 3
const MOST_SHOWN = 4

/** Shows a sheet beside what Record holds that may be the same work, and asks how it is to be filed, before anything is written. */
export function AskFiling(props: {
  readonly asked: AskedFiling
  readonly onAnswer: (filing: Filing | null) => void
}): ReactElement {
  const { asked, onAnswer } = props
  const busy = useBusy()
  const id = useId()
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    place.current?.scrollIntoView({ block: 'nearest' })
    place.current?.focus({ preventScroll: true })
  }, [])
  const { sheet, className, date, met, filings } = asked
  const left = met.length - MOST_SHOWN
  return (
    <div className="write-over" role="alert" aria-labelledby={id} ref={place} tabIndex={-1}>
      <p id={id}>Record may hold {sheet} already. Nothing is written yet.</p>
      <ul>
        <li>
          To add: {sheet}, {occasionInWords({ class: className, date })}: {size(asked)}
        </li>
        {met.slice(0, MOST_SHOWN).map((each) => (
          <li key={JSON.stringify([each.class, each.date, each.sheet])}>
            In Record: {each.sheet}, {occasionInWords(each)}: {size(each)}. {comparison(each)}
          </li>
        ))}
        {left > 0 && <li>and {counted(left, 'other day')} with this sheet’s name</li>}
      </ul>
      <div className="stacked">
        {filings.map((filing) => (
          <Button
            key={JSON.stringify(filing)}
            disabled={busy}
            onClick={() => {
              onAnswer(filing)
            }}
          >
            {filingInWords(filing, asked)}
          </Button>
        ))}
        <Button
          onClick={() => {
            onAnswer(null)
          }}
        >
          Leave Record as it is
        </Button>
      </div>
    </div>
  )
}

const size = ({ answers, pupils }: { readonly answers: number; readonly pupils: number }) =>
  `${counted(answers, 'answer')} of ${counted(pupils, 'pupil')}`

/** How what Record holds differs from the sheet: "12 answers have changed; new: Ada B." */
export function comparison({ shared, changed, gone, added }: Met): string {
  if (shared === 0) return 'Other questions.'
  const differences = [
    ...(changed > 0 ? [`${counted(changed, 'answer')} changed`] : []),
    ...(gone.length > 0 ? [`only in Record: ${some(gone)}`] : []),
    ...(added.length > 0 ? [`new: ${some(added)}`] : []),
  ]
  return differences.length === 0 ? 'No answer in both differs.' : `${differences.join('; ')}.`
}

function some(names: readonly string[]): string {
  const left = names.length - MOST_NAMES
  const shown = names.slice(0, MOST_NAMES).join(', ')
  return left > 0 ? `${shown} and ${counted(left, 'more pupil')}` : shown
}

/** What a filing does: "Same work: put it in place of 4H, 6 November 2026". */
export function filingInWords({ instead, date }: Filing, { className, met }: AskedFiling): string {
  const under = occasionInWords({ class: className, date })
  if (instead === null) return `Other work: add it beside, under ${under}`
  const several = met.some((each) => each.sheet !== instead.sheet)
  const what = `${several ? `${instead.sheet}, ` : ''}${occasionInWords(instead)}`
  if (instead.class !== className) return `Same work: put it in place of ${what}, now under ${under}`
  return date === instead.date
    ? `Same work: put it in place of ${what}`
    : `Same work: put it in place of ${what}, with the day ${dayInWords(date)}`
}
