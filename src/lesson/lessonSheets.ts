import type { Block, Handout, Making, Room, Sheet, Working } from './handout'
import type { Operation } from '../arithmetic/question'
import type { Lesson, PracticeSet } from './lessonSet'
import type { Notation } from './model/notation'
import { finishedPaper } from './model/paper'
import { partWorked } from './partWorked'
import { fadingHelp, scaffold } from './scaffold'
import { stagesOf } from './stages'
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
      exitTicket(lesson),
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
      { kind: 'heading', text: 'How I know that I can do it' },
      { kind: 'ticks', items: criteria },
      { kind: 'heading', text: `Look: ${model.text}` },
      ...(otherWays === null ? [] : [{ kind: 'text', text: `Is there another way? ${otherWays}` } as const]),
      ...(model.estimate === null ? [] : [{ kind: 'text', text: estimateSentence(model.estimate) } as const]),
      { kind: 'stages', stages: stagesOf(model.question, notation) },
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
      { kind: 'ticks', items: set.criteria },
      ...practiceBlocks(set, notation),
      ...checkBlocks(set.questions),
      ...set.tasks.map(taskBlock),
    ],
  }))
}

/** Room for every question of a grade; the first of the way in is begun, and the others have help that fades over the sheet. */
function practiceBlocks({ grade, questions }: PracticeSet, notation: Notation): Block[] {
  const rooms = roomsFor(questions, (index) => `${index + 1}`, ESTIMATE)
  const [first, ...others] = rooms
  const [begun] = questions
  if (grade !== 'The way in' || !first || !begun) return [{ kind: 'rooms', rooms }]
  return [
    { kind: 'text', text: 'Number 1 is begun for you: go on from there.' },
    {
      kind: 'rooms',
      rooms: [
        { ...first, given: partWorked(begun.question, notation) },
        ...others.map((room, index) => ({ ...room, given: helpFor(questions.slice(1), index, notation) })),
      ],
    },
  ]
}

function helpFor(questions: readonly WorkedQuestion[], index: number, notation: Notation) {
  const help = fadingHelp(questions.length)[index] ?? 'none'
  const worked = questions[index]
  return worked ? scaffold(worked.question, notation, help) : null
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

/** Rows and columns of squares in a room of which three stand side by side. */
const SMALL_ROOM = { columns: 7, rows: 5 } as const

/** Room for questions, three side by side where they are short enough. */
export function smallRooms(questions: readonly WorkedQuestion[], label: (index: number) => string): Block {
  const rooms = roomsFor(questions, label)
  const fit = questions.every(({ across }) => across <= SMALL_ROOM.columns)
  return fit
    ? { kind: 'rooms', rooms: rooms.map((room) => ({ ...room, ...SMALL_ROOM })), across: 3 }
    : { kind: 'rooms', rooms }
}

/** Three questions to leave with, and something to explain; two tickets to a page, to be cut apart. */
export function exitTicket({ exit, recipe }: Lesson): Sheet {
  const ticket: Block[] = [
    { kind: 'heading', text: TICKET },
    { kind: 'fields', names: ['Name', 'Date'] },
    smallRooms(exit, (index) => `${index + 1}`),
    { kind: 'text', text: EXPLAIN[recipe.operation].asks },
    { kind: 'fields', names: ['I know because'] },
    { kind: 'fields', names: [''] },
  ]
  return { title: '', reader: 'pupil', blocks: [{ kind: 'halves', halves: [ticket, ticket] }] }
}

const TICKET = 'Before you go'
const EXPLAIN: Readonly<Record<Operation, { readonly asks: string; readonly tells: string }>> = {
  subtract: {
    asks: 'Explain: choose one question. Which columns needed an exchange, and how can you tell?',
    tells: 'The explanation compares what is left on top of a column with the digit below it.',
  },
  add: {
    asks: 'Explain: choose one question. Which columns make 10 or more, and what do you do with the ten?',
    tells:
      'The explanation adds the digits of a column, with what was carried, and sends the ten on to the left.',
  },
}

const ESTIMATE = 'Estimate'

/** "Estimate: 4,000 − 2,000 = 2,000, so the answer is close to 2,000." */
function estimateSentence(estimate: string): string {
  return `Estimate first: ${estimate}, so the answer is close to ${estimate.split(' = ').at(-1) ?? ''}.`
}

const REMEMBER = 'From earlier lessons'

/** Every answer with its written working. */
export function answerSheet(lesson: Lesson, notation: Notation): Sheet {
  const { model, partner, practice, recap, exit } = lesson
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
      ...part(TICKET, exit),
      { kind: 'text', text: EXPLAIN[lesson.recipe.operation].tells },
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
      { kind: 'worked', working: workingOf(model, '', notation) },
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
