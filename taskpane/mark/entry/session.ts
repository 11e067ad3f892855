import type { Outcome } from '../../../src/answers/typed'
import { cellsEdit, type Content, type SheetRef } from '../../../src/office/edit/cells'
import { perform, takeBack, type Done, type Edit } from '../../../src/office/edit/edit'
import { problemOf } from '../../../src/office/edit/errors'
import { Store } from '../../common/store'
import type { Notice, Runner } from '../../common/runner'
import { isEmpty } from '../../../src/marksheet/layout/matrix'
import { ABSENT, BLANK, outcomeOf, rightContent, typedContent, type Place } from './places'

const ABSENT_WORD = 'absent'

/** An answer that was entered. */
export interface Entered {
  readonly place: Place
  readonly content: Content
  readonly outcome: Outcome
  /** Whether an absent child's one key filled it along with the one that it was pressed at. */
  readonly isAlong: boolean
}

/** Where entry stands: `index` is the place whose answer comes next (the number of places when all are done). */
export interface SessionState {
  readonly index: number
  readonly entered: ReadonlyMap<string, Entered>
  /** How many answers are still on their way into the sheet. */
  readonly writing: number
  readonly problem: Notice | null
}

/**
 * Entering answers one after another. Every answer is written as it is entered, while the next one can already be typed; what has been
 * entered is safe at any moment. Where writing one fails, entry goes back to it and says why.
 */
export class Session extends Store<SessionState> {
  readonly #edits = new Map<string, Edit>()
  #queue: Promise<void> = Promise.resolve()
  #round = 0
  #done: Done | undefined
  /** What a hand goes on to type that writes the word out after its A has been taken. */
  #restOfWord = ''
  /** Whether the last key was part of that. */
  #isInWord = false

  constructor(
    private readonly runner: Runner,
    private readonly sheet: SheetRef,
    readonly places: readonly Place[],
  ) {
    super({ index: 0, entered: new Map(), writing: 0, problem: null })
  }

  /** The place whose answer comes next, or undefined when all are done. */
  get place(): Place | undefined {
    return this.places[this.state().index]
  }

  /** The right answer. */
  readonly right = (): void => {
    if (this.place) this.#enter(this.place, rightContent(this.place.key))
  }

  /** An answer as the pupil wrote it. */
  readonly typed = (text: string): void => {
    if (this.place) this.#enter(this.place, typedContent(text))
  }

  /** The child was absent: so says this answer and every blank one of the child's on this walk; entry comes to none of them again. */
  readonly absent = (): void => {
    const { place } = this
    if (place) {
      const { entered, index } = this.state()
      const also = this.#othersOf(place).filter(({ held, address }) => isEmpty(held) && !entered.has(address))
      for (const each of also) this.#keep(each, ABSENT, index, true)
      this.#enter(place, ABSENT)
    }
    this.#restOfWord = ABSENT_WORD.slice(1)
  }

  /** Whether a key only writes on “abs” or “absent”, of which the first letter was enough, or ends the word. */
  readonly swallows = (key: string): boolean => {
    const rest = this.#restOfWord
    const isNext = rest !== '' && key.toLowerCase() === rest.charAt(0)
    const isEnd = key === 'Enter' && this.#isInWord
    this.#isInWord = isNext
    this.#restOfWord = isNext ? rest.slice(1) : ''
    return isNext || isEnd
  }

  readonly blank = (): void => {
    if (this.place) this.#enter(this.place, BLANK)
  }

  /** Goes on without entering anything. */
  readonly skip = (): void => {
    this.set({ index: this.#nextTo(this.state().index, 1), problem: null })
  }

  /** Goes back by one. */
  readonly back = (): void => {
    this.set({ index: this.#nextTo(this.state().index, -1), problem: null })
  }

  /** Resolves when everything entered is in the sheet. */
  readonly settled = (): Promise<void> => this.#queue

  #enter(place: Place, content: Content): void {
    const { entered, index } = this.state()
    if (content !== ABSENT && entered.get(place.address)?.content === ABSENT) this.#notAbsent(place)
    this.#keep(place, content, index, false)
    this.set({ index: this.#nextTo(index, 1), problem: null })
  }

  /** Keeps an answer and has it written; `index` is where entry goes back to where that fails. */
  #keep(place: Place, content: Content, index: number, isAlong: boolean): void {
    const outcome = outcomeOf(content, place.key)
    const entered = new Map(this.state().entered).set(place.address, { place, content, outcome, isAlong })
    this.set({ entered })
    const round = this.#round
    this.#queueUp(place, index, async () => {
      if (round === this.#round) await this.#put(place, content)
      else this.#withdraw(place)
    })
  }

  /** Takes back what an absent child's other cells say. */
  #notAbsent(place: Place): void {
    const { entered } = this.state()
    for (const other of this.#othersOf(place).filter(({ address }) => entered.get(address)?.isAlong)) {
      this.#withdraw(other)
      this.#queueUp(other, this.places.indexOf(other), () => this.#takeOut(other))
    }
  }

  #othersOf(place: Place): Place[] {
    return this.places.filter((other) => other.child === place.child && other !== place)
  }

  /** The next place that entry comes to, forwards or backwards: none that an absent child's one key has filled along. */
  #nextTo(index: number, step: 1 | -1): number {
    const { entered } = this.state()
    const isPassed = (at: number) => entered.get(this.places[at]?.address ?? '')?.isAlong === true
    let next = index + step
    while (isPassed(next)) next += step
    if (next < 0) return index
    return Math.min(this.places.length, next)
  }

  /** Has something done to a place's cell after all before it; `index` is where entry goes back to where that fails. */
  #queueUp(place: Place, index: number, act: () => Promise<void>): void {
    this.set({ writing: this.state().writing + 1 })
    this.#queue = this.#queue.then(async () => {
      try {
        await act()
      } catch (error) {
        this.#round++
        this.#withdraw(place)
        const { sentence, next } = problemOf(error)
        const words = `The answer of ${place.pupil} in ${place.address} was not written: ${sentence}`
        this.set({ index, problem: { kind: 'problem', sentence: words, next } })
      } finally {
        this.set({ writing: this.state().writing - 1 })
      }
    })
  }

  /** Writes an answer. One that was entered before is taken back first, so that Undo gives the cell what it held before entry. */
  async #put(place: Place, content: Content): Promise<void> {
    await this.#takeOut(place)
    const { address, cell } = place
    const edit = cellsEdit(this.sheet, [{ top: cell.row, left: cell.column, rows: [[content]] }])
    await perform('', [edit])
    this.#edits.set(address, edit)
    const done = { title: `quick entry on ${this.sheet.name}`, edits: [...this.#edits.values()] }
    this.runner.wrote(done, this.#done)
    this.#done = done
  }

  /** Gives a cell back what it held before entry. */
  async #takeOut({ address }: Place): Promise<void> {
    if (this.#done && !this.runner.keeps(this.#done)) this.#edits.clear()
    const earlier = this.#edits.get(address)
    if (!earlier) return
    await takeBack({ title: '', edits: [earlier] })
    this.#edits.delete(address)
  }

  #withdraw({ address }: Place): void {
    const entered = new Map(this.state().entered)
    entered.delete(address)
    this.set({ entered })
  }
}
