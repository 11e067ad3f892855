import { Button, Field, Input, Switch } from '@fluentui/react-components'
import { useEffect, useState, type ReactElement } from 'react'
import type { Question } from '../../src/arithmetic/question'
import { wrongAnswers } from '../../src/lesson/model/wentWrong'
import { Card } from '../common/Card'
import { CELLS, PICTURE, SCREEN, SELECT } from '../common/icons'
import { NAVIGATION } from '../common/navigation'
import { useNotation } from '../common/notation'
import { useBusy, useRunner, useStore } from '../common/pane'
import { WriteOver } from '../common/WriteOver'
import { isDark } from '../theme'
import { Modeller, type ModellerState } from './modeller'
import { Player } from './Player'
import { pictureOf } from './png'
import { Compared, FaultChoice } from './WentWrong'

/** Model: a question worked step by step on squared paper, what can go wrong with it, and both taken to the sheet or a large window. */
export function ModelArea(): ReactElement {
  const runner = useRunner()
  const [modeller] = useState(() => new Modeller(runner))
  const state = useStore(modeller)
  const { toModel } = useStore(NAVIGATION)
  useEffect(() => {
    if (toModel) modeller.show(toModel.question, toModel.fault)
  }, [modeller, toModel])
  useEffect(
    () => () => {
      void modeller.follow(false)
    },
    [modeller],
  )
  const notation = useNotation()
  const { question, step } = state
  return (
    <>
      <Asking modeller={modeller} state={state} />
      {question && (
        <>
          <Card title="Step by step">
            <Player question={question} notation={notation} step={step} onStep={modeller.goTo} />
          </Card>
          <Card title="What went wrong here?">
            <WentWrong modeller={modeller} state={state} question={question} />
          </Card>
          <Card title="Show it elsewhere">
            <Elsewhere modeller={modeller} state={state} question={question} />
          </Card>
        </>
      )}
    </>
  )
}

interface Parts {
  readonly modeller: Modeller
  readonly state: ModellerState
}

interface AboutQuestion extends Parts {
  readonly question: Question
}

function Asking({ modeller, state: { text, problem, following } }: Parts) {
  const busy = useBusy()
  return (
    <Card title="Question">
      <form
        className="asking"
        onSubmit={(event) => {
          event.preventDefault()
          modeller.read()
        }}
      >
        <Field
          label="An addition or subtraction"
          hint="Such as 7,214 − 86, £4.50 + 85p or □ − 46 = 30"
          {...(problem === null ? {} : { validationMessage: problem, validationState: 'error' as const })}
        >
          <Input
            value={text}
            autoComplete="off"
            contentAfter={
              <Button type="submit" size="small" appearance="primary">
                Show
              </Button>
            }
            onChange={(_, { value }) => {
              modeller.type(value)
            }}
          />
        </Field>
        <div className="from-cell">
          <Button icon={SELECT} disabled={busy} onClick={() => void modeller.takeSelected()}>
            Use the selected cell
          </Button>
          <Switch
            label="Follow my selection"
            checked={following}
            onChange={(_, { checked }) => void modeller.follow(checked)}
          />
        </div>
      </form>
    </Card>
  )
}

function WentWrong({ modeller, state: { fault, comparing }, question }: AboutQuestion) {
  const notation = useNotation()
  const wrong = wrongAnswers(question, fault)
  const chosen = wrong.find((each) => each.fault.id === fault)
  if (wrong.length === 0) return <p>None of the common faults leads to a wrong answer to this question.</p>
  return (
    <>
      <FaultChoice wrong={wrong} chosen={chosen?.fault.id ?? null} onChoose={modeller.chooseFault} />
      {chosen && (
        <Compared
          question={question}
          notation={notation}
          wrong={chosen}
          step={comparing}
          onStep={modeller.compare}
        />
      )}
    </>
  )
}

function Elsewhere({ modeller, state: { step, asked }, question }: AboutQuestion) {
  const busy = useBusy()
  const notation = useNotation()
  return (
    <>
      <p className="quiet">
        The large window shows the question and its model, no names. Into the sheet, they go to the selected
        cell.
      </p>
      <div className="buttons">
        <Button icon={SCREEN} disabled={busy} onClick={() => void modeller.project(isDark(), notation)}>
          Large window
        </Button>
        <Button icon={CELLS} disabled={busy} onClick={() => void modeller.insertCells(notation)}>
          Finished layout into cells
        </Button>
        <Button
          icon={PICTURE}
          disabled={busy}
          onClick={() => void modeller.insertPicture(() => pictureOf(question, step, notation))}
        >
          Paper as it is now, as a picture
        </Button>
      </div>
      {asked && (
        <WriteOver
          sheet={asked.sheet}
          taken={asked.taken.map((address) => ({ address }))}
          onAnswer={(over) => void modeller.answer(over)}
        />
      )}
    </>
  )
}
