import { foldText } from '../../src/arithmetic/numeral'
import type { Question } from '../../src/arithmetic/question'
import { FAULTS } from '../../src/answers/faults'
import { OWN_SHEET } from '../../src/marksheet/layout/find'
import type { Area } from '../../src/marksheet/layout/matrix'
import { diagnosedPupils, type DiagnosedPupil } from '../../src/marksheet/reports/needs'
import type { PrintedSheet } from '../../src/marksheet/reports/pupilReport'
import { filingsFor, metIn, type Filing, type Met } from '../../src/marksheet/record/filing'
import { recordRows, sameNames, type RecordRow, type SameName } from '../../src/marksheet/record/record'
import type { Review } from '../../src/marksheet/marking/review'
import { SHARED_NAME, type InPlaceOfNames } from '../../src/marksheet/reports/share'
import { perform, type Done } from '../../src/office/edit/edit'
import { Problem, problemOf } from '../../src/office/edit/errors'
import { ownSheetFor } from '../../src/office/workbook/ownSheet'
import { goTo, readSheet, type SheetReading } from '../../src/office/workbook/read'
import {
  addToRecordSheet,
  clearRecordBefore,
  readRecordSheet,
  type RecordReading,
} from '../../src/office/record/record'
import { writeComments, type CellComment } from '../../src/office/marking/comments'
import { masteryEdits } from '../../src/office/reports/mastery'
import type { Work } from '../../src/office/edit/work'
import { writePages, type Pages } from '../../src/office/reports/pages'
import type { Direction, Target } from '../../src/office/questions/target'
import { writeQuestions } from '../../src/office/questions/writeQuestions'
import { keepSettings, readSettings, watchSettings, type Settings } from '../../src/office/workbook/settings'
import { writeShared } from '../../src/office/reports/share'
import { Store } from '../common/store'
import { counted } from '../common/words'
import { lookAt, reviewsOf } from '../mark/actions'
import { correctionsOf } from '../mark/marker'
import type { Front } from '../common/front'
import type { Runner } from '../common/runner'
import { dayInWords } from './record/day'

/** A sheet as Review sees it. */
export interface SheetView {
  readonly reading: SheetReading
  readonly reviews: readonly Review[]
  readonly pupils: readonly DiagnosedPupil[]
}

/** Questions that are to go into cells which are not empty, so that the teacher is asked. */
export interface Asked {
  readonly questions: readonly Question[]
  readonly direction: Direction
  readonly target: Target
}

/** What Record holds that a sheet to be added may be the same work as, and how it can be filed, so that the teacher is asked. */
export interface AskedFiling {
  readonly sheet: string
  readonly className: string
  readonly date: string
  readonly counting: Counting
  readonly answers: number
  readonly pupils: number
  readonly met: readonly Met[]
  readonly filings: readonly Filing[]
}

/** What the Review area shows. `problem` says why Record cannot be read, where it cannot. */
export interface ReviewerState {
  readonly seen: SheetView | null
  readonly record: RecordReading | null
  readonly problem: string | null
  readonly asked: Asked | null
  readonly filing: AskedFiling | null
  /** Whether cells were changed since the last look. */
  readonly edited: boolean
  readonly settings: Settings
}

/** Which row of a marksheet counts for a name that stands for several: the pupil's index, or null for none. By review and folded name. */
export type Counting = ReadonlyMap<string, number | null>

/** Names of a sheet that stand for more than one row, by the key under which the teacher's choice is kept. */
export interface AskedName extends SameName {
  readonly key: string
  readonly review: number
}

/** What the buttons of the Review area do. */
export class Reviewer extends Store<ReviewerState> {
  constructor(
    private readonly runner: Runner,
    private readonly front: Front,
  ) {
    super({
      seen: null,
      record: null,
      problem: null,
      asked: null,
      filing: null,
      edited: false,
      settings: readSettings(),
    })
    watchSettings((settings) => {
      this.set({ settings })
    })
  }

  /** Reads the sheet in front or just marked, and Record. A sheet of our own in front does not take the place of the marksheet that was seen. */
  readonly look = async (): Promise<void> => {
    await this.runner.look('Looking at the sheet', (work) => this.#look(work))
  }

  /** Notes that cells were changed, by a hand other than the add-in's own. */
  readonly noteTyping = (): Promise<void> => {
    if (this.state().seen !== null && this.runner.state().running === null) this.set({ edited: true })
    return Promise.resolve()
  }

  /** Keeps settings in the workbook. */
  readonly keep = async (changed: Partial<Settings>): Promise<void> => {
    try {
      await keepSettings(changed)
    } catch (error) {
      this.runner.tell(error)
    }
  }

  /**
   * Adds the answers of the sheet, as they stand now, to Record, under a class and a day; asks first where Record holds what may be the same
   * work, and writes nothing where it holds just these answers.
   */
  readonly addToRecord = (className: string, date: string, counting: Counting): Promise<void> =>
    this.#addToRecord({ className, date, counting }, null)

  /** Files the sheet that was asked about, or leaves Record as it is (null); asks anew where the sheet or Record has changed meanwhile. */
  readonly file = async (filing: Filing | null): Promise<void> => {
    const asked = this.state().filing
    this.set({ filing: null })
    if (asked !== null && filing !== null) await this.#addToRecord(asked, { asked, filing })
  }

  async #addToRecord(
    { className, date, counting }: Pick<AskedFiling, 'className' | 'date' | 'counting'>,
    chosen: { readonly asked: AskedFiling; readonly filing: Filing } | null,
  ): Promise<void> {
    const { seen } = this.state()
    if (seen === null) return
    await this.runner.run('Adding to Record', async (work) => {
      const { reading, reviews } = await this.#viewOf(seen.reading.id, work)
      const rows = reviews.flatMap((review, index) =>
        recordRows(countingOnly(review, index, counting), { date, class: className }),
      )
      const record = await readRecordSheet(reading.sheets, work)
      const met = metIn(record.rows, rows)
      const { name } = reading
      if (rows.length === 0) throw new Problem(`Nothing was added: no row of ${name} counts.`, '')
      const held = met.find(({ same }) => same)
      if (held && chosen === null)
        throw new Problem(
          `Nothing was added: Record holds these ${counted(rows.length, 'answer')} of ${name} already, under ${occasionInWords(held)}.`,
          '',
        )
      const filings = filingsFor(met, rows)
      const pupils = new Set(rows.map(({ pupil }) => foldText(pupil))).size
      const asked = { sheet: name, className, date, counting, answers: rows.length, pupils, met, filings }
      if (met.length > 0 && JSON.stringify(chosen?.asked) !== JSON.stringify(asked)) {
        this.set({ filing: asked })
        return
      }
      const { instead, date: day } = chosen?.filing ?? { instead: null, date }
      const dated = rows.map((row): RecordRow => ({ ...row, date: day }))
      this.runner.wrote(await addToRecordSheet(record, dated, instead, work))
      await this.keep({ className })
      const what = `${counted(rows.length, 'answer')} of ${counted(pupils, 'pupil')}`
      this.runner.say(
        instead === null
          ? `${name} is in Record: ${what}.`
          : `${name} is in Record under ${occasionInWords({ class: className, date: day })}, in place of what was there: ${what}.`,
      )
    })
  }

  /** Takes everything from before a day out of Record. */
  readonly clearBefore = async (date: string): Promise<void> => {
    await this.runner.run('Clearing Record', async (work) => {
      const reading = await readRecordSheet((await readSheet(undefined, work)).sheets, work)
      this.runner.wrote(await clearRecordBefore(reading, date, work))
      this.runner.say('The earlier rows are out of Record.')
    })
  }

  /** Writes the Mastery sheet with its chart. */
  readonly writeMastery = async (): Promise<void> => {
    const { seen } = this.state()
    if (seen === null) return
    await this.#write('Writing Mastery', seen, async ({ reading, reviews }, work) => {
      const done = await perform(
        'writing of Mastery',
        masteryEdits(reviews, reading.sheets, this.state().settings.words),
        work,
      )
      this.runner.say('The Mastery sheet is written, with a chart of the class below the pupils.')
      return done
    })
  }

  /** Lays out what is shown on a sheet without its names, to be shared, and brings that to the front. */
  readonly share = async (how: InPlaceOfNames): Promise<void> => {
    const { seen } = this.state()
    if (seen === null) return
    await this.#write('Laying out a sheet to share', seen, async ({ reading: { sheets }, reviews }, work) => {
      const { name } = ownSheetFor(SHARED_NAME, sheets)
      const done = await writeShared(reviews, how, crypto.randomUUID(), sheets, work)
      const next = 'To share it, right-click its tab, choose Move or Copy, and take a new book.'
      this.runner.say(`The sheet ${name} is ready, with ${how} in place of names.`, next)
      await goTo(name, { top: 0, left: 0, bottom: 0, right: 0 }).catch(this.runner.tell)
      return done
    })
  }

  /** Writes a sheet to be printed, and brings it to the front. */
  readonly writePages = async (printed: PrintedSheet, pages: Pages): Promise<void> => {
    const { name } = printed.table
    await this.runner.run(`Writing ${name}`, async (work) => {
      const { sheets } = await readSheet(undefined, work)
      this.runner.wrote(await writePages(printed, pages, sheets, work))
      this.runner.say(`The sheet ${name} is ready.`, 'Press Ctrl+P to print it.')
    })
  }

  /** Writes questions from the selected cell on; asks first where cells are not empty. */
  readonly writeQuestions = (questions: readonly Question[], direction: Direction): Promise<void> =>
    this.#put(questions, direction, null)

  /** Writes the questions that were asked about over what the cells hold, or leaves them. */
  readonly answer = async (writeOver: boolean): Promise<void> => {
    const { asked } = this.state()
    this.set({ asked: null })
    if (asked !== null && writeOver) await this.#put(asked.questions, asked.direction, asked.target)
  }

  /** Puts a comment with the likeliest fault on every wrong answer that has one; or takes the comments off. */
  readonly comment = async (on: boolean): Promise<void> => {
    const { seen } = this.state()
    if (seen === null) return
    await this.#write(
      on ? 'Writing comments' : 'Taking off comments',
      seen,
      async ({ reading, pupils }, work) => {
        const { done, written } = await writeComments(reading, on ? commentsFor(pupils) : [], work)
        this.runner.say(on ? `${counted(written, 'comment')} written.` : 'The comments are off.')
        return done
      },
    )
  }

  /** Brings cells of the sheet that is shown to the front. */
  readonly show = async (area: Area): Promise<void> => {
    const { seen } = this.state()
    if (seen) await goTo(seen.reading.id, area).catch(this.runner.tell)
  }

  async #put(questions: readonly Question[], direction: Direction, over: Target | null): Promise<void> {
    await this.runner.run('Writing questions', async (work) => {
      const wanted = { questions, set: '', recipe: '', withKey: false }
      const { done, target } = await writeQuestions(wanted, direction, over, work)
      if (done === null) {
        this.set({ asked: { questions, direction, target } })
        return
      }
      this.runner.wrote(done)
      this.runner.say(`${counted(questions.length, 'question')} written on ${target.sheet.name}.`)
    })
  }

  async #write(
    title: string,
    seen: SheetView,
    action: (now: SheetView, work: Work) => Promise<Done>,
  ): Promise<void> {
    await this.runner.run(title, async (work) => {
      const now = await this.#viewOf(seen.reading.id, work)
      this.runner.wrote(await action(now, work))
    })
  }

  async #look(work: Work): Promise<void> {
    const inFront = await this.#viewOf(this.front.state().sheet, work)
    const { seen } = this.state()
    const isOwn = String(inFront.reading.matrix.values[0]?.[0] ?? '').startsWith(OWN_SHEET)
    const before = isOwn && inFront.reading.sheets.find(({ id }) => id === seen?.reading.id)
    const now = before ? await this.#viewOf(before.id, work) : inFront
    this.set({ seen: now, asked: null, filing: null, edited: false })
    try {
      this.set({ record: await readRecordSheet(now.reading.sheets, work), problem: null })
    } catch (error) {
      const { sentence, next } = problemOf(error)
      this.set({ record: null, problem: `${sentence} ${next}`.trim() })
    }
  }

  async #viewOf(id: string | undefined, work: Work): Promise<SheetView> {
    const looked = await lookAt(id, correctionsOf, work)
    const { mastery } = this.state().settings
    const reviews = await reviewsOf(looked, mastery, work)
    const pupils = diagnosedPupils(reviews)
    return { reading: looked.reading, reviews, pupils }
  }
}

/** A class and a day as they are read: "4H, 6 November 2026". */
export function occasionInWords({ class: group, date }: Pick<Met, 'class' | 'date'>): string {
  return [group, dayInWords(date)].filter((part) => part !== '').join(', ')
}

/** Names on a sheet that the teacher must be asked about before it goes into Record. */
export function namesToAsk(reviews: readonly Review[]): AskedName[] {
  return reviews.flatMap((review, index) =>
    sameNames(review).map((same) => ({ ...same, review: index, key: keyOf(index, same) })),
  )
}

const keyOf = (review: number, { pupils }: SameName) => `${review} ${pupils.join(' ')}`

/** A marksheet without the rows that do not count. */
function countingOnly(review: Review, index: number, counting: Counting): Review {
  const left = new Set(
    sameNames(review).flatMap((same) => {
      const chosen = counting.get(keyOf(index, same)) ?? null
      return same.pupils.filter((pupil) => pupil !== chosen)
    }),
  )
  return { ...review, pupils: review.pupils.filter((_, pupil) => !left.has(pupil)) }
}

function commentsFor(pupils: readonly DiagnosedPupil[]): CellComment[] {
  return pupils.flatMap(({ pupil, faults }) =>
    pupil.answers.flatMap(({ row, column }, index): CellComment[] => {
      const fault = FAULTS.find(({ id }) => id === faults[index])
      return fault ? [{ row, column, text: `perhaps: ${fault.sentence} ${fault.help}` }] : []
    }),
  )
}
