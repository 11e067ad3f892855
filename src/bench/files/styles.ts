import type { Alignment, Border, BorderStyle, Borders, Fill, Font, Style } from 'exceljs'
import type { BorderLine, CellFormat, ConditionalStyle, Edge } from '../grid/grid'
import { PLAIN } from '../grid/grid'
import { fromFileColour, toFileColour } from './colours'

const EDGES: readonly Edge[] = ['top', 'bottom', 'left', 'right']

/** The file's border styles for Excel's style and weight. */
const BORDERS: readonly (readonly [BorderStyle, style: string, weight: string])[] = [
  ['thin', 'Continuous', 'Thin'],
  ['hair', 'Continuous', 'Hairline'],
  ['medium', 'Continuous', 'Medium'],
  ['thick', 'Continuous', 'Thick'],
  ['dotted', 'Dot', 'Thin'],
  ['dashed', 'Dash', 'Thin'],
  ['mediumDashed', 'Dash', 'Medium'],
  ['dashDot', 'DashDot', 'Thin'],
  ['mediumDashDot', 'DashDot', 'Medium'],
  ['dashDotDot', 'DashDotDot', 'Thin'],
  ['mediumDashDotDot', 'DashDotDot', 'Medium'],
  ['double', 'Double', 'Thick'],
  ['slantDashDot', 'SlantDashDot', 'Medium'],
]

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)

function fromFileBorders(borders: Partial<Borders>): CellFormat['borders'] {
  const lines: Partial<Record<Edge, BorderLine>> = {}
  for (const edge of EDGES) {
    const border: Partial<Border> | undefined = borders[edge]
    const known = BORDERS.find(([style]) => style === border?.style)
    if (!known) continue
    const [, style, weight] = known
    lines[edge] = { style, weight, colour: fromFileColour(border?.color) ?? PLAIN.fontColour }
  }
  return lines
}

function toFileBorders(borders: CellFormat['borders']): Partial<Borders> {
  const lines: Partial<Borders> = {}
  for (const edge of EDGES) {
    const line = borders[edge]
    const known = line && (BORDERS.find(([, s, w]) => s === line.style && w === line.weight) ?? BORDERS[0])
    if (line && known && line.style !== 'None')
      lines[edge] = { style: known[0], color: toFileColour(line.colour) }
  }
  return lines
}

const fillColour = (fill: Fill | undefined): string | undefined =>
  fill?.type === 'pattern' && fill.pattern !== 'none'
    ? fromFileColour(fill.pattern === 'solid' ? (fill.fgColor ?? fill.bgColor) : fill.fgColor)
    : undefined

const solid = (colour: string): Fill => ({ type: 'pattern', pattern: 'solid', fgColor: toFileColour(colour) })

const isUnderlined = (font: Partial<Font>): boolean =>
  font.underline !== undefined && font.underline !== false && font.underline !== 'none'

/** A file's cell style as a format. */
export function fromFileStyle(style: Partial<Style>): CellFormat {
  const { font = {}, alignment = {}, fill, border = {}, numFmt, protection } = style
  const { horizontal, vertical, wrapText, indent }: Partial<Alignment> = alignment
  return {
    ...PLAIN,
    numberFormat: numFmt ?? PLAIN.numberFormat,
    fill: fillColour(fill) ?? null,
    fontColour: fromFileColour(font.color) ?? PLAIN.fontColour,
    fontName: font.name ?? PLAIN.fontName,
    fontSize: font.size ?? PLAIN.fontSize,
    bold: font.bold === true,
    italic: font.italic === true,
    underline: isUnderlined(font) ? 'Single' : PLAIN.underline,
    strikethrough: font.strike === true,
    horizontal: horizontal === undefined ? PLAIN.horizontal : capital(horizontal),
    vertical: vertical === undefined ? PLAIN.vertical : vertical === 'middle' ? 'Center' : capital(vertical),
    wrap: wrapText === true,
    indent: indent ?? PLAIN.indent,
    locked: protection?.locked !== false,
    formulaHidden: protection?.hidden === true,
    borders: fromFileBorders(border),
  }
}

/** A format as a file's cell style. */
export function toFileStyle(format: CellFormat): Partial<Style> {
  const alignment: Partial<Alignment> = { wrapText: format.wrap }
  if (format.horizontal !== PLAIN.horizontal)
    alignment.horizontal = format.horizontal.toLowerCase() as NonNullable<Alignment['horizontal']>
  if (format.vertical !== PLAIN.vertical)
    alignment.vertical = format.vertical === 'Center' ? 'middle' : (format.vertical.toLowerCase() as 'top')
  if (format.indent > 0) alignment.indent = format.indent
  return {
    numFmt: format.numberFormat,
    alignment,
    font: {
      name: format.fontName,
      size: format.fontSize,
      bold: format.bold,
      italic: format.italic,
      underline: format.underline !== PLAIN.underline,
      strike: format.strikethrough,
      color: toFileColour(format.fontColour),
    },
    border: toFileBorders(format.borders),
    protection: { locked: format.locked, hidden: format.formulaHidden },
    ...(format.fill === null ? {} : { fill: solid(format.fill) }),
  }
}

/** The look of a file's conditional format. Its fill is kept in the background colour. */
export function fromFileRuleStyle({ fill, font, border, numFmt }: Partial<Style> = {}): ConditionalStyle {
  const colour =
    fill?.type === 'pattern' ? (fromFileColour(fill.bgColor) ?? fromFileColour(fill.fgColor)) : undefined
  const fontColour = fromFileColour(font?.color)
  return {
    ...(colour === undefined ? {} : { fill: colour }),
    ...(fontColour === undefined ? {} : { fontColour }),
    ...(font?.bold === undefined ? {} : { bold: font.bold }),
    ...(font?.italic === undefined ? {} : { italic: font.italic }),
    ...(font?.underline === undefined ? {} : { underline: isUnderlined(font) ? 'Single' : 'None' }),
    ...(font?.strike === undefined ? {} : { strikethrough: font.strike }),
    ...(border ? { borders: fromFileBorders(border) } : {}),
    ...(typeof numFmt === 'string' ? { numberFormat: numFmt } : {}),
  }
}

/** The look of a conditional format as a file keeps it. */
export function toFileRuleStyle(style: ConditionalStyle): Partial<Style> {
  const font: Partial<Font> = {}
  if (style.fontColour !== undefined) font.color = toFileColour(style.fontColour)
  if (style.bold !== undefined) font.bold = style.bold
  if (style.italic !== undefined) font.italic = style.italic
  if (style.underline !== undefined) font.underline = style.underline !== 'None'
  if (style.strikethrough !== undefined) font.strike = style.strikethrough
  return {
    ...(Object.keys(font).length > 0 ? { font } : {}),
    ...(style.fill
      ? {
          fill: {
            type: 'pattern',
            pattern: 'solid',
            bgColor: toFileColour(style.fill),
            fgColor: toFileColour(style.fill),
          },
        }
      : {}),
    ...(style.borders ? { border: toFileBorders(style.borders) } : {}),
    ...(style.numberFormat === undefined ? {} : { numFmt: style.numberFormat }),
  }
}
