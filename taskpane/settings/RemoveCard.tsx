import { Button } from '@fluentui/react-components'
import { useRef, useState, type ReactElement } from 'react'
import { goesForGood, type Traces } from '../../src/office/removal/traces'
import { Card } from '../common/Card'
import { useBusy, useRunner, useStore } from '../common/pane'
import { goes, Remover } from './remover'

/** Takes everything of Columnwise out of the workbook: shows first what would go, what of it for good, and what stays. */
export function RemoveCard({ onRemoved }: { readonly onRemoved: () => void }): ReactElement {
  const runner = useRunner()
  const [remover] = useState(() => new Remover(runner))
  const { found } = useStore(remover)
  const busy = useBusy()
  const looking = useRef<HTMLButtonElement>(null)
  const remove = async () => {
    if (!(await remover.remove())) return
    onRemoved()
    looking.current?.focus()
  }
  return (
    <Card title="Remove everything of Columnwise from this workbook">
      <p>
        Your marksheets, questions and answers stay as they are. Columnwise first looks what there is, and
        removes nothing before you say so.
      </p>
      <Button ref={looking} disabledFocusable={busy} onClick={() => void remover.look()}>
        {found === null ? 'Look what there is' : 'Look again'}
      </Button>
      <div role="status">{found && <Found traces={found} />}</div>
      {found && goes(found).length > 0 && (
        <div className="buttons">
          <Button appearance="primary" disabled={busy} onClick={() => void remove()}>
            Remove all this
          </Button>
          <Button
            onClick={() => {
              remover.leave()
              looking.current?.focus()
            }}
          >
            Leave everything
          </Button>
        </div>
      )}
    </Card>
  )
}

function Found({ traces }: { readonly traces: Traces }) {
  const going = goes(traces)
  return (
    <>
      {going.length === 0 && (
        <p className="found">There is nothing of Columnwise’s to remove in this workbook.</p>
      )}
      <Sentences title="This would go" sentences={going} />
      <Sentences title="For good" sentences={goesForGood(traces)} />
      <Sentences title="This stays" sentences={traces.stays} />
    </>
  )
}

function Sentences({ title, sentences }: { readonly title: string; readonly sentences: readonly string[] }) {
  return (
    sentences.length > 0 && (
      <>
        <h3>{title}</h3>
        <ul>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </>
    )
  )
}
