import { Button } from '@fluentui/react-components'
import { useEffect, useMemo, useRef, type ReactElement } from 'react'
import { areaOf, type Area } from '../../../src/marksheet/layout/matrix'
import type { SetWish } from '../../../src/marksheet/setting/nextSet'
import { pupilReport, type Objective, type PupilReport } from '../../../src/marksheet/reports/pupilReport'
import { whyNeed, whyStatus } from '../../../src/mastery/explain'
import type { Judgement } from '../../../src/mastery/standing'
import { statusSign, TEACHING_ORDER } from '../../../src/mastery/support'
import { Card } from '../../common/Card'
import { useSettings } from '../../common/settings'
import { BACK } from '../../common/icons'
import { useBusy } from '../../common/pane'
import { dayInWords } from '../record/day'
import { statusClass } from './HeatMap'
import { ModelIt, QuestionSet, type OnWrite } from '../faults/NextSet'
import { occasionLines, type Person } from './people'
import { Reason } from '../../common/Reason'

/** One pupil: where the pupil stands, why answers are wrong, the occasions in Record, and the pupil's own report. */
export function PupilPage(props: {
  readonly person: Person
  readonly wish: SetWish
  readonly onBack: () => void
  readonly onShow: (area: Area) => void
  readonly onWrite: OnWrite
  readonly onPrint: (report: PupilReport) => void
}): ReactElement {
  const { person, wish, onBack, onShow, onWrite, onPrint } = props
  const { name, judgement, found, history } = person
  const { mastery, words } = useSettings()
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  return (
    <>
      <div className="heading">
        <h2 className="sheet-name" tabIndex={-1} ref={heading}>
          {name}
        </h2>
        <Button size="small" appearance="subtle" icon={BACK} onClick={onBack}>
          All pupils
        </Button>
      </div>
      <Card title="Where the pupil stands">
        <p>{whyNeed(judgement, mastery, words)}</p>
        <ul className="standings">
          {inTeachingOrder(judgement)
            .filter(({ tried }) => tried > 0)
            .map((standing) => (
              <li key={standing.type} className={statusClass(standing.status)}>
                <span>{standing.type}</span>
                <strong>
                  {standing.right} of {standing.tried}
                </strong>
                <details>
                  <summary>
                    <span aria-hidden="true">{statusSign(standing.status)} </span>
                    {words[standing.status]}
                  </summary>
                  {whyStatus(standing, mastery, words)}
                </details>
              </li>
            ))}
        </ul>
        {found && (
          <Button
            size="small"
            onClick={() => {
              onShow(areaOf([found.pupil.answers]))
            }}
          >
            Show the answers in the sheet
          </Button>
        )}
      </Card>
      {found && (
        <Card title="Why">
          <Reason pupil={found} onShow={onShow} />
        </Card>
      )}
      <Card title="Over the weeks">
        {history === null ? (
          <p>Nothing in Record yet under this name and class.</p>
        ) : (
          <ol className="occasions">
            {occasionLines(history).map(({ date, sheet, right, tried, missed }) => (
              <li key={`${date} ${sheet}`}>
                <p>
                  {dayInWords(date)}, {sheet}:{' '}
                  {tried === 0 ? 'nothing answered' : <strong>{`${right} of ${tried}`}</strong>}
                </p>
                {missed.length > 0 && (
                  <p className="quiet">
                    Missed: {missed.map(({ question, typed }) => `${question} → ${typed}`).join('; ')}
                  </p>
                )}
              </li>
            ))}
          </ol>
        )}
      </Card>
      <Report person={person} wish={wish} onWrite={onWrite} onPrint={onPrint} />
    </>
  )
}

function inTeachingOrder({ byType }: Judgement) {
  return TEACHING_ORDER.flatMap((type) => byType.filter((standing) => standing.type === type))
}

function Report(props: {
  readonly person: Person
  readonly wish: SetWish
  readonly onWrite: OnWrite
  readonly onPrint: (report: PupilReport) => void
}) {
  const { person, wish, onWrite, onPrint } = props
  const report = useMemo(() => pupilReport(person.name, person.judgement, wish), [person, wish])
  const busy = useBusy()
  const { can, mostly, next } = report
  return (
    <Card title="The pupil’s own report">
      <h3>I can do this</h3>
      {can.length === 0 && <p>Nothing yet that was right every time, twice or more.</p>}
      <Objectives objectives={can} sign="✓ " />
      {mostly.length > 0 && <h3>Mostly right</h3>}
      <Objectives objectives={mostly} sign="" />
      <h3>Next</h3>
      {next === null ? (
        <p>Nothing further to go by: what comes next is left to you.</p>
      ) : (
        <>
          <p>{next.objective}</p>
          {next.work.example && (
            <>
              <p>
                For example{' '}
                <strong className="sum">{`${next.work.example.text} = ${next.work.example.answer}`}</strong>
              </p>
              <ModelIt question={next.work.example.question} fault={null} />
              <QuestionSet questions={next.work.questions} whose={person.name} onWrite={onWrite} />
            </>
          )}
        </>
      )}
      <Button
        disabled={busy}
        className="print"
        onClick={() => {
          onPrint(report)
        }}
      >
        Put the report on a sheet to print
      </Button>
    </Card>
  )
}

function Objectives(props: { readonly objectives: readonly Objective[]; readonly sign: string }) {
  if (props.objectives.length === 0) return null
  return (
    <ul className="can">
      {props.objectives.map(({ type, objective, right, tried }) => (
        <li key={type}>
          {props.sign}
          {objective} ({right} of {tried})
        </li>
      ))}
    </ul>
  )
}
