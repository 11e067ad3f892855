import { FluentProvider, Switch } from '@fluentui/react-components'
import { useEffect, useState, type ReactElement } from 'react'
import { printQuestion } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import { wrongAnswers } from '../../src/lesson/model/wentWrong'
import { THEMES } from '../theme'
import { Player } from './Player'
import { COMPARING_STEPS, steppingByKeys } from './playing'
import type { ProjectedQuestion } from './projected'
import './projector.css'
import { Compared } from './WentWrong'

/**
 * A question and its model for the whole class; where a fault was chosen, a working with it can be shown, and where it goes wrong.
 * `onShow` is called with what a step here leads to.
 */
export function Projector(props: {
  readonly shown: ProjectedQuestion
  readonly onShow: (shown: ProjectedQuestion) => void
}): ReactElement {
  const { shown, onShow } = props
  const { question, step, comparing, fault, isDark, notation } = shown
  const [isComparing, setIsComparing] = useState(false)
  const wrong = wrongAnswers(question, fault).find((each) => each.fault.id === fault)
  const onStep = (to: number) => {
    onShow({ ...shown, step: to })
  }
  const onCompare = (to: number) => {
    onShow({ ...shown, comparing: to })
  }
  useEffect(() => {
    const byKey =
      wrong && isComparing
        ? steppingByKeys(comparing, COMPARING_STEPS, onCompare)
        : steppingByKeys(step, stepsOf(question).length, onStep)
    window.addEventListener('keydown', byKey)
    return () => {
      window.removeEventListener('keydown', byKey)
    }
  })
  return (
    <FluentProvider
      theme={isDark ? THEMES.dark : THEMES.light}
      className={isDark ? 'projector dark' : 'projector'}
    >
      <header>
        <h1>{printQuestion(question)}</h1>
        {wrong && (
          <Switch
            label="What went wrong here?"
            checked={isComparing}
            onChange={(_, { checked }) => {
              setIsComparing(checked)
              onCompare(0)
            }}
          />
        )}
      </header>
      <main>
        {wrong && isComparing ? (
          <Compared
            question={question}
            notation={notation}
            wrong={wrong}
            step={comparing}
            onStep={onCompare}
          />
        ) : (
          <Player question={question} notation={notation} step={step} onStep={onStep} />
        )}
      </main>
    </FluentProvider>
  )
}
