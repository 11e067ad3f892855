import { FluentProvider, Switch } from '@fluentui/react-components'
import { useEffect, useState, type ReactElement } from 'react'
import { printQuestion } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import { wrongAnswers } from '../../src/lesson/model/wentWrong'
import { THEMES } from '../theme'
import { Player } from './Player'
import { stepByKey } from './playing'
import type { ProjectedQuestion } from './projected'
import './projector.css'
import { Compared } from './WentWrong'

/** A question and its model for the whole class; where a fault was chosen, the faulty working can be shown beside the right one. */
export function Projector({ shown }: { readonly shown: ProjectedQuestion }): ReactElement {
  const { question, fault, isDark } = shown
  const [step, setStep] = useState(shown.step)
  const [comparing, setComparing] = useState(false)
  const wrong = wrongAnswers(question).find((each) => each.fault.id === fault)
  const count = stepsOf(question).length
  useEffect(() => {
    const byKey = (event: KeyboardEvent) => {
      if (event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented) return
      setStep((now) => stepByKey(event.key, now, count) ?? now)
    }
    window.addEventListener('keydown', byKey)
    return () => {
      window.removeEventListener('keydown', byKey)
    }
  }, [count])
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
            checked={comparing}
            onChange={(_, { checked }) => {
              setComparing(checked)
            }}
          />
        )}
      </header>
      <main>
        {wrong && comparing ? (
          <Compared question={question} wrong={wrong} />
        ) : (
          <Player question={question} step={step} onStep={setStep} />
        )}
      </main>
    </FluentProvider>
  )
}
