import type { Ranges } from '../../src/marksheet/layout/correct'
import type { Marksheet } from '../../src/marksheet/layout/find'
import type { Area, Matrix } from '../../src/marksheet/layout/matrix'
import type { Done } from '../../src/office/edit/edit'
import { clearSheet, hideFlags } from '../../src/office/marking/markSheet'
import { goTo, readSheet, type SheetReading } from '../../src/office/workbook/read'
import { keepSettings, readSettings, watchSettings, type Settings } from '../../src/office/workbook/settings'
import { hasOwnRules } from '../../src/office/marking/conditionalFormats'
import { watchPauses, type EndWatch } from '../../src/office/workbook/watch'
import { CELLS_PER_REQUEST, UNWATCHED, type Work } from '../../src/office/edit/work'
import { FRONT, type Front } from '../common/front'
import { RUNNER } from '../common/pane'
import { Store } from '../common/store'
import type { Runner } from '../common/runner'
import { lookAt, markAgain, withCorrection, type Seen } from './actions'
import { changedAnswers } from './changed'
import { summaryOf, type Summary } from './summary'

/** What the Mark area shows. */
export interface MarkerState {
  /** The sheet in front, once it has been read. */
  readonly seen: Seen | null
  /** What the last marking found; null before, and after it was cleared or taken back. */
  readonly summary: Summary | null
  /** How many answers have been changed since that marking. */
  readonly changed: number
  readonly settings: Settings
}

/** What the buttons of the Mark area do. */
export class Marker extends Store<MarkerState> {
  readonly #corrections = new Map<string, readonly Ranges[]>()
  /** Whether flags were shown before something was written that shows or hides them. */
  readonly #flagsBefore = new WeakMap<Done, boolean>()
  #marked: Done | null = null
  /** The sheet as it was when it was marked. */
  #before: Matrix | null = null

  constructor(
    private readonly runner: Runner,
    private readonly front: Front,
  ) {
    super({ seen: null, summary: null, changed: 0, settings: readSettings() })
    watchSettings((settings) => {
      this.set({ settings })
    })
    runner.whenUndone((done) => {
      if (done === this.#marked) this.#forget()
      const before = this.#flagsBefore.get(done)
      if (before !== undefined) void this.#keep({ flags: before })
    })
  }

  /** Reads the sheet in front or just marked, once nothing else is under way, and finds its marksheets. */
  readonly look = async (): Promise<void> => {
    await this.runner.look('Looking at the sheet', async (work) => {
      const seen = await lookAt(this.front.state().sheet, this.correctionsOf, work)
      if (seen.reading.id !== this.state().seen?.reading.id) this.#forget()
      this.#take(seen)
    })
  }

  /** The ranges that the teacher has corrected for the sheet with the id. */
  readonly correctionsOf = (id: string): readonly Ranges[] => this.#corrections.get(id) ?? []

  /** Reads the sheet that is shown again a moment after it was changed, until the watch is ended; says nothing where it cannot. */
  readonly watchTyping = (): Promise<EndWatch> =>
    watchPauses((sheetId) => {
      if (sheetId === this.state().seen?.reading.id) void this.#catchUp()
    })

  async #catchUp(): Promise<void> {
    const { seen } = this.state()
    if (seen === null || this.runner.state().running || cellsOf(seen) > CELLS_PER_REQUEST) return
    try {
      const now = await lookAt(seen.reading.id, () => seen.corrections, UNWATCHED)
      if (this.state().seen === seen) this.#take(now)
    } catch {
      // Whatever stands in the way, a cell that is being typed in say, the next change or look will do.
    }
  }

  /** Marks the sheet that is shown, as it stands now; gives whether it did. */
  readonly mark = async (): Promise<boolean> => {
    const { seen, settings } = this.state()
    if (seen === null) return false
    this.front.stayOn(seen.reading.id)
    const marked = await this.runner.run(`Marking ${seen.reading.name}`, async (work) => {
      const { seen: now, reviews, done } = await markAgain(seen, settings, work)
      this.#before = now.reading.matrix
      this.#take(now)
      this.#marked = done
      this.runner.wrote(done)
      this.set({ summary: summaryOf(reviews, settings.mastery) })
      this.runner.say(`${now.reading.name} is marked.`)
      return true
    })
    return marked === true
  }

  /** Takes all colours, flags and notes off the sheet. */
  readonly clear = async (): Promise<void> => {
    if (await this.#write('Clearing', clearSheet, 'The colours, flags and notes are off.')) this.#forget()
  }

  /**
   * Shows the flags and notes by marking again, or takes them off; on a sheet that is not marked only the next marking is affected. The choice
   * is remembered in the workbook, and changed back where it could not be carried out or is undone.
   */
  readonly showFlags = async (flags: boolean): Promise<void> => {
    const { seen } = this.state()
    await this.#keep({ flags })
    if (seen === null) return
    const isMarked = await this.#isMarked(seen)
    const done = isMarked === false ? null : isMarked && (await this.#carryOut(flags))
    if (done === undefined) await this.#keep({ flags: !flags })
    else if (done !== null) this.#flagsBefore.set(done, !flags)
  }

  async #isMarked({ reading }: Seen): Promise<boolean | undefined> {
    return this.runner.run('Looking at the sheet', async (work) => {
      const { customFormats } = await readSheet(reading.id, work)
      return hasOwnRules(reading, customFormats)
    })
  }

  async #carryOut(flags: boolean): Promise<Done | undefined> {
    if (!flags)
      return this.#write('Hiding flags on', hideFlags, 'Flags and notes are hidden; the colours stay.')
    return (await this.mark()) ? (this.#marked ?? undefined) : undefined
  }

  /** Whether marking writes the Mastery sheet too; remembered in the workbook. */
  readonly chooseMasterySheet = (masterySheet: boolean): Promise<void> => this.#keep({ masterySheet })

  /** Takes the ranges for a marksheet, in place of one that was found. Throws Problem where they make none. */
  readonly correct = (replaced: Marksheet | null, ranges: Ranges): void => {
    const { seen } = this.state()
    if (seen === null) return
    this.#take(withCorrection(seen, replaced, ranges))
    this.#forget()
  }

  /** Brings cells of the sheet that is shown to the front. */
  readonly show = async (area: Area): Promise<void> => {
    const { seen } = this.state()
    if (seen) await goTo(seen.reading.id, area).catch(this.runner.tell)
  }

  async #write(
    title: string,
    action: (reading: SheetReading, work: Work) => Promise<Done>,
    said: string,
  ): Promise<Done | undefined> {
    const { seen } = this.state()
    if (seen === null) return undefined
    const { id, name } = seen.reading
    return this.runner.run(`${title} ${name}`, async (work) => {
      const done = await action(await readSheet(id, work), work)
      this.runner.wrote(done)
      this.runner.say(said)
      return done
    })
  }

  async #keep(changed: Partial<Settings>): Promise<void> {
    try {
      await keepSettings(changed)
    } catch (error) {
      this.runner.tell(error)
    }
  }

  #take(seen: Seen): void {
    const { reading, marksheets } = seen
    this.#corrections.set(reading.id, seen.corrections)
    this.set({ seen, changed: this.#before ? changedAnswers(this.#before, reading.matrix, marksheets) : 0 })
  }

  #forget(): void {
    this.#marked = null
    this.#before = null
    this.set({ summary: null, changed: 0 })
  }
}

function cellsOf({ reading: { matrix } }: Seen): number {
  return matrix.values.length * (matrix.values[0]?.length ?? 0)
}

let shared: Marker | null = null

/** The marker of the pane and of the ribbon, so that both mark alike. */
export function sharedMarker(): Marker {
  return (shared ??= new Marker(RUNNER, FRONT))
}

/** The ranges that the teacher has corrected in Mark for the sheet with the id. */
export function correctionsOf(id: string): readonly Ranges[] {
  return sharedMarker().correctionsOf(id)
}
