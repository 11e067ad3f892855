/** Points that a character takes, roughly, in the default font. */
const POINTS_PER_CHARACTER = 5.5

/** The width in points that fits texts, or null when all are empty. */
export function fittedWidth(texts: readonly string[]): number | null {
  const longest = Math.max(0, ...texts.map((text) => text.length))
  return longest === 0 ? null : (longest + 1) * POINTS_PER_CHARACTER
}
