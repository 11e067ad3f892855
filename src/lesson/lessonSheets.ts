import type { Block, Handout, Making, Room, Sheet, Working } from './handout'
import type { Lesson, PracticeSet } from './lessonSet'
import type { Notation } from './model/notation'
import { finishedPaper } from './model/paper'
import { partWorked } from './partWorked'
import type { Task } from './tasks'
import { operationName } from './words'
import type { WorkedQuestion } from './worked'

/** Rows of squares for one question: one empty, two for exchanges or the carried tens, two numbers, the answer. */
const ROOM_ROWS = 6
/** Empty squares beside the columns of a question. */
const ROOM_MARGIN = 3
/** The fewest squares across. */
const ROOM_COLUMNS = 8

/** Everything for one lesson: the example, the sheet to begin with, one for each grade, the answers and the letter home. */
export function lessonHandout(lesson: Lesson, { notation, set }: Making): Handout {
  return {
    title: lessonTitle(lesson),
    set,
    sheets: [
      exampleSheet(lesson, notation),
      togetherSheet(lesson),
      ...practiceSheets(lesson, notation),
      answerSheet(lesson, notation),
      homeLetter(lesson, notation),
    ],
  }
}

/** "Four-digit numbers: through a zero". */
export function lessonTitle({ recipe: { topic, name } }: Lesson): string {
  return `${topic}: ${name.charAt(0).toLowerCase()}${name.slice(1)}`
}

/** The modelled example with its estimate, its steps in words and its check, and what to look for. */
export function exampleSheet({ recipe, criteria, otherWays, model }: Lesson, notation: Notation): Sheet {
  return {
    title: recipe.objective,
    reader: 'pupil',
    blocks: [
      { kind: 'heading', text: `Look: ${model.text}` },
      ...(otherWays === null ? [] : [{ kind: 'text', text: `Is there another way? ${otherWays}` } as const]),
      ...(model.estimate === null ? [] : [{ kind: 'text', text: estimateSentence(model.estimate) } as const]),
      { kind: 'worked', working: workingOf(model, '', notation), steps: model.steps },
      { kind: 'heading', text: 'How I know that I can do it' },
      { kind: 'ticks', items: criteria },
    ],
  }
}

/** The recap, where there is one, and the partner question, with room to work. */
export function togetherSheet({ partner, recap }: Lesson): Sheet {
  return {
    title: 'First steps',
    reader: 'pupil',
    blocks: [
      { kind: 'fields', names: ['Name', 'Partner'] },
      ...(recap.length > 0 ? [{ kind: 'heading', text: REMEMBER } as const, roomsOf(recap)] : []),
      {
        kind: 'together',
        blocks: [
          { kind: 'heading', text: 'Now one like the example' },
          { kind: 'text', text: 'Take turns: one of you says the next step, the other writes it.' },
          { kind: 'rooms', rooms: [...roomsFor([partner], () => '', ESTIMATE), checkRoom(partner)] },
        ],
      },
    ],
  }
}

/** A sheet for each grade of the practice: an estimate before every question, two answers to check, and what there is to explain. */
export function practiceSheets({ recipe, practice }: Lesson, notation: Notation): Sheet[] {
  return practice.map((set) => ({
    title: set.grade,
    reader: 'pupil',
    blocks: [
      { kind: 'fields', names: ['Name', 'Date'] },
      { kind: 'text', text: recipe.objective },
      ...practiceBlocks(set, notation),
      ...checkBlocks(set.questions),
      ...set.tasks.map(taskBlock),
      { kind: 'ticks', items: set.criteria },
    ],
  }))
}

/** Room for every question of a grade; the first of the way in is begun. */
function practiceBlocks({ grade, questions }: PracticeSet, notation: Notation): Block[] {
  const rooms = roomsFor(questions, (index) => `${index + 1}`, ESTIMATE)
  const [first, ...others] = rooms
  const [begun] = questions
  if (grade !== 'The way in' || !first || !begun) return [{ kind: 'rooms', rooms }]
  return [
    { kind: 'text', text: 'Number 1 is begun for you: go on from there.' },
    { kind: 'rooms', rooms: [{ ...first, given: partWorked(begun.question, notation) }, ...others] },
  ]
}

const CHECKS = 2

/** Room to check some of the answers; a missing number is checked where it stands. */
function checkBlocks(questions: readonly WorkedQuestion[]): Block[] {
  const [first] = questions
  if (first?.question.missing !== 'result')
    return [{ kind: 'text', text: 'Check: put every number that you found in its place. Is it true?' }]
  const rooms = questions.slice(0, CHECKS).map(checkRoom)
  const which = rooms.length === 1 ? 'your answer' : 'two of your answers'
  return [
    {
      kind: 'together',
      blocks: [
        { kind: 'heading', text: `Check ${which} with the inverse` },
        { kind: 'rooms', rooms },
      ],
    },
  ]
}

function checkRoom(question: WorkedQuestion): Room {
  const [room] = roomsFor([question], () => '')
  if (!room) throw new RangeError('There is no question to check.')
  return { ...room, text: 'Check', rows: ROOM_ROWS - 1 }
}

const ESTIMATE = 'Estimate'

/** "Estimate: 4,000 − 2,000 = 2,000, so the answer is close to 2,000." */
function estimateSentence(estimate: string): string {
  return `Estimate first: ${estimate}, so the answer is close to ${estimate.split(' = ').at(-1) ?? ''}.`
}

const REMEMBER = 'From earlier lessons'

/** Every answer with its written working. */
export function answerSheet(lesson: Lesson, notation: Notation): Sheet {
  const { model, partner, practice, recap } = lesson
  const part = (text: string, questions: readonly WorkedQuestion[]): Block[] => [
    { kind: 'heading', text },
    {
      kind: 'workings',
      workings: questions.map((question, index) => workingOf(question, `${index + 1}`, notation)),
    },
  ]
  return {
    title: `Answers. ${lessonTitle(lesson)}`,
    reader: 'adult',
    blocks: [
      ...part('Modelled example and partner question', [model, partner]),
      ...practice.flatMap(({ grade, questions, tasks }) => [
        ...part(grade, questions),
        ...(tasks.length > 0
          ? [{ kind: 'list', items: tasks.map(({ name, answer }) => `${name} ${answer}`) } as const]
          : []),
      ]),
      ...(recap.length > 0 ? part(REMEMBER, recap) : []),
    ],
  }
}

/** A letter to the families, in plain language: what is being learnt, what it looks like, and how to help. */
export function homeLetter({ recipe, model, partner }: Lesson, notation: Notation): Sheet {
  const { operation, objective } = recipe
  const name = operationName(operation)
  return {
    title: `Column ${name}: a letter for families`,
    reader: 'adult',
    blocks: [
      { kind: 'text', text: 'Dear families,' },
      { kind: 'text', text: `This week in maths we are learning column ${name}. Our aim is: “${objective}”` },
      { kind: 'text', text: `Here is an example, set out as we write it at school: ${model.text}.` },
      { kind: 'worked', working: workingOf(model, '', notation), steps: [] },
      { kind: 'heading', text: 'Words that we use' },
      { kind: 'list', items: WORDS_AT_SCHOOL[operation] },
      { kind: 'heading', text: 'How you can help' },
      {
        kind: 'list',
        items: [
          'Ask your child to teach you the method, using the example. Explaining it is the best practice.',
          ...(operation === 'subtract'
            ? ['Ask what the crossed-out digits and the small numbers mean.']
            : ['Ask what the small numbers mean.']),
          `Try this one together: ${partner.text}. The answer is ${partner.answer}.`,
          'If the answer is wrong, look for the step where it changed. Mistakes help us to learn.',
          'Five minutes is plenty. Please stop while it is still fun.',
        ],
      },
      { kind: 'text', text: 'Thank you for your help. Please ask us if anything is not clear.' },
      { kind: 'fields', names: ['Teacher'] },
    ],
  }
}

const WORDS_AT_SCHOOL: Readonly<Record<Lesson['recipe']['operation'], readonly string[]>> = {
  subtract: [
    'Column: the ones stand under the ones, the tens under the tens, and so on.',
    'Exchange: when a column does not have enough, we swap 1 from the column on its left for 10. The old digit is crossed out and the new one is written above it.',
    'Inverse: the opposite. We check a subtraction by adding.',
  ],
  add: [
    'Column: the ones stand under the ones, the tens under the tens, and so on.',
    'Carry: when a column makes 10 or more, we swap 10 for 1 in the column on its left. We write a small 1 there.',
    'Inverse: the opposite. We check an addition by subtracting.',
  ],
}

/** What there is to explain, with lines to write on. */
function taskBlock({ name, text, given }: Task): Block {
  const room = { label: '', text: '', columns: 0, rows: 0, above: '', line: '', given }
  return {
    kind: 'together',
    blocks: [
      { kind: 'heading', text: name },
      { kind: 'text', text },
      ...(given ? [{ kind: 'rooms', rooms: [room] } as const] : []),
      { kind: 'fields', names: ['I know because'] },
    ],
  }
}

function roomsOf(questions: readonly WorkedQuestion[]): Block {
  return { kind: 'rooms', rooms: roomsFor(questions, (index) => `${index + 1}`) }
}

/**
 * Room on squared paper for questions, as wide for all as the longest needs, so that no room gives its answer away; `above` names a line
 * to fill in first, '' for none.
 */
export function roomsFor(
  questions: readonly WorkedQuestion[],
  label: (index: number) => string,
  above = '',
): Room[] {
  const across = questions.map((question) => question.across + ROOM_MARGIN)
  const columns = Math.max(ROOM_COLUMNS, ...across)
  return questions.map(({ text }, index) => ({
    label: label(index),
    text,
    columns,
    rows: ROOM_ROWS,
    above,
    line: '',
    given: null,
  }))
}

/** A question's working with its number on the sheet, its estimate and its check. */
export function workingOf(
  { question, text, answer, estimate, check }: WorkedQuestion,
  label: string,
  notation: Notation,
): Working {
  const notes = [...(estimate === null ? [] : [`Estimate: ${estimate}`]), `Check: ${check}`]
  return { label, text, paper: finishedPaper(question, notation), answer, notes }
}
