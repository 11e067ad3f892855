import { Button, Field, Input } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { Card } from '../../common/Card'
import { useBusy } from '../../common/pane'
import { counted } from '../../common/words'
import { schoolYearFrom } from './day'
import { namesToAsk, type Counting, type Reviewer, type ReviewerState } from '../reviewer'
import { AskFiling } from './AskFiling'
import { SameNames } from './SameNames'

interface Parts {
  readonly reviewer: Reviewer
  readonly state: ReviewerState
  readonly today: string
}

/** Adds the sheet that is shown to Record; names that stand for two rows are asked about first. */
export function AddToRecord({
  reviewer,
  state: { seen, settings, filing },
  today,
}: Parts): ReactElement | null {
  const [className, setClassName] = useState(settings.className)
  const [date, setDate] = useState(today)
  const [counting, setCounting] = useState<Counting>(new Map())
  const busy = useBusy()
  if (seen === null || seen.reviews.length === 0) return null
  const names = namesToAsk(seen.reviews)
  const isAsking = names.some(({ key }) => !counting.has(key))
  return (
    <Card title="Add to Record">
      <p>
        Record keeps every answer of this sheet, so that a pupil is judged over the weeks. Where it may be
        there already, you are asked before anything is written.
      </p>
      <Field label="Class">
        <Input
          value={className}
          onChange={(_, { value }) => {
            setClassName(value)
          }}
        />
      </Field>
      <Field label="Day of the questions">
        <Input
          type="date"
          value={date}
          onChange={(_, { value }) => {
            setDate(value)
          }}
        />
      </Field>
      <SameNames
        names={names}
        reviews={seen.reviews}
        counting={counting}
        onChoose={(key, pupil) => {
          setCounting(new Map(counting).set(key, pupil))
        }}
      />
      <Button
        appearance="primary"
        disabled={busy || className.trim() === '' || date === '' || isAsking}
        onClick={() => void reviewer.addToRecord(className.trim(), date, counting)}
      >
        Add {seen.reading.name} to Record
      </Button>
      {filing && <AskFiling asked={filing} onAnswer={(chosen) => void reviewer.file(chosen)} />}
      {(className.trim() === '' || isAsking) && (
        <p className="quiet">
          {className.trim() === '' ? 'Type the name of the class first.' : 'Say which rows count first.'}
        </p>
      )}
    </Card>
  )
}

/** How much Record holds, and taking out what is from before a day. */
export function RecordCard({ reviewer, state: { record, problem }, today }: Parts): ReactElement {
  const [date, setDate] = useState(schoolYearFrom(today))
  const busy = useBusy()
  const rows = record?.rows ?? []
  const earlier = rows.filter((row) => row.date < date).length
  return (
    <Card title="Record">
      {problem !== null && <p role="alert">{problem}</p>}
      {problem === null && rows.length === 0 && <p>Record holds nothing yet.</p>}
      {rows.length > 0 && (
        <>
          <p>
            {counted(rows.length, 'answer')} of {counted(new Set(rows.map((row) => row.date)).size, 'day')}.
            {record !== null &&
              record.leftAside > 0 &&
              ` ${counted(record.leftAside, 'row')} cannot be read and stayed aside.`}
          </p>
          <Field label="Clear everything from before">
            <Input
              type="date"
              value={date}
              onChange={(_, { value }) => {
                setDate(value)
              }}
            />
          </Field>
          <Button
            disabled={busy || earlier === 0 || date === ''}
            onClick={() => void reviewer.clearBefore(date)}
          >
            {earlier === 0 ? 'Nothing to clear' : `Clear ${counted(earlier, 'answer')}`}
          </Button>
        </>
      )}
    </Card>
  )
}

/** What can be written for paper and for the sheet: the week's page, the reports, the Mastery sheet. */
export function Sheets(props: {
  readonly hasSheet: boolean
  readonly onWeek: () => void
  readonly onReports: () => void
  readonly onMastery: () => void
}): ReactElement {
  const { hasSheet, onWeek, onReports, onMastery } = props
  const busy = useBusy()
  return (
    <Card title="On paper and in the workbook">
      <div className="stacked">
        <Button disabled={busy} onClick={onWeek}>
          This week’s page: groups, next sets, an example
        </Button>
        <Button disabled={busy} onClick={onReports}>
          A report for every pupil, a page each
        </Button>
        {hasSheet && (
          <Button disabled={busy} onClick={onMastery}>
            Mastery sheet with a chart
          </Button>
        )}
      </div>
      <p className="quiet">These sheets name pupils. Each is laid out anew when it is written again.</p>
    </Card>
  )
}
