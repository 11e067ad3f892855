/** What a speed measurement found, in lines for people, and whether its goal was met. */
export interface Result {
  readonly name: string
  readonly lines: readonly string[]
  readonly met: boolean
}

/** Milliseconds of the middle one of five runs, after one to warm up. */
export function median(run: () => unknown): number {
  const times = Array.from({ length: 6 }, () => {
    const start = performance.now()
    run()
    return performance.now() - start
  })
  return times.slice(1).sort((a, b) => a - b)[2] ?? NaN
}
