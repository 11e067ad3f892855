import { printQuestion, type Question } from '../arithmetic/question'
import type { DiceGrid } from './dice'
import type { Block, Handout, Sheet } from './handout'
import { roomsFor } from './lessonSheets'
import type { Story } from './stories/story'
import type { TrianglePuzzle } from './triangle'
import { withAnswer, workedQuestion } from './worked'

/** The dice starter: a sheet to play on, and one for the teacher with the answers, the ways to count and the length of the game. */
export function diceHandout({ rows, rolls }: DiceGrid, set: string): Handout {
  const title = 'Roll and cover'
  return {
    title,
    set,
    sheets: [
      {
        title,
        reader: 'pupil',
        blocks: [
          {
            kind: 'list',
            items: [
              'Take turns. Roll two dice and add them.',
              'Find a subtraction whose answer is your total. Say whether you count on or count back.',
              'If your partner agrees, cover it or cross it out.',
              'The game is over when every subtraction is covered.',
            ],
          },
          {
            kind: 'grid',
            rows: rows.map((row) => row.map(({ question }) => ({ text: printQuestion(question), note: '' }))),
          },
        ],
      },
      {
        title: `${title}: answers`,
        reader: 'adult',
        blocks: [
          {
            kind: 'text',
            text: `To cover every cell takes ${Math.round(rolls.value)} rolls on average. For a shorter game, stop at a line of covered cells, or choose a smaller grid.`,
          },
          {
            kind: 'grid',
            rows: rows.map((row) =>
              row.map(({ question, total, counting }) => ({
                text: `${printQuestion(question)} = ${total}`,
                note: counting,
              })),
            ),
          },
        ],
      },
    ],
  }
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
