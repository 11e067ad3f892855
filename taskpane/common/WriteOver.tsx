import { Button } from '@fluentui/react-components'
import { useEffect, useId, useRef, type ReactElement } from 'react'
import { useBusy } from './pane'
import { takenSentence } from './taken'
import './WriteOver.css'

const MOST_SHOWN = 6

/** A cell that is not empty, and what it holds where that was read. */
export interface TakenCell {
  readonly address: string
  readonly value?: unknown
}

/**
 * Asks before cells that are not empty are written over. The question comes into sight and takes the focus; once it is answered, the
 * pane goes back to where it was.
 */
export function WriteOver(props: {
  readonly sheet: { readonly name: string }
  readonly taken: readonly TakenCell[]
  readonly onAnswer: (over: boolean) => void
}): ReactElement {
  const { sheet, taken, onAnswer } = props
  const busy = useBusy()
  const id = useId()
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const scroller = place.current?.closest('main')
    const top = scroller?.scrollTop ?? 0
    place.current?.scrollIntoView({ block: 'nearest' })
    place.current?.focus({ preventScroll: true })
    return () => {
      scroller?.scrollTo({ top })
    }
  }, [])
  const held = taken.slice(0, MOST_SHOWN).filter(({ value }) => value !== undefined)
  return (
    <div className="write-over" role="alert" aria-labelledby={id} ref={place} tabIndex={-1}>
      <p id={id}>{takenSentence({ sheet, taken: taken.map(({ address }) => address) })}</p>
      {held.length > 0 && (
        <ul>
          {held.map(({ address, value }) => (
            <li key={address}>
              {address}: “{String(value)}”
            </li>
          ))}
        </ul>
      )}
      <div className="buttons">
        <Button
          disabled={busy}
          onClick={() => {
            onAnswer(true)
          }}
        >
          Write over
        </Button>
        <Button
          onClick={() => {
            onAnswer(false)
          }}
        >
          Leave them
        </Button>
      </div>
    </div>
  )
}
