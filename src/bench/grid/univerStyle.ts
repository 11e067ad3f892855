import { BooleanNumber, BorderStyleTypes, HorizontalAlign, VerticalAlign, WrapStrategy } from '@univerjs/core'
import type { IBorderData, IStyleData } from '@univerjs/core'
import type { BorderLine, CellFormat, Edge } from './grid'
import { PLAIN } from './grid'

/** Univer's border styles for Excel's style and weight. */
const BORDERS: readonly {
  readonly type: BorderStyleTypes
  readonly style: string
  readonly weight: string
}[] = [
  { type: BorderStyleTypes.THIN, style: 'Continuous', weight: 'Thin' },
  { type: BorderStyleTypes.HAIR, style: 'Continuous', weight: 'Hairline' },
  { type: BorderStyleTypes.MEDIUM, style: 'Continuous', weight: 'Medium' },
  { type: BorderStyleTypes.THICK, style: 'Continuous', weight: 'Thick' },
  { type: BorderStyleTypes.DOTTED, style: 'Dot', weight: 'Thin' },
  { type: BorderStyleTypes.DASHED, style: 'Dash', weight: 'Thin' },
  { type: BorderStyleTypes.MEDIUM_DASHED, style: 'Dash', weight: 'Medium' },
  { type: BorderStyleTypes.DASH_DOT, style: 'DashDot', weight: 'Thin' },
  { type: BorderStyleTypes.MEDIUM_DASH_DOT, style: 'DashDot', weight: 'Medium' },
  { type: BorderStyleTypes.DASH_DOT_DOT, style: 'DashDotDot', weight: 'Thin' },
  { type: BorderStyleTypes.MEDIUM_DASH_DOT_DOT, style: 'DashDotDot', weight: 'Medium' },
  { type: BorderStyleTypes.DOUBLE, style: 'Double', weight: 'Thick' },
  { type: BorderStyleTypes.SLANT_DASH_DOT, style: 'SlantDashDot', weight: 'Medium' },
]

const EDGES: readonly (readonly [Edge, 't' | 'b' | 'l' | 'r'])[] = [
  ['top', 't'],
  ['bottom', 'b'],
  ['left', 'l'],
  ['right', 'r'],
]

const HORIZONTAL: Readonly<Record<string, HorizontalAlign>> = {
  General: HorizontalAlign.UNSPECIFIED,
  Left: HorizontalAlign.LEFT,
  Center: HorizontalAlign.CENTER,
  Right: HorizontalAlign.RIGHT,
  Justify: HorizontalAlign.JUSTIFIED,
  Distributed: HorizontalAlign.DISTRIBUTED,
}

const VERTICAL: Readonly<Record<string, VerticalAlign>> = {
  Top: VerticalAlign.TOP,
  Center: VerticalAlign.MIDDLE,
  Bottom: VerticalAlign.BOTTOM,
}

const wordFor = <T>(words: Readonly<Record<string, T>>, value: unknown, otherwise: string): string =>
  Object.keys(words).find((word) => words[word] === value) ?? otherwise

const flag = (on: boolean): BooleanNumber => (on ? BooleanNumber.TRUE : BooleanNumber.FALSE)

function borderType({ style, weight }: BorderLine): BorderStyleTypes {
  const sameStyle = BORDERS.filter((border) => border.style === style)
  return (sameStyle.find((border) => border.weight === weight) ?? sameStyle[0])?.type ?? BorderStyleTypes.THIN
}

function univerBorders(borders: CellFormat['borders']): IBorderData {
  const lines: IBorderData = {}
  for (const [edge, key] of EDGES) {
    const line = borders[edge]
    if (line) lines[key] = line.style === 'None' ? null : { s: borderType(line), cl: { rgb: line.colour } }
  }
  return lines
}

/** A patch of a format as a patch of Univer's cell style; null takes a trait away. */
export function toUniverStyle(patch: Partial<CellFormat>): IStyleData {
  const style: IStyleData = {}
  if (patch.numberFormat !== undefined)
    style.n = patch.numberFormat === PLAIN.numberFormat ? null : { pattern: patch.numberFormat }
  if (patch.fill !== undefined) style.bg = patch.fill === null ? null : { rgb: patch.fill }
  if (patch.fontColour !== undefined) style.cl = { rgb: patch.fontColour }
  if (patch.fontName !== undefined) style.ff = patch.fontName
  if (patch.fontSize !== undefined) style.fs = patch.fontSize
  if (patch.bold !== undefined) style.bl = flag(patch.bold)
  if (patch.italic !== undefined) style.it = flag(patch.italic)
  if (patch.underline !== undefined) style.ul = { s: flag(patch.underline !== PLAIN.underline) }
  if (patch.strikethrough !== undefined) style.st = { s: flag(patch.strikethrough) }
  if (patch.horizontal !== undefined) style.ht = HORIZONTAL[patch.horizontal] ?? null
  if (patch.vertical !== undefined) style.vt = VERTICAL[patch.vertical] ?? null
  if (patch.wrap !== undefined) style.tb = patch.wrap ? WrapStrategy.WRAP : WrapStrategy.OVERFLOW
  if (patch.borders !== undefined) style.bd = univerBorders(patch.borders)
  return style
}

function borderLine(line: IBorderData['t']): BorderLine | undefined {
  const known = BORDERS.find((border) => border.type === line?.s)
  return known && { style: known.style, weight: known.weight, colour: colourOf(line?.cl) ?? '#000000' }
}

/** Univer's colour as #RRGGBB; its own editor also writes rgb(…). */
function colourOf(colour: IStyleData['cl']): string | undefined {
  const rgb = colour?.rgb
  if (typeof rgb !== 'string') return undefined
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(rgb)
  if (!parts) return rgb.toUpperCase()
  const hex = parts.slice(1).map((part) => Number(part).toString(16).padStart(2, '0'))
  return `#${hex.join('')}`.toUpperCase()
}

/** Univer's style of a cell as a format; what the style does not say is plain. */
export function fromUniverStyle(style: IStyleData): CellFormat {
  const borders: Partial<Record<Edge, BorderLine>> = {}
  for (const [edge, key] of EDGES) {
    const line = borderLine(style.bd?.[key])
    if (line) borders[edge] = line
  }
  return {
    ...PLAIN,
    numberFormat: style.n?.pattern ?? PLAIN.numberFormat,
    fill: colourOf(style.bg) ?? null,
    fontColour: colourOf(style.cl) ?? PLAIN.fontColour,
    fontName: style.ff ?? PLAIN.fontName,
    fontSize: style.fs ?? PLAIN.fontSize,
    bold: style.bl === BooleanNumber.TRUE,
    italic: style.it === BooleanNumber.TRUE,
    underline: style.ul?.s === BooleanNumber.TRUE ? 'Single' : PLAIN.underline,
    strikethrough: style.st?.s === BooleanNumber.TRUE,
    horizontal: wordFor(HORIZONTAL, style.ht ?? HorizontalAlign.UNSPECIFIED, PLAIN.horizontal),
    vertical: wordFor(VERTICAL, style.vt, PLAIN.vertical),
    wrap: style.tb === WrapStrategy.WRAP,
    borders,
  }
}
