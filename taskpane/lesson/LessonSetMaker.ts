import type { Question } from '../../src/arithmetic/question'
import type { Recipe } from '../../src/items/recipes'
import { TOPICS } from '../../src/items/wish'
import { GRADES } from '../../src/lesson/grades'
import { makeLesson, type Lesson, type TypeStatus } from '../../src/lesson/lessonSet'
import { criteriaIn, withCriteria } from '../../src/lesson/ownCriteria'
import { inSeries } from '../../src/lesson/words'
import { findClassList } from '../../src/marksheet/layout/classList'
import { classesIn, questionsIn, type RecordRow } from '../../src/marksheet/record/record'
import { writeLesson, type LessonMarksheet } from '../../src/office/handouts/lesson'
import { readSelection } from '../../src/office/workbook/read'
import { readRecordSheet } from '../../src/office/record/record'
import { readSetBook, type SetBook } from '../../src/office/questions/target'
import { readSettings } from '../../src/office/workbook/settings'
import { Store } from '../common/store'
import { peopleInRecord } from '../review/pupils/people'
import type { Runner } from '../common/runner'
import { FIRST_CHOICES, newSetNumber, setNumber, sheetNameOf, titleOf, type Choices } from '../set/choices'
import { namesFrom, type Pupils } from '../set/setter'
import { OBJECTIVE } from './objective'

/** Which questions of a lesson go onto its marksheet; `grades` are all three of the practice. */
export const ON_MARKSHEET = [
  ['grades', 'All three grades'],
  ...GRADES.map((grade) => [grade, grade] as const),
  ['all', 'All grades and the recap'],
  ['none', 'No marksheet'],
] as const

export type OnMarksheet = (typeof ON_MARKSHEET)[number][0]

/** What a teacher chooses for a lesson. `criteria` are the success criteria as typed, or null for ours. */
export interface LessonChoices {
  readonly recipe: Recipe
  readonly practice: number
  readonly recap: number
  readonly onMarksheet: OnMarksheet
  readonly criteria: string | null
}

/** What the lesson set shows. `known` tells how secure the types are of the class, in Record; `className` that class. */
export interface LessonSetState {
  readonly choices: LessonChoices
  readonly typed: string
  readonly made: { readonly lesson: Lesson } | { readonly problem: string }
  readonly pupils: Pupils | null
  readonly known: readonly TypeStatus[]
  readonly className: string
}

const FIRST: LessonChoices = {
  recipe: OBJECTIVE.state().recipe,
  practice: 6,
  recap: 4,
  onMarksheet: 'grades',
  criteria: null,
}

/** What the choices and buttons of the lesson set do. */
export class LessonSetMaker extends Store<LessonSetState> {
  #avoid: readonly Question[] = []
  #looks = 0

  constructor(private readonly runner: Runner) {
    const typed = newSetNumber()
    super({
      choices: FIRST,
      typed,
      made: lessonFor(FIRST, typed, [], []),
      pupils: null,
      known: [],
      className: '',
    })
  }

  /** Changes what is chosen. Success criteria typed for one objective do not stay for another. */
  readonly choose = (change: Partial<LessonChoices>): void => {
    const { choices } = this.state()
    if (change.recipe) OBJECTIVE.choose(change.recipe)
    const isOther = change.recipe !== undefined && change.recipe !== choices.recipe
    this.#make({ choices: { ...choices, ...(isOther && { criteria: null }), ...change } })
  }

  /** Takes a set number or word. */
  readonly type = (typed: string): void => {
    this.#make({ typed })
  }

  /** Draws another lesson for the same choices. */
  readonly again = (): void => {
    this.#make({ typed: newSetNumber() })
  }

  /** Reads Record, and the names on the sheet in front unless the teacher has chosen some. */
  readonly look = async (): Promise<void> => {
    const look = ++this.#looks
    try {
      const book = await readSetBook()
      const { rows } = await readRecordSheet(book.sheets)
      if (look !== this.#looks) return
      this.#avoid = questionsIn(rows)
      this.#make({ pupils: pupilsIn(book, this.state().pupils), ...knownIn(rows) })
    } catch (error) {
      this.runner.tell(error)
    }
  }

  /** Takes the selected cells for the names. */
  readonly takeNames = async (): Promise<void> => {
    await this.runner.run('Reading the selection', async (work) => {
      const { sheetId, sheet, area } = await readSelection()
      const { source } = await readSetBook(sheetId, work)
      this.set({ pupils: { list: namesFrom(source.matrix, area), sheetId, sheet, chosen: area } })
    })
  }

  /** Writes the lesson's sheets and its marksheet, in one action. */
  readonly write = async (): Promise<void> => {
    const { made, pupils, typed } = this.state()
    if ('problem' in made) return
    await this.runner.run('Making the lesson', async (work) => {
      const book = await readSetBook(pupils?.sheetId, work)
      const wanted = pupils && this.#marksheet(made.lesson, pupils, book)
      const { done, printed, marksheet } = await writeLesson(
        made.lesson,
        { notation: readSettings().notation, set: setNumber(typed) },
        wanted,
        book,
        work,
      )
      this.runner.wrote(done)
      this.runner.say(
        `Ready to print: ${inSeries(printed)}.${marksheet === null ? '' : ` The marksheet is on ${marksheet}.`}`,
        marksheet === null
          ? 'Press Ctrl+P to print the sheet in front.'
          : 'Open a sheet and press Ctrl+P to print it.',
      )
    })
  }

  #marksheet(lesson: Lesson, pupils: Pupils, book: SetBook): LessonMarksheet | null {
    const { choices, typed } = this.state()
    if (choices.onMarksheet === 'none') return null
    const { names } = namesFrom(book.source.matrix, pupils.chosen)
    const asSet = setChoices(choices)
    return {
      sheet: sheetNameOf(asSet),
      title: titleOf(asSet, setNumber(typed), readSettings().className),
      names,
      questions: questionsFor(lesson, choices.onMarksheet),
    }
  }

  #make(change: Partial<LessonSetState>): void {
    const { choices, typed, known } = { ...this.state(), ...change }
    this.set({ ...change, made: lessonFor(choices, typed, known, this.#avoid) })
  }
}

/** The questions of a lesson that go onto its marksheet, in the order in which pupils work them. */
export function questionsFor({ practice, recap }: Lesson, which: OnMarksheet): Question[] {
  const sets =
    which === 'all' || which === 'grades' ? practice : practice.filter(({ grade }) => grade === which)
  return [...(which === 'all' ? recap : []), ...sets.flatMap(({ questions }) => questions)].map(
    ({ question }) => question,
  )
}

function lessonFor(
  { recipe, practice, recap, criteria }: LessonChoices,
  typed: string,
  known: readonly TypeStatus[],
  avoid: readonly Question[],
): LessonSetState['made'] {
  const seed = setNumber(typed)
  if (seed === '') return { problem: 'Type a set number, or press Another draw.' }
  const made = makeLesson({ recipe, seed, practice, recap, known, avoid })
  if ('problem' in made || criteria === null) return made
  return { lesson: withCriteria(made.lesson, criteriaIn(criteria)) }
}

function setChoices({ recipe }: LessonChoices): Choices {
  const { operation, year, topic } = recipe
  const index = TOPICS.findIndex((each) => each.year === year && each.topic === topic)
  return { ...FIRST_CHOICES, operation, topic: index }
}

/** The names on the sheet in front, unless the teacher has chosen some that are still there. */
function pupilsIn({ source, sheets }: SetBook, before: Pupils | null): Pupils | null {
  const kept = sheets.some(({ id }) => id === before?.sheetId) ? before : null
  if (kept?.chosen) return kept
  const list = findClassList(source.matrix)
  return list ? { list, sheetId: source.id, sheet: source.name, chosen: null } : kept
}

/** What Record tells of the class: the one that the workbook is set to, else the only one there. */
function knownIn(rows: readonly RecordRow[]): Pick<LessonSetState, 'known' | 'className'> {
  const { className, mastery } = readSettings()
  const classes = classesIn(rows)
  const [only = ''] = classes
  const chosen = classes.length === 1 ? only : className
  const known = peopleInRecord(rows, chosen, mastery).flatMap(({ judgement }) =>
    judgement.byType.map(({ type, status }) => ({ type, status })),
  )
  return { known, className: chosen }
}
