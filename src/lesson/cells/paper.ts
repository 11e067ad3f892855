/** Columns of a printed sheet; two rooms of eleven squares stand side by side with two columns between them. */
export const COLUMNS = 24

/** The widest figure of which two stand side by side, in columns, and the column from which the second stands. */
export const HALF = 11
export const SECOND = COLUMNS - HALF

/** Side of a square in points: 7.1 mm, so that all columns fit across A4 within the margins with room to spare. */
export const SIDE = 20.25

/** Margins of the paper in points. */
export const MARGINS = { top: 36, bottom: 43, left: 36, right: 36 } as const

/** A4 is 842 points high; 16 of what the margins leave stay free, since printers differ a little in how high rows are. */
export const PAGE_HEIGHT = 842 - MARGINS.top - MARGINS.bottom - 16

/** The one font of printed sheets: of those that every Excel has, the one whose letters are nearest to those children learn to write. */
export const FONT = 'Comic Sans MS'

/** Sizes of letters, in points. */
export interface Sizes {
  readonly title: number
  readonly heading: number
  readonly text: number
  readonly small: number
}

/** Larger letters for pupils than for adults. */
export const SIZES: Readonly<Record<'pupil' | 'adult', Sizes>> = {
  pupil: { title: 17, heading: 14, text: 13, small: 10 },
  adult: { title: 14, heading: 12, text: 10, small: 9 },
}

/** Height of a line of letters in points. */
export function lineHeight(size: number): number {
  return Math.ceil(size * 1.5 * 4) / 4
}

/** How wide letters are, as a part of their size: a little wider than in the font, so that a line fits where Excel has another one. */
const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[ .,:;|!'’ijl]/, 0.33],
  [/[ftr()[\]I“”-]/, 0.46],
  [/[mwMW%□]/, 0.95],
  [/[−+=<>×]/, 0.7],
  [/[A-Z£]/, 0.7],
  [/\d/, 0.63],
]
const USUAL = 0.58
const BOLD = 1.1

/** How wide a text is at most, in points. */
export function widthOf(text: string, size: number, bold = false): number {
  const widths = Array.from(text, (sign) => WIDTHS.find(([signs]) => signs.test(sign))?.[1] ?? USUAL)
  return widths.reduce((sum, width) => sum + width, 0) * size * (bold ? BOLD : 1)
}

/** A text in lines of at most a width, in points, broken between words; a word that is wider stands alone. */
export function linesOf(text: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    const longer = `${last ?? ''} ${word}`
    if (last !== undefined && widthOf(longer, size, bold) <= width) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}
