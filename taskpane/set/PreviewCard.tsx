import type { ReactElement } from 'react'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { printQuestion, type Operation, type Question } from '../../src/arithmetic/question'
import type { TellingApartSet } from '../../src/items/telling-apart'
import { toldInWords } from '../../src/items/told'
import { operationsOf } from '../../src/items/wish'
import { Card } from '../common/Card'
import { factsOf, setNumber } from './choices'
import { SetNumber } from './SetNumber'
import type { Setter, SetterState } from './setter'

/** The set that was drawn: its number, each question with its type, and what is to be known about it. */
export function PreviewCard(props: { readonly setter: Setter; readonly state: SetterState }): ReactElement {
  const { setter, state } = props
  const { made, typed, choices } = state
  const facts = factsOf(made, choices, setNumber(typed))
  return (
    <Card title="The set">
      <SetNumber typed={typed} onType={setter.type} onAgain={setter.again} />
      <p className="quiet">
        The same choices and set number give the same questions in a parallel class. A word will do too.
      </p>
      {facts.length > 0 && <p>{facts.join(' ')}</p>}
      {'problem' in made ? (
        <p className="no-set" role="alert">
          <strong>! No set.</strong> {made.problem}
        </p>
      ) : (
        <>
          {made.told && <ToldApart set={made.told} operations={operationsOf(choices.operation)} />}
          <ol className="drawn" aria-label="Questions drawn">
            {made.questions.map((question) => (
              <Drawn key={printQuestion(question)} question={question} />
            ))}
          </ol>
        </>
      )}
    </Card>
  )
}

function Drawn({ question }: { readonly question: Question }) {
  return (
    <li>
      <span className="sum">{printQuestion(question)}</span>{' '}
      <span className="quiet">{exchangesOf(workOut(question.calculation)).type}</span>
    </li>
  )
}

function ToldApart(props: { readonly set: TellingApartSet; readonly operations: readonly Operation[] }) {
  const { summary, shown, limits } = toldInWords(props.set, props.operations)
  return (
    <>
      <p>{summary}</p>
      <details className="told">
        <summary>What it can and cannot tell</summary>
        {limits.length > 0 && <Sentences title="It cannot tell for sure" sentences={limits} />}
        <Sentences title="It shows pupils who do this" sentences={shown} />
      </details>
    </>
  )
}

function Sentences({ title, sentences }: { readonly title: string; readonly sentences: readonly string[] }) {
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  )
}
