import type { InverseCheck, Mistaken } from './checks'
import type { Block, Handout, Making, Sheet } from './handout'
import { inRows } from './cells/piece'
import { roomsFor, smallRooms, workingOf } from './lessonSheets'
import { gridOf } from './model/grid'
import type { Notation } from './model/notation'
import { paperWith } from './model/paper'
import { mistakeIn } from './model/wentWrong'
import type { PersonalSet } from './personal'
import type { Question } from '../arithmetic/question'
import { withAnswer, workedQuestion, type WorkedQuestion } from './worked'

const numbered = (index: number) => `${index + 1}`

/** Personal sets on paper: a sheet for each pupil, without a word of why these questions, and the answers for the teacher. */
export function personalHandout(sets: readonly PersonalSet[], { notation, set }: Making): Handout {
  const title = 'My own questions'
  const worked = sets.map(({ name, questions }) => ({ name, questions: questions.map(workedQuestion) }))
  return {
    title,
    set,
    sheets: [
      ...personalSheets(
        worked.map(({ name, questions }) => [
          { kind: 'heading', text: `${name}: my own questions` },
          { kind: 'fields', names: ['Date'] },
          smallRooms(questions, numbered),
        ]),
        worked.every(({ questions }) => questions.length <= MOST_ON_HALF),
      ),
      {
        title: `${title}: answers`,
        reader: 'adult',
        blocks: worked.map(({ name, questions }) => ({
          kind: 'together',
          blocks: answersUnder(name, questions, notation),
        })),
      },
    ],
  }
}

/** The most questions of a set of which two stand on a page. */
const MOST_ON_HALF = 6

/** A sheet for every two pupils, to be cut apart, where their sets are short; otherwise one for each. */
function personalSheets(sets: readonly (readonly Block[])[], areShort: boolean): Sheet[] {
  const each = areShort ? 2 : 1
  return inRows(sets, each).map((halves) => ({
    title: '',
    reader: 'pupil',
    blocks: areShort ? [{ kind: 'halves', halves }] : halves.flat(),
  }))
}

/**
 * Missing-number questions, then calculations to check by the inverse, then workings with a mistake to find, with room to work, and the
 * answers. Each may be none.
 */
export function checksHandout(
  missing: readonly Question[],
  checks: readonly InverseCheck[],
  mistakes: readonly Mistaken[],
  { notation, set }: Making,
): Handout {
  const title = 'Missing numbers and checks'
  const worked = missing.map(workedQuestion)
  const rooms = roomsFor(
    checks.map(({ inverse }) => workedQuestion(inverse)),
    numbered,
  ).map((room, index) => ({ ...room, text: checks[index]?.text ?? '', line: 'Answer' }))
  const under = (text: string, blocks: readonly Block[]): Block[] => [{ kind: 'heading', text }, ...blocks]
  return {
    title,
    set,
    sheets: [
      {
        title,
        reader: 'pupil',
        blocks: [
          { kind: 'fields', names: ['Name', 'Date'] },
          ...(worked.length > 0
            ? under('Find the missing numbers', [{ kind: 'rooms', rooms: roomsFor(worked, numbered) }])
            : []),
          ...(rooms.length > 0
            ? under('Right or not? Check with the inverse', [{ kind: 'rooms', rooms }])
            : []),
          ...(mistakes.length > 0
            ? under('Find the mistake, and put it right', mistakeRooms(mistakes, notation))
            : []),
        ],
      },
      {
        title: `${title}: answers`,
        reader: 'adult',
        blocks: [
          ...(worked.length > 0 ? answersUnder('Missing numbers', worked, notation) : []),
          ...(checks.length > 0
            ? under(
                'Checks',
                checks.map(({ answer }, index) => ({ kind: 'text', text: `${numbered(index)}. ${answer}` })),
              )
            : []),
          ...(mistakes.length > 0
            ? under(
                'Mistakes',
                mistakes.map((mistake, index) => ({
                  kind: 'text',
                  text: `${numbered(index)}. ${mistakeFound(mistake)}`,
                })),
              )
            : []),
        ],
      },
    ],
  }
}

/** Each working as a pupil wrote it, and beside it room to put it right. */
function mistakeRooms(mistakes: readonly Mistaken[], notation: Notation): Block[] {
  const rooms = roomsFor(
    mistakes.map(({ question }) => workedQuestion(question)),
    numbered,
  )
  return mistakes.flatMap(({ question, wrong }, index): Block[] => {
    const room = rooms[index]
    if (!room) return []
    return [
      {
        kind: 'rooms',
        rooms: [
          { ...room, given: gridOf(paperWith(wrong.fault, question, notation)), line: 'The mistake' },
          { ...room, label: '', text: 'Put it right' },
        ],
      },
    ]
  })
}

/** What is wrong in a working, and the right answer, for the teacher. */
export function mistakeFound({ question, wrong: { fault } }: Mistaken): string {
  return `${withAnswer(question)}. ${mistakeIn(fault, question).say} ${fault.sentence}`
}

function answersUnder(text: string, questions: readonly WorkedQuestion[], notation: Notation): Block[] {
  return [
    { kind: 'heading', text },
    {
      kind: 'workings',
      workings: questions.map((question, index) => workingOf(question, numbered(index), notation)),
    },
  ]
}
