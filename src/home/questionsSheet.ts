import { range } from '../marksheet/layout/matrix'
import type { HomeChoices } from './choices'
import { setCode } from './codes'
import { HEADINGS, NAME_LABEL, QUESTIONS_SHEET, TITLE, type HomeSet } from './format'
import { COUNT_CELL, saysCell } from './hiddenSheet'
import { COLUMNS, ROWS, type Place } from './places'
import type { Prompt, Sheet, SheetCell } from './xlsx'

/** Heights of rows, in points; a question's takes two lines of a hint. */
const HEIGHTS = { title: 30, text: 24, question: 44, square: 22 } as const
/** Widths of columns, in characters of the plain style; a question's by the characters of its text, which are larger. */
const WIDTHS = {
  number: 6,
  question: 1.5,
  leastQuestion: 20,
  answer: 17,
  says: 48,
  saysBesideSquares: 32,
  gap: 2,
  square: 4,
} as const

const ADVICE = 'Type each answer in its box, then press Tab for the next one.'
const AT_THE_END = 'All done? Save, and send this file back the way it came.'

/** The sheet that the child sees. */
export function questionsSheet(
  { child, questions }: HomeSet,
  choices: HomeChoices,
  places: readonly Place[],
): Sheet {
  const { feedback, when } = choices
  const end = ROWS.first + places.reduce((sum, { rows }) => sum + rows, 0)
  const set = setCode(questions.map(({ question }) => question))
  const name = { row: ROWS.name, column: COLUMNS.answer }
  const later = feedback !== 'none' && when === 'all' ? ' When all are in, you will see how it went.' : ''
  const heads = feedback === 'none' ? HEADINGS.slice(0, COLUMNS.says) : HEADINGS
  const text = (row: number, holds: SheetCell['holds'], style: SheetCell['style'] = 'text') => ({
    row,
    column: COLUMNS.number,
    style,
    holds,
  })
  return {
    name: QUESTIONS_SHEET,
    hidden: false,
    cells: [
      text(
        ROWS.title,
        child === null ? TITLE : `${TITLE} for ${child.name === '' ? child.code : child.name}`,
        'title',
      ),
      text(ROWS.advice, ADVICE),
      ...(child === null
        ? [text(ROWS.name, NAME_LABEL), { ...name, style: 'name' as const, holds: '' }]
        : []),
      text(ROWS.progress, { formula: `${COUNT_CELL}&" of ${questions.length} answered.${later}"` }),
      ...heads.map((holds, column) => ({ row: ROWS.headings, column, style: 'heading' as const, holds })),
      ...places.flatMap((place, at) => cellsOf(place, at, feedback !== 'none')),
      text(end + 1, AT_THE_END),
      text(end + 2, `For your teacher: set ${set}${child === null ? '' : `, child ${child.code}`}.`, 'small'),
    ],
    widths: widthsOf(places, feedback !== 'none'),
    heights: new Map([
      ...range(ROWS.advice, ROWS.first).map((row): [number, number] => [row, HEIGHTS.text]),
      [ROWS.title, HEIGHTS.title],
      ...places.flatMap(({ answer: { row }, rows }) =>
        range(row, row + rows).map((each): [number, number] => [
          each,
          rows === 1 ? HEIGHTS.question : HEIGHTS.square,
        ]),
      ),
      [end + 1, HEIGHTS.text],
    ]),
    prompts: [
      ...(child === null ? [{ ...name, says: NAME_LABEL }] : []),
      ...places.map(({ question, answer }, at): Prompt => ({
        ...answer,
        says: `Question ${at + 1}: ${readOut(question.text)}`,
      })),
    ],
    merges:
      feedback === 'none'
        ? []
        : places.flatMap(({ says: { row, column }, squares }) =>
            squares
              ? [{ top: row, left: column, bottom: row + squares.lines.length - 1, right: column }]
              : [],
          ),
    repeats: ROWS.headings,
  }
}

function cellsOf({ question, answer, says, squares }: Place, at: number, hasFeedback: boolean): SheetCell[] {
  const { row } = answer
  return [
    { row, column: COLUMNS.number, style: 'number', holds: at + 1 },
    { row, column: COLUMNS.question, style: 'question', holds: question.text },
    { ...answer, style: 'answer', holds: '' },
    ...(hasFeedback ? [{ ...says, style: 'says' as const, holds: { formula: saysCell(at) } }] : []),
    ...(squares?.lines ?? []).flatMap(({ style, texts }, down) =>
      texts.map((holds, across) => ({ row: row + down, column: COLUMNS.squares + across, style, holds })),
    ),
  ]
}

function widthsOf(places: readonly Place[], hasFeedback: boolean): number[] {
  const longest = Math.max(0, ...places.map(({ question }) => question.text.length))
  const squares = Math.max(0, ...places.map((place) => place.squares?.columns ?? 0))
  return [
    WIDTHS.number,
    Math.max(WIDTHS.leastQuestion, Math.ceil(longest * WIDTHS.question) + 2),
    WIDTHS.answer,
    !hasFeedback ? WIDTHS.gap : squares > 0 ? WIDTHS.saysBesideSquares : WIDTHS.says,
    ...(squares > 0 ? [WIDTHS.gap, ...Array<number>(squares).fill(WIDTHS.square)] : []),
  ]
}

/** A question in words that a screen reader says. */
function readOut(question: string): string {
  return question
    .replace(/\s*[-−–]\s*/g, ' minus ')
    .replace(/\s*\+\s*/g, ' plus ')
    .replace(/\s*=\s*(?=\S)/g, ' equals ')
    .replaceAll('□', 'what')
}
