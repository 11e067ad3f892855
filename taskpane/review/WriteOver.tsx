import { Button } from '@fluentui/react-components'
import { useEffect, useId, useRef, type ReactElement } from 'react'
import { useBusy } from '../common/pane'
import { takenSentence } from '../common/taken'
import type { Asked, Reviewer, ReviewerState } from './reviewer'

interface Parts {
  readonly reviewer: Reviewer
}

/** Asks before questions are written over cells that are not empty. */
export function WriteOver(props: Parts & { readonly state: ReviewerState }): ReactElement | null {
  const { reviewer, state } = props
  return state.asked && <Question reviewer={reviewer} target={state.asked.target} />
}

/** The question itself: it takes the focus, and the pane goes back to where it was when it is answered. */
function Question({ reviewer, target }: Parts & Pick<Asked, 'target'>) {
  const busy = useBusy()
  const id = useId()
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const scroller = place.current?.closest('main')
    const top = scroller?.scrollTop ?? 0
    place.current?.focus()
    return () => {
      scroller?.scrollTo({ top })
    }
  }, [])
  return (
    <div className="ask" role="alertdialog" aria-labelledby={id} ref={place} tabIndex={-1}>
      <p id={id}>{takenSentence({ ...target, taken: target.taken.map(({ address }) => address) })}</p>
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
