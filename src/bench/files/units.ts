/** A file's column width, in characters of its default font, as points (7 pixels a character and 5 around it). */
export const charactersToPoints = (characters: number): number => (characters * 7 + 5) * 0.75

/** Points as a file's column width. */
export const pointsToCharacters = (points: number): number => Math.max(0, (points / 0.75 - 5) / 7)
