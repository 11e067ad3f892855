import { invalidArgument } from '../errors'
import { HostObject } from '../hostObject'

const STATES = ['Inactive', 'Background', 'Visible'] as const

/** Whether the add-in's runtime runs unseen or with its pane in sight. */
export class AppRuntimeService extends HostObject {
  static override readonly className = 'AppRuntimeService'
  #state: (typeof STATES)[number] = 'Background'

  getAppRuntimeState() {
    return this.#state
  }
  setAppRuntimeState(wanted: unknown) {
    const state = STATES.find((each) => each === wanted)
    if (!state) throw invalidArgument()
    this.#state = state
  }
}
