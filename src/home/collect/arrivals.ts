import { readQuestion } from '../../arithmetic/question'
import { findMarksheets, type Marksheet } from '../../marksheet/layout/find'
import type { Matrix } from '../../marksheet/layout/matrix'
import { readHome, type ReturnedHome } from '../back'
import { setCode } from '../codes'
import { namesakes, type Target } from './targets'
import { typedIn } from '../typed'

/** An answer that came in for a question of a pupil, by its index among the pupil's questions, as it was typed. */
export interface Incoming {
  readonly question: number
  readonly typed: string
}

/**
 * What a file, a row of a form's answers or a message brings. `doubt` is why none of it is written (a sentence), null where it can be;
 * `told` are sentences on single answers that stay out. `mayBe` are the pupils whom the teacher may choose from where `target` is null.
 */
export interface Arrival {
  readonly file: string
  readonly target: Target | null
  readonly mayBe: readonly Target[]
  /** The name or code that the file goes by, as it is shown; '' where it has none. */
  readonly shown: string
  readonly answers: readonly Incoming[]
  readonly told: readonly string[]
  readonly doubt: string | null
}

/** What a workbook that came back brings: one arrival for a home workbook, one for each child of a form's answers. */
export function arrivalsIn(file: string, sheets: readonly Matrix[], targets: readonly Target[]): Arrival[] {
  const home = readHome(sheets)
  if (home) return [homeArrival(file, home, targets)]
  const found = sheets.flatMap((matrix) => findMarksheets(matrix).map((marksheet) => ({ matrix, marksheet })))
  const arrivals = found.flatMap(({ matrix, marksheet }) => rowsIn(file, matrix, marksheet, targets))
  return arrivals.length > 0
    ? arrivals
    : [
        refused(
          file,
          'It is no home workbook of Columnwise, and holds no answers to the questions of this marksheet.',
        ),
      ]
}

/** An arrival of which nothing can be written. */
export function refused(file: string, doubt: string): Arrival {
  return { file, target: null, mayBe: [], shown: '', answers: [], told: [], doubt }
}

function homeArrival(file: string, home: ReturnedHome, targets: readonly Target[]): Arrival {
  const shown = home.name === '' ? home.child : home.name
  const arrival: Arrival = { ...refused(file, ''), shown, doubt: null }
  const inSet = targets.filter(({ set }) => set === setOf(home))
  const [first] = inSet
  if (!first)
    return { ...arrival, doubt: 'Its questions are not those of this marksheet: it is of another set.' }
  const changed = changedIn(home, first)
  if (changed !== null) return { ...arrival, doubt: changed }
  const { answers, told } = answersIn(home)
  const read = { ...arrival, answers, told, mayBe: inSet }
  const doubt = answers.length === 0 && told.length === 0 ? 'It holds no answers yet.' : null
  const { targets: own, why } = childOf(home, inSet)
  const [target] = own
  if (target && own.length === 1) return { ...read, target, mayBe: own, doubt }
  return { ...read, mayBe: own.length > 1 ? own : why.open ? inSet : [], doubt: doubt ?? why.sentence }
}

/** The set that a home workbook says it is of; where it no longer says, the set that its questions make. */
function setOf(home: ReturnedHome): string {
  if (home.set !== '') return home.set
  const questions = home.answers.flatMap(({ question }) => {
    const reading = readQuestion(question)
    return 'question' in reading ? [reading.question] : []
  })
  return setCode(questions)
}

/** A sentence on a question that is not the one that was sent, or is there twice; null where all are as they were. */
function changedIn({ answers }: ReturnedHome, { questions }: Target): string | null {
  const seen = new Set<number>()
  for (const { number, question, sent } of answers) {
    const asked = questions[number - 1]
    if (!asked || seen.has(number)) return `Its question ${number} is not in the set, or is there twice.`
    seen.add(number)
    const was = sent ?? asked.text
    if (!isSameQuestion(question, asked.text) || !isSameQuestion(was, asked.text))
      return `Its question ${number} was changed: it is ${question}, not ${asked.text.trim()}.`
  }
  const missing = questions.findIndex((_, index) => !seen.has(index + 1))
  return missing < 0 ? null : `Its question ${missing + 1} is missing.`
}

function isSameQuestion(one: string, other: string): boolean {
  if (one.trim() === other.trim()) return true
  const [read, asked] = [readQuestion(one), readQuestion(other)]
  return 'question' in read && 'question' in asked && setCode([read.question]) === setCode([asked.question])
}

function childOf(
  { child, name }: ReturnedHome,
  inSet: readonly Target[],
): {
  readonly targets: readonly Target[]
  readonly why: { readonly sentence: string; readonly open: boolean }
} {
  if (child !== '') {
    const own = inSet.filter((target) => target.child === child)
    const sentence =
      own.length === 0
        ? 'It was made for a child who is not in this marksheet, or whose name has changed since.'
        : 'Two pupils have its code.'
    return { targets: own, why: { sentence, open: false } }
  }
  if (name === '') return { targets: [], why: { sentence: 'It has no name.', open: true } }
  const { sure, likely } = namesakes(name, inSet)
  if (sure.length === 1) return { targets: sure, why: { sentence: '', open: false } }
  const found = sure.length > 0 ? sure : likely
  const sentence =
    found.length === 0
      ? `Nobody in this marksheet is called “${name}”.`
      : found.length === 1
        ? `“${name}” may be ${found[0]?.pupil.name ?? ''}, but is not the whole name.`
        : `“${name}” may be ${found.map(({ pupil }) => pupil.name).join(' or ')}.`
  return { targets: found.length === 1 ? [] : found, why: { sentence, open: true } }
}

function answersIn(home: ReturnedHome): { answers: Incoming[]; told: string[] } {
  return {
    answers: home.answers.flatMap(({ number, typed }): Incoming[] =>
      typed.kind === 'typed' ? [{ question: number - 1, typed: typed.typed }] : [],
    ),
    told: home.answers.flatMap(({ number, typed }) =>
      typed.kind === 'lost' ? [`Question ${number}: ${typed.why}.`] : [],
    ),
  }
}

/** The rows of a form's answers, or of another copy of the marksheet, whose questions are among those of a pupil with the same name. */
function rowsIn(file: string, matrix: Matrix, marksheet: Marksheet, targets: readonly Target[]): Arrival[] {
  const asked = marksheet.questions.map(({ question }) => setCode([question]))
  const places = new Map(
    targets.map((target) => [target, target.questions.map(({ question }) => setCode([question]))]),
  )
  const able = targets.filter((target) => asked.some((key) => places.get(target)?.includes(key)))
  if (able.length === 0) return []
  return marksheet.pupils.flatMap((row): Arrival[] => {
    const { sure, likely } = namesakes(row.name, able)
    const [target] = sure
    const arrival: Arrival = { ...refused(file, ''), shown: row.name, mayBe: able, doubt: null }
    if (row.answers.every((cell) => typedIn(matrix, cell).kind === 'nothing')) return []
    if (target && sure.length === 1) {
      const read = rowAnswers(matrix, marksheet, row.answers, places.get(target) ?? [], asked)
      return [{ ...arrival, ...read, target, mayBe: [target] }]
    }
    const found = sure.length > 0 ? sure : likely
    const doubt =
      found.length === 0
        ? `Nobody in this marksheet is called “${row.name}”.`
        : `“${row.name}” may be ${found.map(({ pupil }) => pupil.name).join(' or ')}.`
    return [{ ...arrival, mayBe: [], doubt }]
  })
}

function rowAnswers(
  matrix: Matrix,
  { questions }: Marksheet,
  cells: Marksheet['pupils'][number]['answers'],
  wanted: readonly string[],
  asked: readonly string[],
): { answers: Incoming[]; told: string[] } {
  const told: string[] = []
  const answers = cells.flatMap((cell): Incoming[] => {
    const key = asked[cell.question] ?? ''
    const text = questions[cell.question]?.text.trim() ?? ''
    const read = typedIn(matrix, cell)
    if (read.kind === 'nothing') return []
    const place = wanted.indexOf(key)
    if (place < 0 || wanted.indexOf(key, place + 1) >= 0 || asked.indexOf(key) !== asked.lastIndexOf(key)) {
      told.push(`${text}: the marksheet does not ask it, or asks it twice.`)
      return []
    }
    if (read.kind === 'lost') told.push(`${text}: ${read.why}.`)
    return read.kind === 'typed' ? [{ question: place, typed: read.typed }] : []
  })
  return { answers, told }
}
