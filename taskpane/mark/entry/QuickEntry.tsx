import { Button, ProgressBar } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { Card } from '../../common/Card'
import { TICK } from '../../common/icons'
import { useRunner, useStore } from '../../common/pane'
import { counted } from '../../common/words'
import { OUTCOME_WORDS } from '../../common/OutcomeCount'
import type { Seen } from '../actions'
import './entry.css'
import { Session } from './session'
import { Setup } from './Setup'
import { Step } from './Step'

/** Quick entry: chooses what to enter, then walks from answer to answer. `onMark` marks the sheet afterwards. */
export function QuickEntry(props: {
  readonly seen: Seen
  readonly onClose: () => void
  readonly onMark: () => void
}): ReactElement {
  const { seen, onClose, onMark } = props
  const runner = useRunner()
  const [session, setSession] = useState<Session | null>(null)
  const start = (places: Session['places']) => {
    runner.hush()
    setSession(new Session(runner, seen.reading, places))
  }
  if (session === null) return <Setup seen={seen} onStart={start} onClose={onClose} />
  return <Walk session={session} onClose={onClose} onMark={onMark} />
}

const MOST_RECENT = 3

function Walk({
  session,
  onClose,
  onMark,
}: {
  readonly session: Session
  readonly onClose: () => void
  readonly onMark: () => void
}) {
  const state = useStore(session)
  const { index, entered, writing } = state
  const { places } = session
  const place = places[index]
  const leave = (then: () => void) => void session.settled().then(then)
  return (
    <Card title="Quick entry">
      <p className="quiet">
        {place
          ? `Answer ${index + 1} of ${places.length}`
          : `All done: ${counted(entered.size, 'answer')} entered.`}
        {writing > 0 ? ' · writing …' : ' · all safe in the sheet'}
      </p>
      <ProgressBar aria-label="Answers walked" value={places.length === 0 ? 1 : index / places.length} />
      {place ? (
        <Step
          key={`${place.address} ${index}`}
          session={session}
          state={state}
          place={place}
          onStop={() => {
            leave(onClose)
          }}
        />
      ) : (
        <div className="buttons end">
          <Button
            appearance="primary"
            icon={TICK}
            onClick={() => {
              leave(onMark)
            }}
          >
            Mark this sheet
          </Button>
          <Button
            onClick={() => {
              leave(onClose)
            }}
          >
            Close
          </Button>
          <Button onClick={session.back}>Go back one</Button>
        </div>
      )}
      <ul className="recent" aria-label="Entered last">
        {[...entered.values()]
          .filter(({ isAlong }) => !isAlong)
          .slice(-MOST_RECENT)
          .toReversed()
          .map(({ place: { address, pupil, question }, content, outcome }) => (
            <li key={address}>
              <span className={`outcome ${outcome}`}>
                <span className="sign" aria-hidden="true">
                  {OUTCOME_WORDS[outcome][0]}
                </span>
                {OUTCOME_WORDS[outcome][1]}
              </span>{' '}
              {pupil}: {question} → {String(content)}
            </li>
          ))}
      </ul>
    </Card>
  )
}
