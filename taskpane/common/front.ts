import { Store } from './store'

/** `sheet` is the id of the sheet just marked; undefined: whichever is in front. `turns` grows with every sheet that comes to the front. */
export interface FrontState {
  readonly sheet: string | undefined
  readonly turns: number
}

/** The sheet that Mark, Review and Personal sets are about, so that all three are about the same. */
export class Front extends Store<FrontState> {
  constructor() {
    super({ sheet: undefined, turns: 0 })
  }

  /** Goes over to the sheet in front. */
  readonly turn = (): void => {
    this.set({ sheet: undefined, turns: this.state().turns + 1 })
  }

  /** Stays on a sheet that is being marked until another comes to the front. */
  readonly stayOn = (sheet: string): void => {
    this.set({ sheet })
  }
}

/** The sheet that all areas and the ribbon share. */
export const FRONT = new Front()
