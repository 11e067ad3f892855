/** A column's width in points for so many characters of Excel's standard font (7 pixels each, 5 for the edges; 96 pixels to 72 points). */
export function pointsFor(characters: number): number {
  return (characters * 7 + 5) * 0.75
}
