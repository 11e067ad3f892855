import { Button } from '@fluentui/react-components'
import { useState, type ReactElement } from 'react'
import { printQuestion, type Question } from '../../../src/arithmetic/question'
import type { FaultId } from '../../../src/answers/faults'
import { wrongAnswers, type WrongAnswer } from '../../../src/lesson/model/wentWrong'
import type { GroupWork } from '../../../src/marksheet/reports/needs'
import { PEN } from '../../common/icons'
import { NAVIGATION, type ToModel } from '../../common/navigation'
import { useNotation } from '../../common/notation'
import { useBusy } from '../../common/pane'
import { sameForAll } from '../../home/atHome'
import { HomeFold } from '../../home/HomeCard'
import { Compared } from '../../model/WentWrong'
import '../../model/model.css'
import type { Direction } from '../../../src/office/questions/target'

/** Writes questions into the sheet. */
export type OnWrite = (questions: readonly Question[], direction: Direction) => void

/** Questions that can be written into the sheet, from the selected cell on. `whose` completes "Write across: …" for screen readers. */
export function QuestionSet(props: {
  readonly questions: readonly Question[]
  readonly whose: string
  readonly onWrite: OnWrite
}): ReactElement {
  const { questions, whose, onWrite } = props
  const busy = useBusy()
  return (
    <>
      <ul className="set">
        {questions.map((question) => (
          <li key={printQuestion(question)} className="sum">
            {printQuestion(question)}
          </li>
        ))}
      </ul>
      <div className="buttons">
        {(['across', 'down'] as const).map((direction) => (
          <Button
            key={direction}
            size="small"
            disabled={busy}
            aria-label={`Write ${direction} from the selected cell: ${whose}`}
            onClick={() => {
              onWrite(questions, direction)
            }}
          >
            Write {direction}
          </Button>
        ))}
      </div>
    </>
  )
}

/** What a group works at: the next set, and the example to model, with the faulty working beside it where there is one. `names`: of the group. */
export function Work(props: {
  readonly work: GroupWork
  readonly fault: FaultId | null
  readonly whose: string
  readonly names: readonly string[]
  readonly onWrite: OnWrite
}): ReactElement {
  const { work, fault, whose, names, onWrite } = props
  const { example, questions, problem } = work
  if (problem !== null) return <p>{problem}</p>
  const wrong = example && wrongAnswers(example.question, fault).find((each) => each.fault.id === fault)
  return (
    <>
      <h4>Next set</h4>
      <QuestionSet questions={questions} whose={whose} onWrite={onWrite} />
      <HomeFold atHome={sameForAll(questions, names)} whose={whose} />
      {example && (
        <>
          <details>
            <summary>
              Example to model: <span className="sum">{example.text}</span>
            </summary>
            {wrong ? (
              <Comparison key={example.text} question={example.question} wrong={wrong} />
            ) : (
              <ol className="steps">
                {example.steps.map((say) => (
                  <li key={say}>{say}</li>
                ))}
              </ol>
            )}
          </details>
          <ModelIt question={example.question} fault={wrong?.fault.id ?? null} />
        </>
      )}
    </>
  )
}

function Comparison({ question, wrong }: { readonly question: Question; readonly wrong: WrongAnswer }) {
  const [step, setStep] = useState(0)
  const notation = useNotation()
  return <Compared question={question} notation={notation} wrong={wrong} step={step} onStep={setStep} />
}

/** Opens Model with a question and, where there is one, a working with a fault. */
export function ModelIt({ question, fault }: ToModel): ReactElement {
  return (
    <Button
      size="small"
      icon={PEN}
      aria-label={`Model it: ${printQuestion(question)}`}
      onClick={() => {
        NAVIGATION.model({ question, fault })
      }}
    >
      Model it
    </Button>
  )
}
