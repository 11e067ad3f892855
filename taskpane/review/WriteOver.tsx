import { Button } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import { useBusy } from '../common/pane'
import { takenSentence } from '../common/taken'
import type { Reviewer, ReviewerState } from './reviewer'

/** Asks before questions are written over cells that are not empty. */
export function WriteOver(props: {
  readonly reviewer: Reviewer
  readonly state: ReviewerState
}): ReactElement | null {
  const { reviewer, state } = props
  const busy = useBusy()
  if (state.asked === null) return null
  const { target } = state.asked
  return (
    <div className="ask" role="alert">
      <p>{takenSentence({ ...target, taken: target.taken.map(({ address }) => address) })}</p>
      <div className="buttons">
        <Button size="small" disabled={busy} onClick={() => void reviewer.answer(true)}>
          Write over
        </Button>
        <Button size="small" onClick={() => void reviewer.answer(false)}>
          Leave them
        </Button>
      </div>
    </div>
  )
}
