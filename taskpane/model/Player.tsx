import type { ReactElement } from 'react'
import { printQuestion, type Question } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import type { Notation } from '../../src/lesson/model/notation'
import { paperAfter } from '../../src/lesson/model/paper'
import { BACK, FIRST, LAST, NEXT } from '../common/icons'
import { Beside } from './Beside'
import { PaperDrawing } from './PaperDrawing'
import { saidAfter, steppingByKeys } from './playing'
import { StepButton } from './StepButton'

/** A question worked step by step on squared paper, with the spoken line; buttons, arrow keys, Home and End lead through the steps. */
export function Player(props: {
  readonly question: Question
  readonly notation: Notation
  readonly step: number
  readonly onStep: (step: number) => void
}): ReactElement {
  const { question, notation, step, onStep } = props
  const count = stepsOf(question).length
  const text = printQuestion(question)
  const stepping = { step, count, onStep }
  return (
    // The keys work from each of the buttons inside.
    <div
      className="player"
      role="group"
      aria-label={`${text}, step by step`}
      onKeyDown={steppingByKeys(step, count, onStep)}
    >
      <PaperDrawing paper={paperAfter(question, step, notation)} title={text} />
      <div className="line">
        <p className="step-count">{step === 0 ? 'Before the first step' : `Step ${step} of ${count}`}</p>
        <p className="say" role="status">
          {saidAfter(question, step)}
        </p>
        <div className="steps">
          <StepButton label="Back" icon={BACK} keyName="ArrowLeft" {...stepping} />
          <StepButton label="Next" icon={NEXT} keyName="ArrowRight" primary {...stepping} />
          <StepButton label="Start again" icon={FIRST} keyName="Home" {...stepping} />
          <StepButton label="Whole answer" icon={LAST} keyName="End" {...stepping} />
        </div>
        <Beside question={question} step={step} />
      </div>
    </div>
  )
}
