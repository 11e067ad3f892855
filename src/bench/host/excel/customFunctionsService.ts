import { HostObject } from '../hostObject'

/** What the add-in's runtime gives back for one call: `[id, succeeded, result or message, error code]`. */
export type InvocationResult = readonly [id: number, succeeded: boolean, result: unknown, code?: unknown]

/** The service through which the add-in's runtime says that it is ready and returns results. */
export class CustomFunctionsService extends HostObject {
  static override readonly className = 'CustomFunctions'
  readonly #ready: () => void
  readonly #returned: (results: readonly InvocationResult[]) => void

  constructor(ready: () => void, returned: (results: readonly InvocationResult[]) => void) {
    super()
    this.#ready = ready
    this.#returned = returned
  }
  _setOsfControlContainerReadyForCustomFunctions() {
    this.#ready()
  }
  _getEnabledFeatures() {
    return []
  }
  setInvocationArrayResults(results: readonly InvocationResult[]) {
    this.#returned(results)
  }
}
