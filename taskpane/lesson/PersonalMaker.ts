import type { Year } from '../../src/items/recipes'
import { personalSets, type PersonalSet, type PupilNeeds } from '../../src/lesson/personal'
import { classesIn, questionsIn, type RecordRow } from '../../src/marksheet/record/record'
import { datedName } from '../../src/marksheet/setting/sheetNames'
import { writePersonalSets } from '../../src/office/handouts/personalSheet'
import { readRecordSheet } from '../../src/office/record/record'
import { readSettings } from '../../src/office/workbook/settings'
import { Store } from '../common/store'
import { lookAt, reviewsOf } from '../mark/actions'
import { correctionsOf } from '../mark/marker'
import { peopleInRecord } from '../review/pupils/people'
import { dayOf } from '../review/record/day'
import type { Front } from '../common/front'
import type { Runner } from '../common/runner'
import { newSetNumber, setNumber, TOPICS_BY_YEAR } from '../set/choices'

/** The school years that there are recipes for. */
export const YEARS: readonly Year[] = TOPICS_BY_YEAR.map(({ year }) => year)

/** Where the pupils' needs are read: the marksheet in front, or a class in Record. */
export interface Needs {
  readonly name: string
  readonly pupils: readonly PupilNeeds[]
}

/** What the personal sets show. `from` is the place among `needs` that counts. */
export interface PersonalState {
  readonly year: Year
  readonly count: number
  readonly typed: string
  readonly needs: readonly Needs[]
  readonly from: number
  readonly made: { readonly sets: readonly PersonalSet[] } | { readonly problem: string }
}

const NOBODY = {
  problem:
    'Open the sheet that holds a marked class, or add one to Record: personal sets go by what pupils need.',
} as const

/** What the choices and buttons of the personal sets do. */
export class PersonalMaker extends Store<PersonalState> {
  #record: readonly RecordRow[] = []
  #looks = 0

  constructor(
    private readonly runner: Runner,
    private readonly front: Front,
  ) {
    super({ year: 4, count: 6, typed: newSetNumber(), needs: [], from: 0, made: NOBODY })
  }

  /** Changes what is chosen. */
  readonly choose = (change: Partial<Pick<PersonalState, 'year' | 'count' | 'typed' | 'from'>>): void => {
    const now = { ...this.state(), ...change }
    this.set({ ...change, made: this.#made(now) })
  }

  /** Draws other questions for the same pupils. */
  readonly again = (): void => {
    this.choose({ typed: newSetNumber() })
  }

  /** Reads the sheet in front or just marked, and Record, once nothing else is under way. */
  readonly look = async (): Promise<void> => {
    const look = ++this.#looks
    await this.runner.look('Looking at the sheet', async (work) => {
      const looked = await lookAt(this.front.state().sheet, correctionsOf, work)
      const { mastery } = readSettings()
      const reviews = await reviewsOf(looked, mastery, work)
      const pupils = reviews.flatMap((review) => review.pupils)
      const { rows } = await readRecordSheet(looked.reading.sheets, work)
      if (look !== this.#looks) return
      this.#record = rows
      const needs = [
        ...(pupils.length > 0 ? [{ name: looked.reading.name, pupils }] : []),
        ...classesIn(rows).map((name) => ({
          name: `${name}, by Record`,
          pupils: peopleInRecord(rows, name, mastery),
        })),
      ]
      const before = this.state().needs[this.state().from]?.name
      const from = Math.max(
        0,
        needs.findIndex(({ name }) => name === before),
      )
      const now = { ...this.state(), needs, from }
      this.set({ needs, from, made: this.#made(now) })
    })
  }

  /** Lays the sets out on a sheet, one row for a pupil. */
  readonly write = async (): Promise<void> => {
    const { made, typed } = this.state()
    if ('problem' in made) return
    await this.runner.run('Laying out the personal sets', async (work) => {
      const { className } = readSettings()
      const title = `${className === '' ? 'Personal sets' : `${className}: personal sets`} (set ${setNumber(typed)})`
      const on = { sheet: datedName('Personal sets', dayOf(new Date())), title }
      const { done, sheet } = await writePersonalSets(on, made.sets, work)
      this.runner.wrote(done)
      this.runner.say(
        `The personal sets are on the sheet ${sheet}.`,
        'Type the answers, then mark it under Mark.',
      )
    })
  }

  #made({ needs, from, year, count, typed }: PersonalState): PersonalState['made'] {
    const pupils = needs[from]?.pupils ?? []
    if (pupils.length === 0) return NOBODY
    const seed = setNumber(typed)
    if (seed === '') return { problem: 'Type a set number, or press Another draw.' }
    return personalSets({ pupils, year, seed, count, avoid: questionsIn(this.#record) })
  }
}
