import { useMemo, useState, type ReactElement } from 'react'
import { answerKey } from '../../src/answers/typed'
import { amountText, printQuestion, type Question } from '../../src/arithmetic/question'
import {
  drawInverseChecks,
  drawMissingNumbers,
  drawMistakes,
  type InverseCheck,
  type Mistaken,
} from '../../src/lesson/checks'
import { checksHandout, mistakeFound } from '../../src/lesson/questionSheets'
import { operationName } from '../../src/lesson/words'
import { Card } from '../common/Card'
import { useNotation } from '../common/notation'
import { SetNumber } from '../set/SetNumber'
import { CountField } from './CountField'
import { FIRST_RECIPE, RecipeChoice } from './RecipeChoice'
import { Take } from './Take'
import { useSetNumber } from './useSetNumber'

const MOST_OF_EACH = 12

/** Missing-number questions, calculations to check by the inverse and workings with a mistake, their answers folded away. */
export function Checks(): ReactElement {
  const draw = useSetNumber()
  const notation = useNotation()
  const [recipe, setRecipe] = useState(FIRST_RECIPE)
  const [wanted, setWanted] = useState({ missing: 4, checks: 4, mistakes: 2 })
  const { missing, checks, mistakes } = useMemo(() => {
    const part = { kind: recipe.kind, seed: draw.set }
    return {
      missing:
        wanted.missing === 0 ? { questions: [] } : drawMissingNumbers({ ...part, count: wanted.missing }),
      checks: wanted.checks === 0 ? { checks: [] } : drawInverseChecks({ ...part, count: wanted.checks }),
      mistakes: wanted.mistakes === 0 ? { mistakes: [] } : drawMistakes({ ...part, count: wanted.mistakes }),
    }
  }, [recipe, wanted, draw.set])
  const problem =
    problemOf(missing) ?? problemOf(checks) ?? problemOf(mistakes) ?? (isNothing(wanted) ? NOTHING : null)
  const handout = useMemo(
    () =>
      problem === null && 'questions' in missing && 'checks' in checks && 'mistakes' in mistakes
        ? checksHandout(missing.questions, checks.checks, mistakes.mistakes, { notation, set: draw.set })
        : null,
    [problem, missing, checks, mistakes, notation, draw.set],
  )
  return (
    <>
      <Card title="The questions">
        <div className="recipe">
          <RecipeChoice recipe={recipe} onChoose={setRecipe} />
          <div className="halves">
            <CountField
              label="Missing numbers"
              least={0}
              most={MOST_OF_EACH}
              value={wanted.missing}
              onChoose={(count) => {
                setWanted({ ...wanted, missing: count })
              }}
            />
            <CountField
              label="Checks"
              least={0}
              most={MOST_OF_EACH}
              value={wanted.checks}
              onChoose={(count) => {
                setWanted({ ...wanted, checks: count })
              }}
            />
            <CountField
              label="Mistakes to find"
              least={0}
              most={MOST_OF_EACH}
              value={wanted.mistakes}
              onChoose={(count) => {
                setWanted({ ...wanted, mistakes: count })
              }}
            />
          </div>
        </div>
        <SetNumber {...draw.field} />
        {problem !== null && (
          <p className="no-set" role="alert">
            <strong>! No questions.</strong> {problem}
          </p>
        )}
        {'questions' in missing && missing.questions.length > 0 && (
          <MissingNumbers questions={missing.questions} finding={operationName(recipe.operation)} />
        )}
        {'checks' in checks && checks.checks.length > 0 && <InverseChecks checks={checks.checks} />}
        {'mistakes' in mistakes && mistakes.mistakes.length > 0 && <Mistakes mistakes={mistakes.mistakes} />}
      </Card>
      <Take handout={handout} />
    </>
  )
}

const NOTHING = 'Choose at least one missing number, one check or one mistake.'

const isNothing = (wanted: Readonly<Record<'missing' | 'checks' | 'mistakes', number>>) =>
  wanted.missing + wanted.checks + wanted.mistakes === 0

function problemOf(reading: object): string | null {
  return 'problem' in reading ? String(reading.problem) : null
}

function MissingNumbers(props: { readonly questions: readonly Question[]; readonly finding: string }) {
  const { questions, finding } = props
  const found = (question: Question) => amountText(answerKey(question).numeral, question.unit)
  return (
    <section className="piece">
      <h3>Missing numbers</h3>
      <p className="quiet">The {finding} that finds each of them is of the type chosen above.</p>
      <ol className="drawn" aria-label="Missing numbers">
        {questions.map((question) => (
          <li key={printQuestion(question)}>
            <span className="sum">{printQuestion(question)}</span>
          </li>
        ))}
      </ol>
      <details>
        <summary>The missing numbers found</summary>
        <ol className="drawn">
          {questions.map((question) => (
            <li key={printQuestion(question)}>{found(question)}</li>
          ))}
        </ol>
      </details>
    </section>
  )
}

function InverseChecks({ checks }: { readonly checks: readonly InverseCheck[] }) {
  return (
    <section className="piece">
      <h3>Checks with the inverse</h3>
      <ol className="drawn" aria-label="Checks with the inverse">
        {checks.map(({ text }) => (
          <li key={text}>{text}</li>
        ))}
      </ol>
      <details>
        <summary>Who is right</summary>
        <ol className="drawn">
          {checks.map(({ answer }) => (
            <li key={answer}>{answer}</li>
          ))}
        </ol>
      </details>
    </section>
  )
}

function Mistakes({ mistakes }: { readonly mistakes: readonly Mistaken[] }) {
  return (
    <section className="piece">
      <h3>Mistakes to find</h3>
      <p className="quiet">Each is printed as a whole working with the mistake in it.</p>
      <ol className="drawn" aria-label="Mistakes to find">
        {mistakes.map(({ question, wrong }) => (
          <li key={printQuestion(question)}>
            <span className="sum">
              {printQuestion(question)} = {wrong.answer}
            </span>
          </li>
        ))}
      </ol>
      <details>
        <summary>What is wrong</summary>
        <ol className="drawn">
          {mistakes.map((mistake) => (
            <li key={printQuestion(mistake.question)}>{mistakeFound(mistake)}</li>
          ))}
        </ol>
      </details>
    </section>
  )
}
