import type { ExchangeType } from '../../src/arithmetic/exchange'
import { printQuestion, type Question } from '../../src/arithmetic/question'
import type { Recipe } from '../../src/items/recipes'
import { TOPICS } from '../../src/items/wish'
import { placePupils, type Placed } from '../../src/lesson/byGroup'
import { GRADES, type Grade } from '../../src/lesson/grades'
import { makeLesson, questionsOf, type Lesson } from '../../src/lesson/lessonSet'
import { criteriaIn, withCriteria } from '../../src/lesson/ownCriteria'
import { nextLesson, weekOf, type KeptLesson } from '../../src/lesson/kept'
import { leastSecure, type TypeStatus } from '../../src/lesson/recap'
import { freshNumber, repeatedIn } from '../../src/lesson/repeats'
import { inSeries } from '../../src/lesson/words'
import { findClassList } from '../../src/marksheet/layout/classList'
import { classesIn, questionsIn, type RecordRow } from '../../src/marksheet/record/record'
import { writeLesson, type LessonMarksheet } from '../../src/office/handouts/lesson'
import { readSelection } from '../../src/office/workbook/read'
import { readRecordSheet } from '../../src/office/record/record'
import { readSetBook, type SetBook } from '../../src/office/questions/target'
import { forgetLesson, keepLessons, readLessons } from '../../src/office/workbook/lessons'
import { readSettings } from '../../src/office/workbook/settings'
import { Problem } from '../../src/office/edit/errors'
import { FRONT } from '../common/front'
import { Store } from '../common/store'
import { lookAt, reviewsOf } from '../mark/actions'
import { correctionsOf } from '../mark/marker'
import { dayOf } from '../review/record/day'
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

/**
 * What a teacher chooses for a lesson. `recapTypes` are the types of the recap, none for all that come before; `otherWays` whether to talk
 * about other ways before the example; `criteria` the success criteria as typed, or null for ours.
 */
export interface LessonChoices {
  readonly recipe: Recipe
  readonly practice: number
  readonly recap: number
  readonly recapTypes: readonly ExchangeType[]
  readonly otherWays: boolean
  readonly onMarksheet: OnMarksheet
  readonly criteria: string | null
}

/**
 * What the lesson set shows. `repeated` are those of its questions that Record holds; `least` the types that the class is least secure in,
 * by Record, and `className` that class.
 */
export interface LessonSetState {
  readonly choices: LessonChoices
  readonly typed: string
  readonly made: { readonly lesson: Lesson } | { readonly problem: string }
  readonly repeated: readonly string[]
  readonly pupils: Pupils | null
  readonly least: readonly ExchangeType[]
  readonly className: string
  /** The lessons made in this workbook, the newest first. */
  readonly kept: readonly KeptLesson[]
  /** Where the class was read, and each pupil's grade; null before the teacher asks for it. */
  readonly byGroup: { readonly from: string; readonly placed: readonly Placed[] } | null
}

const FIRST: LessonChoices = {
  recipe: OBJECTIVE.state().recipe,
  practice: 6,
  recap: 4,
  recapTypes: [],
  otherWays: false,
  onMarksheet: 'grades',
  criteria: null,
}

/** What the choices and buttons of the lesson set do. */
export class LessonSetMaker extends Store<LessonSetState> {
  #known: readonly TypeStatus[] = []
  #set: readonly Question[] = []
  #looks = 0
  /** Whether the number was drawn before Record was read, and nobody has seen to it since. */
  #isFirst = true

  constructor(private readonly runner: Runner) {
    const typed = newSetNumber()
    super({
      choices: FIRST,
      typed,
      made: lessonFor(FIRST, typed),
      repeated: [],
      pupils: null,
      least: [],
      className: '',
      kept: [],
      byGroup: null,
    })
  }

  /** Changes what is chosen. Success criteria typed for one objective do not stay for another. */
  readonly choose = (change: Partial<LessonChoices>): void => {
    const { choices } = this.state()
    if (change.recipe) OBJECTIVE.choose(change.recipe)
    const isOther = change.recipe !== undefined && change.recipe !== choices.recipe
    this.#make({
      choices: { ...choices, ...(isOther && { criteria: null, recapTypes: [] }), ...change },
      ...(isOther && { byGroup: null }),
    })
  }

  /** Takes a set number or word. */
  readonly type = (typed: string): void => {
    this.#isFirst = false
    this.#make({ typed })
  }

  /** Draws another lesson for the same choices, by a number none of whose questions is in Record where there is one. */
  readonly again = (): void => {
    this.#isFirst = false
    const { choices } = this.state()
    const repeats = (typed: string) => repeatedOf(lessonFor(choices, typed), this.#set).length
    this.#make({ typed: freshNumber(newSetNumber, repeats) })
  }

  /** Reads Record, and the names on the sheet in front unless the teacher has chosen some. */
  readonly look = async (): Promise<void> => {
    const look = ++this.#looks
    try {
      const book = await readSetBook()
      const { rows } = await readRecordSheet(book.sheets)
      if (look !== this.#looks) return
      this.#set = questionsIn(rows)
      const { known, className } = knownIn(rows)
      this.#known = known
      this.#make({ pupils: pupilsIn(book, this.state().pupils), className, kept: readLessons() })
      if (this.#isFirst && this.state().repeated.length > 0) this.again()
      this.#isFirst = false
    } catch (error) {
      this.runner.tell(error)
    }
  }

  /** Takes the class from the marksheet in front, else from Record, and gives each pupil a grade by the groups of Review. */
  readonly place = async (): Promise<void> => {
    await this.runner.run('Looking at the class', async (work) => {
      const { mastery, className } = readSettings()
      const looked = await lookAt(FRONT.state().sheet, correctionsOf, work)
      const found = (await reviewsOf(looked, mastery, work)).flatMap((review) => review.pupils)
      const { rows } = await readRecordSheet(looked.reading.sheets, work)
      const [only = ''] = classesIn(rows)
      const recorded = classesIn(rows).length === 1 ? only : className
      const pupils = found.length > 0 ? found : peopleInRecord(rows, recorded, mastery)
      if (pupils.length === 0)
        throw new Problem(
          'There is no marked class to place.',
          'Open the sheet that holds one, or add one to Record.',
        )
      const from = found.length > 0 ? looked.reading.name : `${recorded}, by Record`
      this.set({ byGroup: { from, placed: placePupils(pupils, this.state().choices.recipe) } })
    })
  }

  /** Moves a pupil to another grade, as the teacher sees fit. */
  readonly move = (index: number, grade: Grade): void => {
    const { byGroup } = this.state()
    if (!byGroup) return
    const placed = byGroup.placed.map((each, at) =>
      at === index ? { ...each, grade, because: 'Placed by the teacher.' } : each,
    )
    this.set({ byGroup: { ...byGroup, placed } })
  }

  /** Keeps the lesson as it stands in the workbook's list, under today. */
  readonly keep = async (): Promise<void> => {
    this.set({ kept: await keepLessons([this.#asKept()]) })
  }

  /** Opens a lesson of the list as it was made. */
  readonly open = (lesson: KeptLesson): void => {
    this.#isFirst = false
    const { recipe, practice, recap, recapTypes, otherWays, criteria, set } = lesson
    OBJECTIVE.choose(recipe)
    const { onMarksheet } = this.state().choices
    const choices = { recipe, practice, recap, recapTypes, otherWays, criteria, onMarksheet }
    this.#make({ choices, typed: set, byGroup: null })
  }

  /** Opens the lesson of the school day after one of the list. */
  readonly openNext = (lesson: KeptLesson): void => {
    this.open(nextLesson(lesson))
  }

  /** Takes a lesson off the list. */
  readonly forget = async (lesson: KeptLesson): Promise<void> => {
    await this.runner.run('Changing the list of lessons', async () => {
      this.set({ kept: await forgetLesson(lesson) })
    })
  }

  /** A week from Monday to Friday that begins with the lesson as it stands. */
  readonly week = (): KeptLesson[] => weekOf(this.#asKept())

  /** Keeps a week in the workbook's list. */
  readonly keepWeek = async (): Promise<void> => {
    this.set({ kept: await keepLessons(this.week()) })
  }

  #asKept(): KeptLesson {
    const { choices, typed } = this.state()
    const { recipe, practice, recap, recapTypes, otherWays, criteria } = choices
    const day = dayOf(new Date())
    return { day, set: setNumber(typed), recipe, practice, recap, recapTypes, otherWays, criteria }
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
      await this.keep()
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
      sheet: sheetNameOf(asSet, dayOf(new Date())),
      title: titleOf(asSet, setNumber(typed), readSettings().className),
      names,
      questions: questionsFor(lesson, choices.onMarksheet),
    }
  }

  #make(change: Partial<LessonSetState>): void {
    const { choices, typed } = { ...this.state(), ...change }
    const made = lessonFor(choices, typed)
    this.set({
      ...change,
      made,
      repeated: repeatedOf(made, this.#set).map(printQuestion),
      least: leastSecure(choices.recipe, this.#known),
    })
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

function repeatedOf(made: LessonSetState['made'], before: readonly Question[]): Question[] {
  return 'lesson' in made ? repeatedIn(questionsOf(made.lesson), before) : []
}

/** The lesson of some choices and a set number or word, or the sentence that says why there is none. */
export function lessonFor(
  { criteria, ...choices }: Omit<LessonChoices, 'onMarksheet'>,
  typed: string,
): LessonSetState['made'] {
  const seed = setNumber(typed)
  if (seed === '') return { problem: 'Type a set number, or press Another draw.' }
  const made = makeLesson({ ...choices, seed })
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
function knownIn(rows: readonly RecordRow[]): {
  readonly known: readonly TypeStatus[]
  readonly className: string
} {
  const { className, mastery } = readSettings()
  const classes = classesIn(rows)
  const [only = ''] = classes
  const chosen = classes.length === 1 ? only : className
  const known = peopleInRecord(rows, chosen, mastery).flatMap(({ judgement }) =>
    judgement.byType.map(({ type, status }) => ({ type, status })),
  )
  return { known, className: chosen }
}
