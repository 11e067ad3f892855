import type { FaultId } from '../../src/answers/faults'
import { printQuestion, readQuestion, type Question } from '../../src/arithmetic/question'
import type { Notation } from '../../src/lesson/model/notation'
import { problemOf } from '../../src/office/edit/errors'
import { insertLayout, layoutPlace, type LayoutPlace } from '../../src/office/model/cells'
import { insertPicture, type Picture } from '../../src/office/model/picture'
import { selectedQuestion } from '../../src/office/model/question'
import { watchSelection } from '../../src/office/workbook/watch'
import { Store } from '../common/store'
import type { Runner } from '../common/runner'
import { openLargeWindow, type Send } from '../common/largeWindow'
import { projectedIn, projectedMessage, projectorAddress, type Projected } from './projected'

/** What the Model area shows. */
export interface ModellerState {
  /** What is typed in the field. */
  readonly text: string
  /** Why the text is no question; null where it is one, or was not read yet. */
  readonly problem: string | null
  readonly question: Question | null
  /** How many steps are done. */
  readonly step: number
  /** The fault whose working is shown, and how far it is compared with the right one. */
  readonly fault: FaultId | null
  readonly comparing: number
  /** Whether the question follows the selected cell. */
  readonly following: boolean
  /** Where the layout is to go, where cells there are not empty and the teacher is asked. */
  readonly asked: LayoutPlace | null
}

const NOTHING_SHOWN = { question: null, step: 0, fault: null, comparing: 0, asked: null }

/** What the buttons of the Model area do. */
export class Modeller extends Store<ModellerState> {
  #endWatch: Promise<() => Promise<void>> | null = null
  #looks = 0
  #large: { readonly send: Send; readonly isDark: boolean; readonly notation: Notation } | null = null

  constructor(private readonly runner: Runner) {
    super({ text: '', problem: null, following: false, ...NOTHING_SHOWN })
  }

  readonly type = (text: string): void => {
    this.set({ text, problem: null })
  }

  /** Reads what is typed; nothing is shown where it is no question. */
  readonly read = (): void => {
    const reading = readQuestion(this.state().text)
    if ('problem' in reading) this.set({ problem: reading.problem, ...NOTHING_SHOWN })
    else this.show(reading.question, null)
  }

  /** Shows a question and, where there is one, a working with a fault. The step is kept where the question is shown already. */
  readonly show = (question: Question, fault: FaultId | null): void => {
    const text = printQuestion(question)
    const { question: before, step } = this.state()
    const isSame = before !== null && printQuestion(before) === text
    this.set({ ...NOTHING_SHOWN, text, problem: null, question, fault, step: isSame ? step : 0 })
    this.#tellLarge()
  }

  readonly goTo = (step: number): void => {
    this.set({ step })
    this.#tellLarge()
  }

  readonly chooseFault = (fault: FaultId | null): void => {
    this.set({ fault, comparing: 0 })
    this.#tellLarge()
  }

  readonly compare = (comparing: number): void => {
    this.set({ comparing })
    this.#tellLarge()
  }

  /** Takes the question of the selected cell. */
  readonly takeSelected = async (): Promise<void> => {
    const found = await this.runner.run('Reading the selected cell', selectedQuestion)
    if (found) this.show(found.question, found.fault)
  }

  /** Follows the selected cell, or no longer. Cells without a question leave the model as it is. */
  readonly follow = async (following: boolean): Promise<void> => {
    this.set({ following })
    try {
      if (following && this.#endWatch === null) {
        this.#endWatch = watchSelection(() => void this.#lookAtSelection())
        await this.#endWatch
        await this.#lookAtSelection()
      } else if (!following && this.#endWatch !== null) {
        const ending = this.#endWatch
        this.#endWatch = null
        await (
          await ending
        )()
      }
    } catch (error) {
      this.#endWatch = null
      this.set({ following: false })
      this.runner.tell(error)
    }
  }

  /** Puts the finished layout into cells from the selected one on; asks first where cells are not empty. */
  readonly insertCells = async (notation: Notation): Promise<void> => {
    const { question } = this.state()
    if (!question) return
    this.set({ asked: null })
    const place = await this.runner.run('Looking at the cells', () => layoutPlace(question, notation))
    if (!place) return
    if (place.taken.length > 0) this.set({ asked: place })
    else await this.#insert(question, place, false)
  }

  /** The teacher's answer where cells are not empty. */
  readonly answer = async (over: boolean): Promise<void> => {
    const { asked, question } = this.state()
    this.set({ asked: null })
    if (over && asked && question) await this.#insert(question, asked, true)
  }

  /** Puts the paper onto the sheet as a picture; `draw` makes it. */
  readonly insertPicture = async (draw: () => Promise<Picture>): Promise<void> => {
    await this.runner.run('Inserting the picture', async (work) => {
      this.runner.wrote(await insertPicture(await draw(), work))
      this.runner.say('The picture is on the sheet, at the selected cell.')
    })
  }

  /** Shows the question and its model in a large window; what is stepped in one of the two is stepped in the other. */
  readonly project = async (isDark: boolean, notation: Notation): Promise<void> => {
    const shown = this.#projected(isDark, notation)
    if (!shown) return
    await this.runner.run('Opening the large window', async () => {
      const send = await openLargeWindow({
        address: projectorAddress(shown, location.href),
        mustTalk: false,
        hear: this.#hearLarge,
      })
      this.#large = { send, isDark, notation }
    })
  }

  #projected(isDark: boolean, notation: Notation): Projected | null {
    const { question, step, fault, comparing } = this.state()
    return question && { text: printQuestion(question), step, fault, comparing, isDark, notation }
  }

  #tellLarge(): void {
    const shown = this.#large && this.#projected(this.#large.isDark, this.#large.notation)
    if (shown) this.#large?.send(projectedMessage(shown))
  }

  /** Takes the steps of the large window, where it shows the same question. */
  readonly #hearLarge = (message: string): void => {
    const heard = projectedIn(message)
    const { question } = this.state()
    if ('problem' in heard || !question || printQuestion(heard.question) !== printQuestion(question)) return
    this.set({ step: heard.step, ...(heard.fault === this.state().fault && { comparing: heard.comparing }) })
  }

  async #insert(question: Question, place: LayoutPlace, over: boolean): Promise<void> {
    await this.runner.run('Inserting the layout', async (work) => {
      this.runner.wrote(await insertLayout(place, over, work))
      this.runner.say(`The layout of ${printQuestion(question)} is on ${place.sheet.name}.`)
    })
  }

  async #lookAtSelection(): Promise<void> {
    const look = ++this.#looks
    try {
      const found = await selectedQuestion()
      if (look === this.#looks && this.state().following) this.show(found.question, found.fault)
    } catch (error) {
      const { cause } = problemOf(error)
      if (cause !== undefined) this.runner.tell(error)
    }
  }
}
