import { Field, Select } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import type { FaultId } from '../../src/answers/faults'
import { workOut } from '../../src/arithmetic/columns'
import { amountText, printQuestion, type Question } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import { paperAfter, paperWith } from '../../src/lesson/model/paper'
import type { WrongAnswer } from '../../src/lesson/model/wentWrong'
import { PaperDrawing } from './PaperDrawing'

/** The choice among the faults that lead to a wrong answer to a question, each with that answer. */
export function FaultChoice(props: {
  readonly wrong: readonly WrongAnswer[]
  readonly chosen: FaultId | null
  readonly onChoose: (fault: FaultId | null) => void
}): ReactElement {
  const { wrong, chosen, onChoose } = props
  return (
    <Field className="fault-choice" label="The pupil’s answer">
      <Select
        value={chosen ?? ''}
        onChange={(_, { value }) => {
          onChoose(wrong.find(({ fault }) => fault.id === value)?.fault.id ?? null)
        }}
      >
        <option value="">Choose one of {wrong.length}</option>
        {wrong.map(({ fault, answer }) => (
          <option key={fault.id} value={fault.id}>
            {answer}: {fault.sentence}
          </option>
        ))}
      </Select>
    </Field>
  )
}

/** The faulty working beside the right one, what the pupil does, and one thing that helps. */
export function Compared({
  question,
  wrong,
}: {
  readonly question: Question
  readonly wrong: WrongAnswer
}): ReactElement {
  const { fault, answer } = wrong
  const text = printQuestion(question)
  const right = amountText(workOut(question.calculation).answer, question.unit)
  return (
    <div className="compared">
      <div className="papers">
        <figure className="wrong-way">
          <figcaption>
            <span aria-hidden="true">✗ </span>What the pupil did: <strong>{answer}</strong>
          </figcaption>
          <PaperDrawing paper={paperWith(fault, question)} title={`${text}, worked wrongly`} />
        </figure>
        <figure className="right-way">
          <figcaption>
            <span aria-hidden="true">✓ </span>The written method: <strong>{right}</strong>
          </figcaption>
          <PaperDrawing
            paper={paperAfter(question, stepsOf(question).length)}
            title={`${text}, worked rightly`}
          />
        </figure>
      </div>
      <p>{fault.sentence}</p>
      <p>
        <strong>What helps: </strong>
        {fault.help}
      </p>
    </div>
  )
}
