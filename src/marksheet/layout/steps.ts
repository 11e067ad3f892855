/** A long reckoning that may pause after each step, and gives its result at its end. */
export type Steps<T> = Generator<undefined, T, undefined>

/** The result of a reckoning that is not paused. */
export function atOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}
