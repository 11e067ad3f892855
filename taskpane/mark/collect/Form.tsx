import { Button, Field, Textarea } from '@fluentui/react-components'
import { useRef, useState, type ReactElement } from 'react'
import { ChoiceField } from '../../common/ChoiceField'
import { useBusy, useRunner } from '../../common/pane'
import type { Collector } from './collector'

/** The marksheet's questions to paste into a form, and the sheet that holds the form's answers. */
export function Form({ collector }: { readonly collector: Collector }): ReactElement {
  const busy = useBusy()
  const runner = useRunner()
  const { reading, marksheets } = collector.seen
  const questions = marksheets[0]?.questions.map(({ text }) => text.trim()) ?? []
  const list = useRef<HTMLTextAreaElement>(null)
  const sheets = reading.sheets.filter(({ id, own, visible }) => id !== reading.id && !own && visible)
  const [chosen, setChosen] = useState(sheets[0]?.id ?? '')
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(questions.join('\n'))
      runner.say(
        'The questions are copied.',
        'Paste them into your form, one question each, after one for the name.',
      )
    } catch {
      list.current?.focus()
      list.current?.select()
      runner.say('The questions are selected.', 'Press Ctrl+C, or ⌘C on a Mac, to copy them.')
    }
  }
  return (
    <>
      <h3>Ask them in a form</h3>
      <p>Make a question for the name first, then one for each line, in any form maker your school uses.</p>
      <Field label="Questions">
        <Textarea
          ref={list}
          readOnly
          resize="vertical"
          rows={Math.min(8, questions.length)}
          value={questions.join('\n')}
        />
      </Field>
      <div className="buttons end">
        <Button onClick={() => void copy()}>Copy the questions</Button>
      </div>
      <h3>Bring its answers in</h3>
      {sheets.length === 0 ? (
        <p>Copy the sheet of answers into this workbook, or choose its file under Files.</p>
      ) : (
        <>
          <ChoiceField
            label="Sheet with the answers"
            hint="Names and questions decide where an answer goes."
            value={chosen}
            options={sheets.map(({ id, name }) => [id, name])}
            onChoose={setChosen}
          />
          <div className="buttons end">
            <Button appearance="primary" disabled={busy} onClick={() => void collector.takeSheet(chosen)}>
              Read the answers
            </Button>
          </div>
        </>
      )}
    </>
  )
}
