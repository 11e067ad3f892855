import { takeBack, type Done } from '../../src/office/edit/edit'
import { codeOf, problemOf, Stopped } from '../../src/office/edit/errors'
import type { Work } from '../../src/office/edit/work'
import { Store } from './store'

/** What the pane says about the last action, in a sentence, and what to do next ('' where there is nothing to do). */
export interface Notice {
  readonly kind: 'done' | 'problem'
  readonly sentence: string
  readonly next: string
}

/** Work under way. `part` is the share done, from 0 to 1, or null before the first word of it. */
export interface Running {
  readonly title: string
  readonly part: number | null
  readonly words: string
}

/** What the pane shows of its work. `writes` grows with everything that is written or taken back. */
export interface RunnerState {
  readonly running: Running | null
  readonly notice: Notice | null
  readonly undo: Done | null
  readonly writes: number
}

/** How many actions can be taken back, one after another. */
const MOST_UNDOS = 20

/** Carries out one action at a time, tells how far it is, turns errors into sentences and keeps what can be undone. */
export class Runner extends Store<RunnerState> {
  #undos: Done[] = []
  readonly #undone = new Set<(done: Done) => void>()
  #stop = new AbortController()
  /** Sentences on what the last writing left out, until they are said. */
  #leftOut: readonly string[] = []

  constructor() {
    super({ running: null, notice: null, undo: null, writes: 0 })
  }

  /**
   * Carries out an action; gives what it gives, or undefined where it failed, was stopped, or another one is still under way. `title` says
   * what is being done: "Marking Heron".
   */
  readonly run = <T>(title: string, action: (work: Work) => Promise<T>): Promise<T | undefined> =>
    this.#carryOut(title, action, null)

  /** Carries out a look at the workbook as soon as nothing else is under way; what was said last stays. Gives as `run` does. */
  readonly look = async <T>(title: string, action: (work: Work) => Promise<T>): Promise<T | undefined> => {
    while (this.state().running) await this.idle()
    return this.#carryOut(title, action, this.state().notice)
  }

  async #carryOut<T>(
    title: string,
    action: (work: Work) => Promise<T>,
    notice: Notice | null,
  ): Promise<T | undefined> {
    if (this.state().running) return undefined
    this.#stop = new AbortController()
    this.set({ running: { title, part: null, words: '' }, notice })
    const progress = (part: number, words: string) => {
      this.set({ running: { title, part, words } })
    }
    try {
      return await action({ signal: this.#stop.signal, progress })
    } catch (error) {
      this.tell(error)
      return undefined
    } finally {
      this.set({ running: null })
    }
  }

  /** Resolves when no action is under way. */
  readonly idle = (): Promise<void> =>
    new Promise((resolve) => {
      if (this.state().running === null) {
        resolve()
        return
      }
      const end = this.subscribe(() => {
        if (this.state().running !== null) return
        end()
        resolve()
      })
    })

  /** Asks the action under way to stop. */
  readonly stop = (): void => {
    this.#stop.abort()
  }

  /** Says that something is done, and what was left out in writing it. */
  readonly say = (sentence: string, next = ''): void => {
    this.set({ notice: { kind: 'done', sentence: [sentence, ...this.#leftOut].join(' '), next } })
    this.#leftOut = []
  }

  /** Says what went wrong. */
  readonly tell = (error: unknown): void => {
    const problem = problemOf(error)
    if (problem.cause !== undefined && codeOf(problem.cause) === '') console.error(problem.cause)
    const kind = problem instanceof Stopped ? 'done' : 'problem'
    this.set({ notice: { kind, sentence: problem.sentence, next: problem.next } })
  }

  /** Takes the notice away. */
  readonly hush = (): void => {
    this.set({ notice: null })
  }

  /**
   * Keeps what was written, so that Undo takes it back; in place of what it goes on from, where that is still the last. What has no edits is
   * nothing to take back.
   */
  readonly wrote = (done: Done, goingOnFrom?: Done): void => {
    const kept = done.edits.length === 0 ? [] : [done]
    const goesOn = goingOnFrom !== undefined && this.#undos.at(-1) === goingOnFrom
    this.#leftOut = done.told ?? []
    this.#undos = [...(goesOn ? this.#undos.slice(0, -1) : this.#undos), ...kept].slice(-MOST_UNDOS)
    this.#changed()
  }

  /** Calls the listener with everything that is taken back, until the function given back is called. */
  readonly whenUndone = (listener: (done: Done) => void): (() => void) => {
    this.#undone.add(listener)
    return () => this.#undone.delete(listener)
  }

  /** Whether something that was written can still be taken back. */
  readonly keeps = (done: Done): boolean => this.#undos.includes(done)

  /** Takes back the last thing that was written. */
  readonly undo = async (): Promise<void> => {
    const done = this.#undos.at(-1)
    if (!done) return
    await this.run(`Taking back: ${done.title}`, async (work) => {
      const left = await takeBack(done, work)
      this.#undos = this.#undos.slice(0, -1)
      this.#changed()
      for (const listener of this.#undone) listener(done)
      this.say(
        left.length === 0
          ? `Undone: ${done.title}.`
          : `Undone as far as it can be: ${done.title}. ${left.join(' ')}`,
      )
    })
  }

  #changed(): void {
    this.set({ undo: this.#undos.at(-1) ?? null, writes: this.state().writes + 1 })
  }
}
