import type { ExchangeType } from '../../arithmetic/exchange'
import { readNumeral } from '../../arithmetic/numeral'
import { amountText, printQuestion } from '../../arithmetic/question'
import { likeliestFault } from '../../answers/diagnosis'
import type { FaultId } from '../../answers/faults'
import { readTyped, type Outcome } from '../../answers/typed'
import { FAMILIES, type Family } from '../../arithmetic/families'
import type { FamilyStanding, Judgement, Need } from '../../mastery/standing'
import { groupBy } from '../layout/groups'
import type { CellRef } from '../layout/matrix'
import type { Review, ReviewedQuestion } from '../marking/review'

/** In which order pupils are listed. */
export type Order = 'need' | 'name'

/** Pupils by family of exchange types: for every pupil a standing for each family, null where the pupil was never asked one. */
export interface HeatMap<Pupil> {
  readonly families: readonly Family[]
  readonly rows: readonly { readonly pupil: Pupil; readonly standings: readonly (FamilyStanding | null)[] }[]
}

interface Judged {
  readonly name: string
  readonly judgement: Judgement
}

const NAMES = new Intl.Collator('en-GB')

/** Pupils by family, families in teaching order; by need as `byNeed` has it. */
export function heatMap<Pupil extends Judged>(pupils: readonly Pupil[], order: Order): HeatMap<Pupil> {
  const asked = new Set(pupils.flatMap(({ judgement }) => judgement.byFamily.map(({ family }) => family)))
  const families = FAMILIES.filter((family) => asked.has(family))
  const sorted = [...pupils].sort(order === 'name' ? byName : byNeed)
  return {
    families,
    rows: sorted.map((pupil) => {
      const standings = new Map(pupil.judgement.byFamily.map((standing) => [standing.family, standing]))
      return { pupil, standings: families.map((family) => standings.get(family) ?? null) }
    }),
  }
}

const KINDS: readonly Need['kind'][] = ['fault', 'family', 'no pattern', 'typing', 'slips', 'none']

function byName(one: Judged, other: Judged): number {
  return NAMES.compare(one.name, other.name)
}

/** Most in need first: the kinds of need in their order, the lowest share right first, then by name. */
export function byNeed(one: Judged, other: Judged): number {
  const place = ({ judgement }: Judged) => KINDS.indexOf(judgement.need.kind)
  return (
    place(one) - place(other) || shareRight(one.judgement) - shareRight(other.judgement) || byName(one, other)
  )
}

function shareRight({ byFamily }: Judgement): number {
  const sum = (count: 'right' | 'tried') => byFamily.reduce((total, each) => total + each[count], 0)
  return sum('tried') === 0 ? 1 : sum('right') / sum('tried')
}

/** An answer to a question: whose, in which cell, and as it was typed. */
export interface Given {
  readonly pupil: string
  readonly cell: CellRef
  readonly typed: string
}

/** A wrong answer that several pupils or one gave, as it would be printed, and the commonest fault that leads to it (null for none). */
export interface WrongAnswer {
  readonly answer: string
  readonly count: number
  readonly fault: FaultId | null
}

/**
 * How a question went. `right` of the `tried`; `missed` the wrong answers, `blank`, `absent` and `unreadable` the numbers of the others;
 * `commonest` the wrong answers, the most frequent first (none where the cells hold marks).
 */
export interface QuestionView {
  readonly text: string
  readonly type: ExchangeType
  readonly answer: string
  readonly cell: CellRef
  readonly right: number
  readonly tried: number
  readonly missed: readonly Given[]
  readonly counts: Readonly<Record<Outcome, number>>
  readonly commonest: readonly WrongAnswer[]
}

/** The questions of a sheet's marksheets in their order, one that is asked in several places once. */
export function questionViews(reviews: readonly Pick<Review, 'questions' | 'pupils'>[]): QuestionView[] {
  const asked = reviews.flatMap(({ questions, pupils }) => {
    const answers = groupBy(
      pupils.flatMap(({ name, answers, outcomes, typed }) =>
        answers.map(({ question, row, column }, index) => ({
          question,
          outcome: outcomes[index] ?? 'blank',
          given: { pupil: name, cell: { row, column }, typed: typed[index] ?? '' },
        })),
      ),
      ({ question }) => question,
    )
    return questions.map((question, index) => ({ question, answers: answers.get(index) ?? [] }))
  })
  return [...groupBy(asked, ({ question }) => printQuestion(question.question)).values()].flatMap((same) => {
    const [first] = same
    if (first === undefined) return []
    const answers = same.flatMap((each) => each.answers)
    const missed = answers.filter(({ outcome }) => outcome === 'incorrect').map(({ given }) => given)
    const count = (wanted: Outcome) => answers.filter(({ outcome }) => outcome === wanted).length
    const { question } = first
    return [
      {
        text: printQuestion(question.question),
        type: question.exchanges.type,
        answer: amountText(question.key.numeral, question.question.unit),
        cell: { row: question.row, column: question.column },
        right: count('correct'),
        tried: count('correct') + missed.length,
        missed,
        counts: {
          correct: count('correct'),
          incorrect: missed.length,
          blank: count('blank'),
          absent: count('absent'),
          unreadable: count('unreadable'),
        },
        commonest: question.marked ? [] : wrongAnswers(question, missed),
      },
    ]
  })
}

function wrongAnswers({ question, key }: ReviewedQuestion, missed: readonly Given[]): WrongAnswer[] {
  const values = missed.flatMap(({ typed }) => {
    const read = readTyped(typed, key.unit)
    return read.kind === 'number' ? [read.value] : []
  })
  return [...groupBy(values, (value) => value)]
    .map(([value, same]) => {
      const numeral = readNumeral(value)
      const answer = numeral === null ? value : amountText(numeral, question.unit)
      return { answer, count: same.length, fault: likeliestFault(question, value) }
    })
    .sort((one, other) => other.count - one.count)
}
