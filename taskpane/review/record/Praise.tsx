import { Button, Textarea } from '@fluentui/react-components'
import { useEffect, useMemo, useRef, useState, type ReactElement } from 'react'
import {
  notNamedSentence,
  planPraise,
  PRAISE_NOTES,
  praiseIn,
  praiseText,
  weeksOf,
} from '../../../src/marksheet/record/praise'
import type { PrintedSheet } from '../../../src/marksheet/reports/pupilReport'
import { classesIn } from '../../../src/marksheet/record/record'
import { Card } from '../../common/Card'
import { useBusy, useRunner } from '../../common/pane'
import { counted } from '../../common/words'
import { Choice } from '../pupils/Choice'
import { dayInWords } from './day'
import './praise.css'
import type { ReviewerState } from '../reviewer'

/** What to praise: a class and a week of Record in words, to copy or to print. Nothing where Record is empty. */
export function PraiseCard(props: {
  readonly state: ReviewerState
  /** The class to begin with, where Record has it. */
  readonly className: string
  readonly onWrite: (printed: PrintedSheet) => void
}): ReactElement | null {
  const { record } = props.state
  const [chosen, setChosen] = useState({ className: props.className, monday: '' })
  const rows = useMemo(() => record?.rows ?? [], [record])
  const classes = useMemo(() => classesIn(rows), [rows])
  const className = classes.find((name) => name === chosen.className) ?? classes[0]
  const weeks = useMemo(() => (className === undefined ? [] : weeksOf(rows, className)), [rows, className])
  const monday = weeks.find((week) => week === chosen.monday) ?? weeks[0]
  if (className === undefined || monday === undefined) return null
  return (
    <Card title="What to praise this week">
      <p>{PRAISE_NOTES[0]}</p>
      {classes.length > 1 && (
        <Choice
          label="Class"
          value={String(classes.indexOf(className))}
          options={classes.map((name, index) => [String(index), name])}
          onChoose={(value) => {
            setChosen({ className: classes[Number(value)] ?? '', monday: '' })
          }}
        />
      )}
      <Choice
        label="Week from"
        value={monday}
        options={weeks.map((week) => [week, dayInWords(week)])}
        onChoose={(week) => {
          setChosen({ className, monday: week })
        }}
      />
      <Week key={`${className} ${monday}`} {...props} className={className} monday={monday} />
    </Card>
  )
}

function Week(props: {
  readonly state: ReviewerState
  readonly className: string
  readonly monday: string
  readonly onWrite: (printed: PrintedSheet) => void
}) {
  const { className, monday, onWrite } = props
  const { record } = props.state
  const busy = useBusy()
  const praise = useMemo(() => praiseIn(record?.rows ?? [], className, monday), [record, className, monday])
  const heading = `${className}, week from Monday ${dayInWords(monday)}`
  const notNamed = notNamedSentence(praise)
  return (
    <>
      {praise.named.length > 0 && (
        <details>
          <summary>The list: {counted(praise.named.length, 'pupil')}</summary>
          <ul className="praise" aria-label="What to praise">
            {praise.named.map(({ name, says }) => (
              <li key={name}>
                <strong>{name}</strong> {says.join(' ')}
              </li>
            ))}
          </ul>
        </details>
      )}
      {praise.named.length === 0 && <p>The counts of that week give nothing to praise.</p>}
      {notNamed !== '' && <p className="quiet">{notNamed}</p>}
      <p className="quiet">{PRAISE_NOTES[1]}</p>
      <div className="stacked">
        <CopyText text={praiseText(praise, heading)} />
        <Button
          disabled={busy}
          onClick={() => {
            onWrite(planPraise(praise, heading))
          }}
        >
          Onto a page to print
        </Button>
      </div>
    </>
  )
}

/** Copies a text; where the program does not allow that, shows it selected, to be copied by hand. */
function CopyText({ text }: { readonly text: string }) {
  const runner = useRunner()
  const [isByHand, setIsByHand] = useState(false)
  const field = useRef<HTMLTextAreaElement>(null)
  useEffect(() => {
    if (!isByHand) return
    field.current?.focus()
    field.current?.select()
  }, [isByHand])
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text)
      setIsByHand(false)
      runner.say('Copied. It names pupils: paste it where your school’s policy allows.')
    } catch {
      setIsByHand(true)
      field.current?.focus()
      field.current?.select()
    }
  }
  return (
    <>
      <Button onClick={() => void copy()}>Copy as text</Button>
      {isByHand && (
        <>
          <p>This program does not let Columnwise copy. The text is selected: press Ctrl+C (⌘C on a Mac).</p>
          <Textarea
            ref={field}
            className="to-copy"
            readOnly
            rows={6}
            value={text}
            aria-label="What to praise, as text"
          />
        </>
      )}
    </>
  )
}
