import type { FaultId } from '../../src/answers/faults'
import type { Question } from '../../src/arithmetic/question'
import { Store } from './store'

/** The area that the pane opens on. */
export const FIRST_AREA = 'mark'

/** A question to model, and the fault whose working is to stand beside it, where there is one. */
export interface ToModel {
  readonly question: Question
  readonly fault: FaultId | null
}

/** Which area is open, and what Model was last asked to show: a new object each time, null before the first. */
export interface NavigationState {
  readonly open: string
  readonly toModel: ToModel | null
}

/** The way from one area of the pane to another. */
export class Navigation extends Store<NavigationState> {
  constructor() {
    super({ open: FIRST_AREA, toModel: null })
  }

  /** Opens an area by its id. */
  readonly show = (open: string): void => {
    this.set({ open })
  }

  /** Opens Model with a question. */
  readonly model = ({ question, fault }: ToModel): void => {
    this.set({ open: 'model', toModel: { question, fault } })
  }
}

/** The one way through the pane that all areas share. */
export const NAVIGATION = new Navigation()
