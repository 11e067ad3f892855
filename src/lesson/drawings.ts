import type { Layout } from '../arithmetic/layout'
import { escapeText } from './escape'
import type { Bar, Piece } from './stories/bars'

/** Side of a square of squared paper, in millimetres. */
export const SQUARE = 7.5

/** What is left free around a drawing whose lines run along its edge. */
const EDGE = 0.25

/** Squared paper, so many squares across and down, as SVG in millimetres. */
export function squaredPaper(columns: number, rows: number): string {
  const [width, height] = [columns * SQUARE, rows * SQUARE]
  const lines = [
    ...Array.from({ length: columns + 1 }, (_, i) => `M${i * SQUARE} 0V${height}`),
    ...Array.from({ length: rows + 1 }, (_, i) => `M0 ${i * SQUARE}H${width}`),
  ]
  return svg(width, height, `<path d="${lines.join('')}" class="squares"/>`, EDGE)
}

/** A written working as a table of squares: digits that were changed crossed out, changes above them, a line over the answer. */
export function writtenWorking({ rows }: Layout): string {
  const isCrossed = (row: number, column: number) =>
    rows[row]?.kind !== 'bottom' &&
    rows[row]?.kind !== 'answer' &&
    rows.slice(0, row).some(({ kind, cells }) => kind === 'mark' && cells[column] !== '')
  const body = rows.map(({ kind, cells }, row) => {
    const inner = cells.map((cell, column) =>
      cell !== '' && isCrossed(row, column)
        ? `<td><s>${escapeText(cell)}</s></td>`
        : `<td>${escapeText(cell)}</td>`,
    )
    return `<tr class="${kind}">${inner.join('')}</tr>`
  })
  return `<table class="written">${body.join('')}</table>`
}

const CIRCLE = 7
/** Where the nine circles of a triangle stand, in millimetres from the left and the top, from the top corner clockwise. */
const CIRCLES: readonly (readonly [number, number])[] = pointsOnSides([
  [43, 8],
  [78, 68.6],
  [8, 68.6],
])

function pointsOnSides(corners: readonly (readonly [number, number])[]): [number, number][] {
  return corners.flatMap(([x, y], index) => {
    const [toX, toY] = corners[(index + 1) % corners.length] ?? [x, y]
    return [0, 1, 2].map((step): [number, number] => [x + (step * (toX - x)) / 3, y + (step * (toY - y)) / 3])
  })
}

/** A number triangle as SVG: the side total in the middle, a circle for each number, empty where it is null. */
export function triangleDrawing(total: number, numbers: readonly (number | null)[]): string {
  const circles = CIRCLES.map(([x, y], place) => {
    const number = numbers[place] ?? null
    const text = number === null ? '' : textAt(x, y + 2.4, String(number), 'number')
    return `<circle cx="${mm(x)}" cy="${mm(y)}" r="${CIRCLE}" class="ring"/>${text}`
  })
  const [first, second, third] = [0, 3, 6].map((place) => CIRCLES[place]?.map(mm).join(' '))
  const outline = `<path d="M${first}L${second}L${third}Z" class="line"/>`
  return svg(86, 77, outline + circles.join('') + textAt(43, 52, String(total), 'total'))
}

const BAR_WIDTH = 84
const BAR_HEIGHT = 8
/** The narrowest part that is drawn, so that its amount can be read and written. */
const NARROWEST = 19
/** Height of a line of labels. */
const LABELS = 5.5

/**
 * One bar of a story as SVG: the whole above its two parts, their widths in proportion (a narrow part a little wider than it
 * should be). Unless complete, what is asked is a question mark and what was found before is left empty.
 */
export function barDrawing({ whole, parts: [first, second] }: Bar, isComplete: boolean): string {
  const share = (BAR_WIDTH * first.length) / whole.length
  const width = Math.min(Math.max(share, NARROWEST), BAR_WIDTH - NARROWEST)
  const middle = LABELS + BAR_HEIGHT
  const below = middle + BAR_HEIGHT + 4.2
  const box = (piece: Piece, x: number, y: number, wide: number) =>
    `<rect x="${mm(x)}" y="${mm(y)}" width="${mm(wide)}" height="${BAR_HEIGHT}" class="bar"/>` +
    textAt(x + wide / 2, y + 5.5, amountIn(piece, isComplete), 'amount')
  const drawn = [
    textAt(0, LABELS - 1.6, whole.label, 'label'),
    box(whole, 0, LABELS, BAR_WIDTH),
    box(first, 0, middle, width),
    box(second, width, middle, BAR_WIDTH - width),
    textAt(0, below, first.label, 'label'),
    textAt(BAR_WIDTH, below, second.label, 'label end'),
  ]
  return svg(BAR_WIDTH, 2 * BAR_HEIGHT + 2 * LABELS, drawn.join(''), EDGE)
}

function amountIn({ amount, role }: Piece, isComplete: boolean): string {
  if (isComplete || role === 'told') return amount
  return role === 'asked' ? '?' : ''
}

function textAt(x: number, y: number, text: string, style: string): string {
  return `<text x="${mm(x)}" y="${mm(y)}" class="${style}">${escapeText(text)}</text>`
}

function svg(width: number, height: number, inner: string, edge = 0): string {
  const [wide, high] = [mm(width + 2 * edge), mm(height + 2 * edge)]
  const box = `${-edge} ${-edge} ${wide} ${high}`
  return `<svg width="${wide}mm" height="${high}mm" viewBox="${box}" aria-hidden="true">${inner}</svg>`
}

/** A length as it stands in the drawing, to a hundredth of a millimetre. */
function mm(length: number): string {
  return String(Math.round(100 * length) / 100)
}
