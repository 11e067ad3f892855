import { HostObject } from '../hostObject'

/** A service that the client calls when it starts. */
export class AddinInternalService extends HostObject {
  static override readonly className = 'AddinInternalService'
  readonly #ready: () => void

  constructor(ready: () => void) {
    super()
    this.#ready = ready
  }
  notifyActionHandlerReady() {
    this.#ready()
    return null
  }
}
