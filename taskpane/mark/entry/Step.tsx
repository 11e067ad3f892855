import { Button, Field, Input } from '@fluentui/react-components'
import { useEffect, useRef, useState, type KeyboardEvent, type ReactElement } from 'react'
import type { Content } from '../../../src/office/edit/cells'
import { Notice } from '../../common/Notice'
import { isReadable, type Place } from './places'
import type { Session, SessionState } from './session'

/** One answer to enter: whose, to which question, and a field that the keyboard alone can run. */
export function Step(props: {
  readonly session: Session
  readonly state: SessionState
  readonly place: Place
  readonly onStop: () => void
}): ReactElement {
  const { session, state, place, onStop } = props
  const { right, pupil, question, address, key } = place
  const before = heldText(state.entered.get(address)?.content ?? place.held)
  const [text, setText] = useState(before)
  const field = useRef<HTMLInputElement>(null)
  useEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [])
  const enter = () => {
    if (text.trim() === '') session.right()
    else if (text === before && before !== '') session.skip()
    else session.typed(text)
  }
  const keys: Readonly<Record<string, () => void>> = {
    Enter: enter,
    ArrowUp: session.back,
    ArrowDown: session.skip,
    Escape: onStop,
    ...(text === '' ? { a: session.absent, A: session.absent, ' ': session.blank } : {}),
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (text === '' && session.swallows(event.key)) {
      event.preventDefault()
      return
    }
    const act =
      event.nativeEvent.isComposing || event.ctrlKey || event.altKey || event.metaKey
        ? undefined
        : keys[event.key]
    if (!act) return
    event.preventDefault()
    act()
  }
  return (
    <>
      <div role="status" className="whose">
        <strong>{pupil}</strong>
        <span className="sum">{question}</span>
      </div>
      <Field
        label={`Answer in ${address}`}
        hint={
          text.trim() === ''
            ? `Enter alone puts in ${right}, the right answer.`
            : 'Enter puts in what you typed.'
        }
        {...(isReadable(text, key)
          ? {}
          : {
              validationState: 'warning',
              validationMessage: 'This cannot be read as an answer; it will be left for you to look at.',
            })}
      >
        <Input
          input={{ ref: field }}
          className="answer"
          size="large"
          autoComplete="off"
          placeholder={right}
          value={text}
          onChange={(_, { value }) => {
            setText(value)
          }}
          onKeyDown={onKeyDown}
        />
      </Field>
      {state.problem && <Notice said={state.problem} />}
      <div className="keys">
        <Key name="Enter" word="right / typed" act={enter} />
        <Key name="A" word="absent, all of the child’s" act={session.absent} />
        <Key name="Space" word="left blank" act={session.blank} />
        <Key name="↑" word="go back one" act={session.back} isOff={state.index === 0} />
        <Key name="↓" word="go on, as it is" act={session.skip} />
        <Key name="Esc" word="stop" act={onStop} />
      </div>
    </>
  )
}

function Key({
  name,
  word,
  act,
  isOff = false,
}: {
  readonly name: string
  readonly word: string
  readonly act: () => void
  readonly isOff?: boolean
}) {
  return (
    <Button size="small" disabled={isOff} onClick={act}>
      <kbd>{name}</kbd> {word}
    </Button>
  )
}

function heldText(held: Content | boolean): string {
  return held === null || typeof held === 'object' ? '' : String(held)
}
