import type { Question } from '../../src/arithmetic/question'
import { makeSet, type MadeReading } from '../../src/items/makeSet'
import { describeWish } from '../../src/items/wish'
import { classListIn, findClassList, type ClassList } from '../../src/marksheet/layout/classList'
import type { Area, Matrix } from '../../src/marksheet/layout/matrix'
import { questionsIn } from '../../src/marksheet/record/record'
import { Problem } from '../../src/office/edit/errors'
import { readSelection } from '../../src/office/workbook/read'
import { readRecordSheet } from '../../src/office/record/record'
import { readSetBook, type Direction, type Target } from '../../src/office/questions/target'
import { readSettings } from '../../src/office/workbook/settings'
import { layOutMarksheet, writeQuestions, type SetToWrite } from '../../src/office/questions/writeQuestions'
import { Store } from '../common/store'
import type { Runner } from '../common/runner'
import { dayOf } from '../review/record/day'
import {
  changed,
  FIRST_CHOICES,
  newSetNumber,
  setNumber,
  sheetNameOf,
  titleOf,
  wishOf,
  type Choices,
} from './choices'

/** The names for a marksheet and where they were found; `chosen` are the cells that the teacher selected, if so. */
export interface Pupils {
  readonly list: ClassList
  readonly sheetId: string
  readonly sheet: string
  readonly chosen: Area | null
}

/** What the Set area shows. */
export interface SetterState {
  readonly choices: Choices
  /** The set's number or word as typed. */
  readonly typed: string
  readonly made: MadeReading
  readonly pupils: Pupils | null
  readonly withKey: boolean
  /** Where questions are to go, where cells there are not empty and the teacher is asked. */
  readonly asked: { readonly direction: Direction; readonly target: Target } | null
}

const SELECT_NAMES = 'Open the sheet that holds the names; or select them and press Use my selection.'
const NO_NUMBER: MadeReading = { problem: 'Type a set number, or press Another draw.', exist: 0n }

/** What the choices and buttons of the Set area do. */
export class Setter extends Store<SetterState> {
  #avoid: readonly Question[] = []
  #looks = 0
  #writes = 0

  constructor(
    private readonly runner: Runner,
    draw: () => string = newSetNumber,
  ) {
    const typed = draw()
    super({
      choices: FIRST_CHOICES,
      typed,
      made: makeSet(wishOf(FIRST_CHOICES), setNumber(typed)),
      pupils: null,
      withKey: true,
      asked: null,
    })
    this.#draw = draw
  }

  readonly #draw: () => string

  /** Changes what is chosen. */
  readonly choose = (change: Partial<Choices>): void => {
    this.#make({ choices: changed(this.state().choices, change) })
  }

  /** Takes a set number or word. */
  readonly type = (typed: string): void => {
    this.#make({ typed })
  }

  /** Draws other questions for the same choices. */
  readonly again = (): void => {
    this.#make({ typed: this.#draw() })
  }

  readonly chooseKey = (withKey: boolean): void => {
    this.set({ withKey })
  }

  /** Reads Record, and the names on the sheet in front unless the teacher has chosen some. */
  readonly look = async (): Promise<void> => {
    try {
      await this.#look()
    } catch (error) {
      this.runner.tell(error)
    }
  }

  /** The same after somebody has typed; says nothing where it cannot, for the next change or look will do. */
  readonly catchUp = async (): Promise<void> => {
    if (this.runner.state().running === null) await this.#look().catch(() => undefined)
  }

  async #look(): Promise<void> {
    const look = ++this.#looks
    const book = await readSetBook()
    const { rows } = await readRecordSheet(book.sheets)
    if (look !== this.#looks) return
    const { id, name, matrix } = book.source
    const found = findClassList(matrix)
    const before = this.state().pupils
    const isStillThere = book.sheets.some((sheet) => sheet.id === before?.sheetId)
    const kept = isStillThere ? before : null
    const pupils = found && !kept?.chosen ? { list: found, sheetId: id, sheet: name, chosen: null } : kept
    this.#avoid = questionsIn(rows)
    this.#make({ pupils })
  }

  /** Looks again whenever something was written or taken back, until the function given back is called. */
  readonly watch = (): (() => void) => {
    this.#writes = this.runner.state().writes
    return this.runner.subscribe(() => {
      const { running, writes } = this.runner.state()
      if (running !== null || writes === this.#writes) return
      this.#writes = writes
      void this.look()
    })
  }

  /** Takes the selected cells for the names. */
  readonly takeNames = async (): Promise<void> => {
    await this.runner.run('Reading the selection', async (work) => {
      const { sheetId, sheet, area } = await readSelection()
      const { source } = await readSetBook(sheetId, work)
      const list = namesFrom(source.matrix, area)
      this.set({ pupils: { list, sheetId, sheet, chosen: area } })
    })
  }

  /** Lays out a marksheet for the names as they stand now. */
  readonly layOut = async (): Promise<void> => {
    const { choices, typed, pupils } = this.state()
    const wanted = this.#wanted()
    if (!wanted) return
    this.set({ asked: null })
    await this.runner.run('Laying out the marksheet', async (work) => {
      const book = await readSetBook(pupils?.sheetId, work)
      const { names } = namesFrom(book.source.matrix, pupils?.chosen ?? null)
      const title = titleOf(choices, setNumber(typed), readSettings().className)
      const on = { sheet: sheetNameOf(choices, dayOf(new Date())), title, names }
      const { done, sheet } = await layOutMarksheet(wanted, on, book, work)
      this.runner.wrote(done)
      this.runner.say(`The marksheet is on the sheet ${sheet}.`, 'Type the answers, then mark it under Mark.')
    })
  }

  /** Writes the questions from the selected cell on; asks first where cells are not empty. */
  readonly write = async (direction: Direction): Promise<void> => {
    this.set({ asked: null })
    await this.#write(direction, null)
  }

  /** The teacher's answer where cells are not empty. */
  readonly answer = async (over: boolean): Promise<void> => {
    const { asked } = this.state()
    this.set({ asked: null })
    if (over && asked) await this.#write(asked.direction, asked.target)
  }

  async #write(direction: Direction, over: Target | null): Promise<void> {
    const wanted = this.#wanted()
    if (!wanted) return
    await this.runner.run('Writing the questions', async (work) => {
      const written = await writeQuestions(wanted, direction, over, work)
      if (!written.done) {
        this.set({ asked: { direction, target: written.target } })
        return
      }
      this.runner.wrote(written.done)
      this.runner.say(`The questions are on the sheet ${written.sheet}.`)
    })
  }

  #wanted(): SetToWrite | null {
    const { choices, typed, made, withKey } = this.state()
    if ('problem' in made) return null
    const recipe = describeWish(wishOf(choices))
    return { questions: made.questions, set: setNumber(typed), recipe, withKey }
  }

  #make(change: Partial<SetterState>): void {
    const { choices, typed } = { ...this.state(), ...change }
    const set = setNumber(typed)
    const made = set === '' ? NO_NUMBER : makeSet(wishOf(choices), set, this.#avoid)
    this.set({ ...change, made, asked: null })
  }
}

/** The names in the chosen cells, or those found on the sheet. Throws Problem where there are none. */
export function namesFrom(matrix: Matrix, chosen: Area | null): ClassList {
  const list = chosen ? classListIn(matrix, chosen) : findClassList(matrix)
  if (list) return list
  const where = chosen ? 'in the selected cells' : `on the sheet ${matrix.name}`
  throw new Problem(`No names were found ${where}.`, SELECT_NAMES)
}
