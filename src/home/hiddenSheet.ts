import { addressOf, areaAddress, areaOf } from '../marksheet/layout/matrix'
import type { HomeChoices } from './choices'
import { setCode } from './codes'
import { countInFormula, readingSteps, sayingFormula, STEPS } from './feedback'
import { HIDDEN_SHEET, MARK, PARTS_HEADINGS, QUESTIONS_SHEET, type HomeSet } from './format'
import type { Place } from './places'
import type { Sheet, SheetCell } from './xlsx'

const ROWS = { mark: 0, set: 1, child: 2, count: 3, headings: 4, first: 5 } as const
const HEADINGS = [...PARTS_HEADINGS, ...STEPS, 'says'] as const

/** The cell that holds how many answers are in, with its sheet. */
export const COUNT_CELL = `${HIDDEN_SHEET}!$B$${ROWS.count + 1}`

/** The cell that holds what is said of an answer, with its sheet. */
export function saysCell(at: number): string {
  return `${HIDDEN_SHEET}!${cellUnder('says', at)}`
}

/** The sheet that says what was sent and to whom, and works out the feedback. It holds no answer where there is no feedback. */
export function hiddenSheet(
  { child, questions }: HomeSet,
  choices: HomeChoices,
  places: readonly Place[],
): Sheet {
  const { feedback } = choices
  const cell = (row: number, column: number, holds: SheetCell['holds']): SheetCell => ({
    row,
    column,
    style: 'plain',
    holds,
  })
  const word = (row: number, says: string, holds: SheetCell['holds']) => [
    cell(row, 0, says),
    cell(row, 1, holds),
  ]
  const headings = feedback === 'none' ? PARTS_HEADINGS : HEADINGS
  return {
    name: HIDDEN_SHEET,
    hidden: true,
    cells: [
      cell(ROWS.mark, 0, MARK),
      ...word(ROWS.set, 'Set', setCode(questions.map(({ question }) => question))),
      ...word(ROWS.child, 'Child', child?.code ?? ''),
      ...word(ROWS.count, 'Answered', { formula: countFormula(places, choices) }),
      ...headings.map((heading, column) => cell(ROWS.headings, column, heading)),
      ...places.flatMap((place, at) =>
        [
          at + 1,
          place.question.text,
          addressOf(place.answer),
          ...formulasOf(place, at, places.length, choices),
        ].map((holds, column) => cell(ROWS.first + at, column, holds)),
      ),
    ],
    widths: [8, 24, 12],
    heights: new Map(),
    prompts: [],
    merges: [],
    repeats: null,
  }
}

function countFormula(places: readonly Place[], { feedback }: HomeChoices): string {
  if (feedback !== 'none')
    return countInFormula(`${cellUnder('state', 0)}:${cellUnder('state', places.length - 1)}`, places.length)
  const answers = areaAddress(areaOf([places.map(({ answer }) => answer)]))
  return `SUMPRODUCT(--(LEN(TRIM(${QUESTIONS_SHEET}!${answers}))>0))`
}

function formulasOf(
  { question: { question }, answer }: Place,
  at: number,
  count: number,
  { feedback, when }: HomeChoices,
): SheetCell['holds'][] {
  if (feedback === 'none') return []
  const steps = readingSteps(`${QUESTIONS_SHEET}!${addressOf(answer)}`, question, (step) =>
    cellUnder(step, at),
  )
  const says = sayingFormula(question, feedback, (step) => cellUnder(step, at))
  const whole = when === 'each' ? says : `IF($B$${ROWS.count + 1}=${count},${says},"")`
  return [...STEPS.map((step) => steps[step]), whole].map((formula) => ({ formula }))
}

function cellUnder(heading: (typeof HEADINGS)[number], at: number): string {
  return addressOf({ row: ROWS.first + at, column: HEADINGS.indexOf(heading) })
}
