/** How long the pane works at a stretch, in milliseconds, before it lets the screen and the keyboard have their turn. */
const STRETCH = 40

/** All items of a long reckoning, worked out in stretches so that the pane is never blocked; stops where `stopped` says so. */
export async function inPieces<T>(items: Iterable<T>, stopped: () => boolean = () => false): Promise<T[]> {
  const all: T[] = []
  let start = performance.now()
  for (const item of items) {
    all.push(item)
    if (performance.now() - start < STRETCH) continue
    await new Promise((resolve) => setTimeout(resolve, 0))
    if (stopped()) break
    start = performance.now()
  }
  return all
}
