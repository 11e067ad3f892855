import { printQuestion, type Question } from '../arithmetic/question'
import { minutesFor, worthOf, type Board, type DiceGrid } from './dice'
import { countedNoun } from './words'
import type { Block, Handout, Sheet } from './handout'
import { roomsFor } from './lessonSheets'
import type { Story } from './stories/story'
import type { TrianglePuzzle } from './triangle'
import { withAnswer, workedQuestion } from './worked'

/** The dice starter: a sheet for each board, and one for the teacher with the answers, the ways to count and the length of the game. */
export function diceHandout(boards: readonly DiceGrid[], set: string): Handout {
  const title = 'Roll and cover'
  const named = (index: number) => (boards.length > 1 ? `Board ${index + 1}` : '')
  return {
    title,
    set,
    sheets: [
      ...boards.map(({ board, rows }, index): Sheet => ({
        title: named(index) === '' ? title : `${title}: ${named(index).toLowerCase()}`,
        reader: 'pupil',
        blocks: [
          { kind: 'list', items: RULES[board] },
          {
            kind: 'grid',
            rows: rows.map((row) => row.map(({ question }) => ({ text: printQuestion(question), note: '' }))),
          },
        ],
      })),
      {
        title: `${title}: answers`,
        reader: 'adult',
        blocks: boards.flatMap(({ board, rows, rolls }, index): Block[] => [
          ...(named(index) === '' ? [] : [{ kind: 'heading', text: named(index) } as const]),
          ...(index > 0 ? [] : [{ kind: 'text', text: lengthOf(rolls.value) } as const]),
          {
            kind: 'grid',
            rows: rows.map((row) =>
              row.map(({ question, total, counting }) => ({
                text: solved(question, total * worthOf(board)),
                note: counting ?? '',
              })),
            ),
          },
        ]),
      },
    ],
  }
}

function lengthOf(rolls: number): string {
  return `To cover every cell takes ${Math.round(rolls)} rolls on average, about ${countedNoun(minutesFor(rolls), 'minute')} where each roll takes a quarter of a minute. For a shorter game, stop at a line of covered cells, or choose a smaller grid.`
}

/** A question with its answer, a missing number in its place: "13 + 7 = 20". */
function solved(question: Question, answer: number): string {
  const printed = printQuestion(question)
  return question.missing === 'result' ? `${printed} = ${answer}` : printed.replace('□', `[${answer}]`)
}

const END = [
  'If your partner agrees, cover it or cross it out.',
  'The game is over when every cell is covered.',
]
const ADD_DICE = 'Take turns. Roll two dice and add them.'
const COUNT = 'Say whether you count on or count back.'

/** How each board is played. */
const RULES: Readonly<Record<Board, readonly string[]>> = {
  'take away': [ADD_DICE, `Find a subtraction whose answer is your total. ${COUNT}`, ...END],
  add: [ADD_DICE, 'Find an addition whose answer is your total. Say how you know.', ...END],
  tens: [
    `${ADD_DICE} Make the total tens: 7 is 70.`,
    `Find a subtraction with that answer. ${COUNT}`,
    ...END,
  ],
  hundreds: [
    `${ADD_DICE} Make the total hundreds: 7 is 700.`,
    `Find a subtraction with that answer. ${COUNT}`,
    ...END,
  ],
  bonds: [ADD_DICE, 'Find a calculation whose missing number is your total. Say the bond to 20.', ...END],
}

/** Number triangles: a sheet of puzzles, and one of solutions with hints for the teacher to give. */
export function triangleHandout(puzzles: readonly TrianglePuzzle[], set: string): Handout {
  const title = 'Number triangles'
  const label = (index: number) => `Triangle ${index + 1}`
  const triangles = (numbers: (puzzle: TrianglePuzzle) => readonly (number | null)[]): Block => ({
    kind: 'triangles',
    triangles: puzzles.map((puzzle, index) => ({
      label: label(index),
      total: puzzle.total,
      numbers: numbers(puzzle),
    })),
  })
  return {
    title,
    set,
    sheets: [
      {
        title,
        reader: 'pupil',
        blocks: [
          { kind: 'fields', names: ['Name', 'Date'] },
          {
            kind: 'text',
            text: 'Write each of the numbers 1 to 9 once in every triangle. The four numbers on each side must add up to the number in the middle.',
          },
          triangles(({ given }) => given),
        ],
      },
      {
        title: `${title}: answers`,
        reader: 'adult',
        blocks: [
          triangles(({ solution }) => solution),
          { kind: 'heading', text: 'Hints, to give one at a time' },
          ...puzzles.map(({ hint }, index): Block => ({
            kind: 'together',
            blocks: [
              { kind: 'heading', text: label(index) },
              { kind: 'list', items: hint },
            ],
          })),
        ],
      },
    ],
  }
}

/** How a sheet of stories helps with bars: with what is told in them, with empty ones, or not at all. */
export type BarHelp = 'given' | 'blank' | 'none'

/** Two-step stories: a sheet with bars as wanted, an estimate and room for both calculations, and the answers. */
export function storyHandout(stories: readonly Story[], set: string, help: BarHelp = 'given'): Handout {
  const title = 'Two-step stories'
  const heading = (index: number): Block => ({ kind: 'heading', text: `Story ${index + 1}` })
  const together = (blocks: readonly Block[]): Block => ({ kind: 'together', blocks })
  const pupil: Sheet = {
    title,
    reader: 'pupil',
    blocks: [
      { kind: 'fields', names: ['Name', 'Date'] },
      ...stories.map(({ text, bars, steps }, index) =>
        together([
          heading(index),
          { kind: 'text', text },
          ...(help === 'none'
            ? []
            : [{ kind: 'bars', bars, shown: help === 'given' ? 'told' : 'nothing' } as const]),
          {
            kind: 'rooms',
            rooms: roomsFor(steps.map(workedQuestion), () => '', 'Estimate').map((room) => ({
              ...room,
              text: '',
            })),
          },
          { kind: 'fields', names: ['Answer', 'Check'] },
        ]),
      ),
    ],
  }
  const answers: Sheet = {
    title: `${title}: answers`,
    reader: 'adult',
    blocks: stories.map(({ text, bars, steps, answer }, index) =>
      together([
        heading(index),
        { kind: 'text', text },
        { kind: 'text', text: `${steps.map(withAnswer).join(', then ')}.` },
        ...steps.map((step, at) => ({ kind: 'text', text: aroundStep(step, at) }) as const),
        { kind: 'bars', bars, shown: 'all' },
        { kind: 'text', text: answer },
      ]),
    ),
  }
  return { title, set, sheets: [pupil, answers] }
}

/** "First step. Estimate: 270 − 40 = 230. Check: 233 + 40 = 273." */
function aroundStep(step: Question, at: number): string {
  const { estimate, check } = workedQuestion(step)
  const before = estimate === null ? '' : ` Estimate: ${estimate}.`
  return `${at === 0 ? 'First' : 'Second'} step.${before} Check: ${check}.`
}
