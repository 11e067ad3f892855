import { Button } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { BACK } from '../../common/icons'
import { useRunner, useStore } from '../../common/pane'
import { Tabs } from '../../common/Tabs'
import type { Seen } from '../actions'
import { Collector } from './collector'
import './collect.css'
import { Files } from './Files'
import { Form } from './Form'
import { Message } from './Message'
import { Preview } from './Preview'

const WAYS = [
  { id: 'collect-files', name: 'Files' },
  { id: 'collect-message', name: 'Message' },
  { id: 'collect-form', name: 'Form' },
] as const

/** Collect answers: from files that came back, from a pasted message, from a form's answers; a preview before anything is written. */
export function Collect(props: {
  readonly seen: Seen
  readonly onClose: () => void
  readonly onMark: () => void
}): ReactElement {
  const runner = useRunner()
  const [collector, setCollector] = useState(() => new Collector(runner, props.seen))
  const { arrivals } = useStore(collector)
  const [way, setWay] = useState<string>(WAYS[0].id)
  const written = async (isMarked: boolean) => {
    if (!(await collector.write())) return
    if (isMarked) props.onMark()
    else props.onClose()
  }
  return (
    <section aria-label="Collect answers">
      <div className="heading">
        <h2>Collect answers for {props.seen.reading.name}</h2>
        <Button size="small" appearance="subtle" icon={BACK} onClick={props.onClose}>
          Close
        </Button>
      </div>
      {arrivals.length > 0 ? (
        <Preview
          collector={collector}
          onWrite={(isMarked) => void written(isMarked)}
          onBack={() => {
            collector.clear()
          }}
        />
      ) : (
        <>
          <Tabs
            areas={WAYS}
            label="Where the answers come from"
            open={way}
            onOpen={(id) => {
              setWay(id)
              setCollector(new Collector(runner, props.seen))
            }}
          />
          <div role="tabpanel" id={`area-${way}`} aria-labelledby={`tab-${way}`} className="card">
            {way === 'collect-files' && <Files collector={collector} />}
            {way === 'collect-message' && <Message collector={collector} />}
            {way === 'collect-form' && <Form collector={collector} />}
          </div>
        </>
      )}
    </section>
  )
}
