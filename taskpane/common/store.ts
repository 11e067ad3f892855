/** State that is shown on screen, kept outside the components so that it outlives them and can be tested without them. */
export class Store<State extends object> {
  #state: State
  readonly #listeners = new Set<() => void>()

  constructor(initial: State) {
    this.#state = initial
  }

  /** The state at the moment: the same object as long as nothing changes. */
  readonly state = (): State => this.#state

  /** Calls the listener after every change, until the function given back is called. */
  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  protected set(change: Partial<State>): void {
    this.#state = { ...this.#state, ...change }
    for (const listener of this.#listeners) listener()
  }
}
