import { Button, Field, Select, Textarea } from '@fluentui/react-components'
import { useMemo, useState, type ReactElement } from 'react'
import { useBusy } from '../../common/pane'
import type { Collector } from './collector'

const NOBODY = '-1'

/** Takes a pasted message and asks whose it is; a signature gives a guess, which the teacher confirms. */
export function Message({ collector }: { readonly collector: Collector }): ReactElement {
  const busy = useBusy()
  const { targets } = collector
  const [text, setText] = useState('')
  const [chosen, setChosen] = useState(NOBODY)
  const guesses = useMemo(() => collector.writersOf(text), [collector, text])
  const target = targets[Number(chosen)]
  const choose = (value: string) => {
    setChosen(value)
  }
  return (
    <>
      <p>Paste one child’s message, from an e-mail or a chat. Only answers that are clear are taken.</p>
      <Field label="What the message says">
        <Textarea
          resize="vertical"
          rows={6}
          value={text}
          placeholder="1) 475  2) 321"
          onChange={(_, { value }) => {
            setText(value)
          }}
        />
      </Field>
      <Field label="Whose answers are they?">
        <Select
          value={chosen}
          onChange={(_, { value }) => {
            choose(value)
          }}
        >
          <option value={NOBODY}>Choose the child</option>
          {targets.map(({ pupil }, index) => (
            <option key={index} value={String(index)}>
              {pupil.name}
            </option>
          ))}
        </Select>
      </Field>
      {target === undefined && guesses.length > 0 && (
        <div className="guesses">
          <p>The message may be by:</p>
          <div className="buttons">
            {guesses.map((guess) => (
              <Button
                key={targets.indexOf(guess)}
                size="small"
                onClick={() => {
                  choose(String(targets.indexOf(guess)))
                }}
              >
                {guess.pupil.name}
              </Button>
            ))}
          </div>
        </div>
      )}
      <div className="buttons end">
        <Button
          appearance="primary"
          disabled={busy || target === undefined || text.trim() === ''}
          onClick={() => {
            if (target) collector.takeMessage(text, target)
          }}
        >
          Find the answers
        </Button>
      </div>
    </>
  )
}
