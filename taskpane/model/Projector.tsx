import { FluentProvider, Switch } from '@fluentui/react-components'
import { useEffect, useState, type ReactElement } from 'react'
import { printQuestion } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import { wrongAnswers } from '../../src/lesson/model/wentWrong'
import { THEMES } from '../theme'
import { Player } from './Player'
import { steppingByKeys } from './playing'
import type { ProjectedQuestion } from './projected'
import './projector.css'
import { Compared, COMPARING_STEPS } from './WentWrong'

/** A question and its model for the whole class; where a fault was chosen, a working with it can be shown, and where it goes wrong. */
export function Projector({ shown }: { readonly shown: ProjectedQuestion }): ReactElement {
  const { question, fault, isDark, notation } = shown
  const [step, setStep] = useState(shown.step)
  const [comparing, setComparing] = useState<number | null>(null)
  const wrong = wrongAnswers(question, fault).find((each) => each.fault.id === fault)
  const [at, count, onStep] =
    comparing === null
      ? [step, stepsOf(question).length, setStep]
      : [comparing, COMPARING_STEPS, setComparing]
  useEffect(() => {
    const byKey = steppingByKeys(at, count, onStep)
    window.addEventListener('keydown', byKey)
    return () => {
      window.removeEventListener('keydown', byKey)
    }
  }, [at, count, onStep])
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
            checked={comparing !== null}
            onChange={(_, { checked }) => {
              setComparing(checked ? 0 : null)
            }}
          />
        )}
      </header>
      <main>
        {wrong && comparing !== null ? (
          <Compared
            question={question}
            notation={notation}
            wrong={wrong}
            step={comparing}
            onStep={setComparing}
          />
        ) : (
          <Player question={question} notation={notation} step={step} onStep={setStep} />
        )}
      </main>
    </FluentProvider>
  )
}
