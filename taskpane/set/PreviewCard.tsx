import type { ReactElement } from 'react'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { FAMILIES, familyOf } from '../../src/arithmetic/families'
import { printQuestion, type Operation, type Question } from '../../src/arithmetic/question'
import type { TellingApartSet } from '../../src/items/telling-apart'
import { toldInWords } from '../../src/items/told'
import { operationsOf } from '../../src/items/wish'
import { wordsFor } from '../../src/mastery/explain'
import { Card } from '../common/Card'
import { useSettings } from '../common/settings'
import { counted } from '../common/words'
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
          <Words questions={made.questions} />
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

/** Beforehand, family by family, the words that the marking will be able to use of a pupil who answers everything. */
function Words({ questions }: { readonly questions: readonly Question[] }) {
  const { mastery, words } = useSettings()
  const asked = questions.map(({ calculation }) => familyOf(exchangesOf(workOut(calculation)).type))
  const lines = FAMILIES.filter((family) => asked.includes(family)).map((family) => {
    const count = asked.filter((each) => each === family).length
    const possible = wordsFor(count, mastery).map((status) => words[status])
    return { what: `${family}: ${counted(count, 'question')}`, possible }
  })
  return (
    <>
      {lines
        .filter(({ possible }) => possible.length === 0)
        .map(({ what }) => (
          <p key={what}>{what}, not enough to judge.</p>
        ))}
      <details className="told">
        <summary>What the marking can say</summary>
        <ul>
          {lines.map(({ what, possible }) => (
            <li key={what}>
              {what}, {possible.length === 0 ? 'not enough to judge' : possible.join(', ')}
            </li>
          ))}
        </ul>
      </details>
    </>
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
