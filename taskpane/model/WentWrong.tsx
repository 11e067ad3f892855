import { Field, Select } from '@fluentui/react-components'
import type { ReactElement } from 'react'
import type { FaultId } from '../../src/answers/faults'
import { workOut } from '../../src/arithmetic/columns'
import { amountText, printQuestion, type Question } from '../../src/arithmetic/question'
import type { Notation } from '../../src/lesson/model/notation'
import { finishedPaper, paperWith } from '../../src/lesson/model/paper'
import { mistakeIn, type WrongAnswer } from '../../src/lesson/model/wentWrong'
import { BACK, NEXT } from '../common/icons'
import { PaperDrawing } from './PaperDrawing'
import { COMPARING_STEPS, steppingByKeys } from './playing'
import { StepButton } from './StepButton'

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

/**
 * A working with a mistake, in steps, so that it can be looked for: alone; with the place where it goes wrong and what is done there;
 * beside the right working, with one thing that helps. Buttons, arrow keys, Home and End lead through the steps.
 */
export function Compared(props: {
  readonly question: Question
  readonly notation: Notation
  readonly wrong: WrongAnswer
  readonly step: number
  readonly onStep: (step: number) => void
}): ReactElement {
  const { question, notation, wrong, step, onStep } = props
  const { fault, answer } = wrong
  const text = printQuestion(question)
  const mistake = mistakeIn(fault, question)
  const isFound = step > 0
  const isRighted = step === COMPARING_STEPS
  const stepping = { step, count: COMPARING_STEPS, onStep }
  return (
    <div
      className="compared"
      role="group"
      aria-label={`${text}, a working with a mistake`}
      onKeyDown={steppingByKeys(step, COMPARING_STEPS, onStep)}
    >
      <div className="papers">
        <figure className={isFound ? 'wrong-way' : 'unknown-way'}>
          <figcaption>
            {isFound ? (
              <>
                <span aria-hidden="true">✗ </span>With this fault: <strong>{answer}</strong>
              </>
            ) : (
              'A working with a mistake. Where is it?'
            )}
          </figcaption>
          <PaperDrawing
            paper={{ ...paperWith(fault, question, notation), current: isFound ? mistake.place : null }}
            title={`${text}, a working with a mistake`}
          />
        </figure>
        {isRighted && <Righted question={question} notation={notation} />}
      </div>
      <div className="line">
        <div className="explained" role="status" aria-atomic="false">
          {isFound && (
            <p>
              {mistake.say} {fault.sentence}
            </p>
          )}
          {isRighted && (
            <p>
              <strong>What helps: </strong>
              {fault.help}
            </p>
          )}
        </div>
        <div className="buttons">
          <StepButton label="Back a step" icon={BACK} keyName="ArrowLeft" {...stepping} />
          <StepButton
            label={isFound ? 'Show the right working' : 'Show where'}
            icon={NEXT}
            keyName="ArrowRight"
            primary
            {...stepping}
          />
        </div>
      </div>
    </div>
  )
}

function Righted({ question, notation }: { readonly question: Question; readonly notation: Notation }) {
  const right = amountText(workOut(question.calculation).answer, question.unit)
  return (
    <figure className="right-way">
      <figcaption>
        <span aria-hidden="true">✓ </span>The written method: <strong>{right}</strong>
      </figcaption>
      <PaperDrawing
        paper={finishedPaper(question, notation)}
        title={`${printQuestion(question)}, worked rightly`}
      />
    </figure>
  )
}
