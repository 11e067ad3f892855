import { Button } from '@fluentui/react-components'
import type { KeyboardEvent, ReactElement } from 'react'
import { printQuestion, type Question } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import { paperAfter } from '../../src/lesson/model/paper'
import { BACK, FIRST, LAST, NEXT } from '../common/icons'
import { PaperDrawing } from './PaperDrawing'
import { saidAfter, stepByKey } from './playing'

/** A question worked step by step on squared paper, with the spoken line; buttons, arrow keys, Home and End lead through the steps. */
export function Player(props: {
  readonly question: Question
  readonly step: number
  readonly onStep: (step: number) => void
}): ReactElement {
  const { question, step, onStep } = props
  const count = stepsOf(question).length
  const text = printQuestion(question)
  const byKey = (event: KeyboardEvent) => {
    const to = stepByKey(event.key, step, count)
    if (to === null || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    event.stopPropagation()
    onStep(to)
  }
  const button = (label: string, icon: ReactElement, key: string, off: boolean, primary = false) => (
    <Button
      icon={icon}
      appearance={primary ? 'primary' : 'secondary'}
      disabledFocusable={off}
      aria-keyshortcuts={key}
      onClick={() => {
        onStep(stepByKey(key, step, count) ?? step)
      }}
    >
      {label}
    </Button>
  )
  return (
    // The keys work from each of the buttons inside.
    <div className="player" role="group" aria-label={`${text}, step by step`} onKeyDown={byKey}>
      <PaperDrawing paper={paperAfter(question, step)} title={text} />
      <div className="line">
        <p className="step-count">{step === 0 ? 'Before the first step' : `Step ${step} of ${count}`}</p>
        <p className="say" role="status">
          {saidAfter(question, step)}
        </p>
        <div className="steps">
          {button('Back', BACK, 'ArrowLeft', step === 0)}
          {button('Next', NEXT, 'ArrowRight', step === count, true)}
          {button('Start again', FIRST, 'Home', step === 0)}
          {button('Whole answer', LAST, 'End', step === count)}
        </div>
      </div>
    </div>
  )
}
