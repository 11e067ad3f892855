import { arrivalsIn, refused, type Arrival } from '../../../src/home/collect/arrivals'
import { messageArrival } from '../../../src/home/collect/fromMessage'
import { planOf, type Plan, type Taken } from '../../../src/home/collect/plan'
import { targetsOf, type Target } from '../../../src/home/collect/targets'
import { writersOf } from '../../../src/home/messages/signature'
import { matrixOf } from '../../../src/files/matrix'
import { Unreadable } from '../../../src/files/xlsx/unreadable'
import { readWorkbook } from '../../../src/files/xlsx/workbook'
import { addressOf } from '../../../src/marksheet/layout/matrix'
import { writeAnswers } from '../../../src/office/collecting/writeAnswers'
import { Problem } from '../../../src/office/edit/errors'
import { stopIfAsked } from '../../../src/office/edit/work'
import { readSheet } from '../../../src/office/workbook/read'
import { counted } from '../../common/words'
import { Store } from '../../common/store'
import type { Runner } from '../../common/runner'
import { lookAt, type Seen } from '../actions'

/** What came in and has not been written yet, and what would be written of it. */
export interface CollectorState {
  readonly arrivals: readonly Arrival[]
  readonly plan: Plan
  /** The addresses of the filled cells that are to be written over. */
  readonly over: ReadonlySet<string>
}

/** As many files as are read at once, and the most bytes that one of them may have. */
const MOST_FILES = 300
const MOST_BYTES = 20_000_000

const NOTHING: CollectorState = { arrivals: [], plan: planOf([]), over: new Set() }

/** What collecting answers does: reading what came in, showing whose it is, writing it into the marksheet. */
export class Collector extends Store<CollectorState> {
  readonly targets: readonly Target[]

  constructor(
    private readonly runner: Runner,
    readonly seen: Seen,
  ) {
    super(NOTHING)
    this.targets = targetsOf([{ matrix: seen.reading.matrix, marksheets: seen.marksheets }])
  }

  /** Reads files that the teacher has chosen; one that cannot be read is named and skipped. */
  readonly takeFiles = async (files: readonly File[]): Promise<void> => {
    await this.runner.run('Reading the files', async (work) => {
      if (files.length > MOST_FILES)
        throw new Problem(
          `${counted(files.length, 'file')} are too many at once.`,
          `Choose up to ${MOST_FILES} files at a time.`,
        )
      const arrivals: Arrival[] = []
      for (const [index, file] of files.entries()) {
        stopIfAsked(work)
        work.progress(index / files.length, file.name)
        arrivals.push(...(await arrivalsOf(file, this.targets)))
      }
      this.#take([...this.state().arrivals, ...arrivals])
    })
  }

  /** Reads the answers of a form from another sheet of the workbook. */
  readonly takeSheet = async (id: string): Promise<void> => {
    await this.runner.run('Reading the sheet', async (work) => {
      const { matrix, name } = await readSheet(id, work)
      this.#take([...this.state().arrivals, ...arrivalsIn(name, [matrix], this.targets)])
    })
  }

  /** Takes a pasted message for a child. */
  readonly takeMessage = (text: string, target: Target): void => {
    this.#take([this.readMessage(text, target)])
  }

  /** What a message would bring for a child. */
  readonly readMessage = (text: string, target: Target): Arrival =>
    messageArrival(
      'message',
      text,
      target,
      this.#names.filter((name) => name !== target.pupil.name),
    )

  /** The children who may have written a message. */
  readonly writersOf = (text: string): Target[] =>
    writersOf(text, this.#names).flatMap((index) => this.targets[index] ?? [])

  get #names(): string[] {
    return this.targets.map(({ pupil }) => pupil.name)
  }

  /** Says whose a file is that does not say so itself. */
  readonly assign = (arrival: Arrival, target: Target): void => {
    this.#take(
      this.state().arrivals.map((each) =>
        each === arrival ? { ...each, target, mayBe: [target], doubt: null } : each,
      ),
    )
  }

  /** Chooses whether a filled cell is written over. */
  readonly chooseOver = ({ cell }: Taken, isOver: boolean): void => {
    const over = new Set(this.state().over)
    if (isOver) over.add(addressOf(cell))
    else over.delete(addressOf(cell))
    this.set({ over })
  }

  /** Forgets what came in. */
  readonly clear = (): void => {
    this.set(NOTHING)
  }

  /** Writes what is planned, where pupils and questions still stand as they were read; gives whether it did. */
  readonly write = async (): Promise<boolean> => {
    const { plan, over } = this.state()
    const { reading, marksheets } = this.seen
    const chosen = plan.taken.filter(({ cell }) => over.has(addressOf(cell)))
    const written = await this.runner.run(`Writing on ${reading.name}`, async (work) => {
      const now = await lookAt(reading.id, () => this.seen.corrections, work)
      if (JSON.stringify(now.marksheets) !== JSON.stringify(marksheets))
        throw new Problem(
          `Pupils or questions on ${reading.name} have changed since the answers came in. Nothing was written.`,
          'Close Collect answers, open it again and choose the files once more.',
        )
      const done = await writeAnswers(reading, plan.writes, chosen, work)
      this.runner.wrote(done)
      const children = new Set([...plan.writes, ...chosen].map(({ pupil }) => pupil)).size
      this.runner.say(
        `${counted(plan.writes.length + chosen.length, 'answer')} of ${children === 1 ? 'one child' : `${children} children`} went into ${reading.name}.`,
      )
      this.set(NOTHING)
      return true
    })
    return written === true
  }

  #take(arrivals: readonly Arrival[]): void {
    this.set({ arrivals, plan: planOf(arrivals), over: new Set() })
  }
}

async function arrivalsOf(file: File, targets: readonly Target[]): Promise<Arrival[]> {
  if (file.size > MOST_BYTES) return [refused(file.name, 'It is larger than any home workbook.')]
  try {
    const workbook = await readWorkbook(new Uint8Array(await file.arrayBuffer()))
    return arrivalsIn(
      file.name,
      workbook.map((sheet) => matrixOf(sheet).matrix),
      targets,
    )
  } catch (error) {
    return [
      refused(
        file.name,
        error instanceof Unreadable ? `It cannot be read: ${error.message}` : 'It cannot be opened.',
      ),
    ]
  }
}
