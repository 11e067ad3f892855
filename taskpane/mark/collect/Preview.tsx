import { Button, Checkbox, Field, Select } from '@fluentui/react-components'
import { useEffect, useRef, type ReactElement } from 'react'
import type { Arrival } from '../../../src/home/collect/arrivals'
import type { Plan } from '../../../src/home/collect/plan'
import { addressOf } from '../../../src/marksheet/layout/matrix'
import { Card } from '../../common/Card'
import { TICK } from '../../common/icons'
import { useBusy, useStore } from '../../common/pane'
import { counted } from '../../common/words'
import type { Collector } from './collector'

/** What would be written, for whom, and what is doubtful; nothing is written before a button is pressed. */
export function Preview(props: {
  readonly collector: Collector
  readonly onWrite: (isMarked: boolean) => void
  readonly onBack: () => void
}): ReactElement {
  const { collector, onWrite, onBack } = props
  const busy = useBusy()
  const { arrivals, plan, over } = useStore(collector)
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    place.current?.focus()
  }, [])
  const count = plan.writes.length + over.size
  const asking = arrivals.filter(({ target, mayBe }) => target === null && mayBe.length > 0)
  const left = plan.left.filter(
    ({ file, reason }) => !asking.some((each) => each.file === file && each.doubt === reason),
  )
  return (
    <div ref={place} tabIndex={-1} role="group" aria-label="What came in" className="collected">
      <Card title={`${counted(count, 'answer')} to write`}>
        {plan.writes.length === 0 && <p>No blank cell of this marksheet gets an answer from what came in.</p>}
        <ul aria-label="Answers by child">
          {byPupil(plan).map(([pupil, writes]) => (
            <li key={pupil}>
              <details open={arrivals.length === 1}>
                <summary>
                  <strong>{pupil}</strong> {counted(writes.length, 'answer')}
                </summary>
                <ul>
                  {writes.map(({ cell, question, typed }) => (
                    <li key={addressOf(cell)}>
                      <span className="sum">{question.trim()}</span> → {typed}{' '}
                      <span className="quiet">({addressOf(cell)})</span>
                    </li>
                  ))}
                </ul>
              </details>
            </li>
          ))}
        </ul>
        {plan.present > 0 && <p className="quiet">{counted(plan.present, 'answer')} already in the sheet.</p>}
      </Card>
      {plan.taken.length > 0 && (
        <Card title="Cells that hold something else">
          <p>They stay as they are, but for those that you tick.</p>
          {plan.taken.map((taken) => (
            <Checkbox
              key={`${taken.file} ${addressOf(taken.cell)} ${taken.typed}`}
              checked={over.has(addressOf(taken.cell))}
              disabled={busy}
              label={`${taken.pupil}, ${taken.question.trim()} (${addressOf(taken.cell)}): “${taken.typed}” in place of “${taken.held}”`}
              onChange={(_, { checked }) => {
                collector.chooseOver(taken, checked === true)
              }}
            />
          ))}
        </Card>
      )}
      {asking.length > 0 && (
        <Card title="Whose are these?">
          {asking.map((arrival, index) => (
            <Whose key={`${arrival.file} ${index}`} arrival={arrival} collector={collector} />
          ))}
        </Card>
      )}
      {left.length > 0 && (
        <Card title="Left for you">
          <ul aria-label="What is left out, and why">
            {left.map(({ file, pupil, reason }, index) => (
              <li key={index}>
                <strong>{pupil === '' ? file : `${pupil}, ${file}`}</strong>: {reason}
              </li>
            ))}
          </ul>
        </Card>
      )}
      <div className="buttons end">
        <Button
          appearance="primary"
          icon={TICK}
          disabled={busy || count === 0}
          onClick={() => {
            onWrite(true)
          }}
        >
          Write and mark
        </Button>
        <Button
          disabled={busy || count === 0}
          onClick={() => {
            onWrite(false)
          }}
        >
          Write only
        </Button>
        <Button disabled={busy} onClick={onBack}>
          Back, write nothing
        </Button>
      </div>
    </div>
  )
}

const NOBODY = '-1'

function Whose({ arrival, collector }: { readonly arrival: Arrival; readonly collector: Collector }) {
  const { file, doubt, mayBe, answers } = arrival
  return (
    <Field label={`${file}, ${counted(answers.length, 'answer')}`} hint={doubt ?? ''}>
      <Select
        value={NOBODY}
        onChange={(_, { value }) => {
          const target = mayBe[Number(value)]
          if (target) collector.assign(arrival, target)
        }}
      >
        <option value={NOBODY}>Leave it out</option>
        {mayBe.map(({ pupil }, index) => (
          <option key={index} value={String(index)}>
            {pupil.name}
          </option>
        ))}
      </Select>
    </Field>
  )
}

function byPupil({ writes }: Plan): [string, Plan['writes']][] {
  const grouped = new Map<string, Plan['writes']>()
  for (const write of writes) grouped.set(write.pupil, [...(grouped.get(write.pupil) ?? []), write])
  return [...grouped]
}
