import type { Color } from 'exceljs'

/** The colours of Office's own theme, by the number that files use (light and dark pairs are swapped in files). */
const THEME = [
  'FFFFFF',
  '000000',
  'E7E6E6',
  '44546A',
  '4472C4',
  'ED7D31',
  'A5A5A5',
  'FFC000',
  '5B9BD5',
  '70AD47',
] as const

/** How much darker (below 0) or lighter (above 0) a theme colour is made. */
const tinted = (channel: number, tint: number): number =>
  Math.round(tint < 0 ? channel * (1 + tint) : channel + (255 - channel) * tint)

/** A file's colour as #RRGGBB; undefined where the file leaves it to the program. */
export function fromFileColour(colour: Partial<Color> & { tint?: number } = {}): string | undefined {
  if (colour.argb !== undefined) return `#${colour.argb.slice(-6).toUpperCase()}`
  const base = colour.theme === undefined ? undefined : THEME[colour.theme]
  if (base === undefined) return undefined
  const channels = [0, 2, 4].map((at) => tinted(parseInt(base.slice(at, at + 2), 16), colour.tint ?? 0))
  return `#${channels.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`.toUpperCase()
}

/** #RRGGBB as a file's colour. */
export const toFileColour = (colour: string): Partial<Color> => ({
  argb: `FF${colour.slice(1).toUpperCase()}`,
})
