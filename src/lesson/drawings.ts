import { escapeText } from './escape'
import type { Drawing, Shape } from './model/drawing'
import { gridOf, type PaperLine } from './model/grid'
import type { Paper } from './model/paper'
import { amountShown, type Bar, type Piece, type Shown } from './stories/bars'

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
  return svg(width, height, `<path d="${lines.join('')}" class="squares"/>`)
}

/** A written working as a table of squares: digits that were changed crossed out, a line over the answer. */
export function writtenWorking(paper: Paper): string {
  return writtenLines(gridOf(paper))
}

/** Lines of a written working, begun or finished, as a table of squares. */
export function writtenLines(lines: readonly PaperLine[]): string {
  const body = lines.map(({ kind, cells }) => {
    const inner = cells.map(({ text, crossed }) =>
      crossed ? `<td><s>${escapeText(text)}</s></td>` : `<td>${escapeText(text)}</td>`,
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

/** A number triangle in millimetres: the side total in the middle, a circle for each number, empty where it is null. */
export function triangleDrawing(total: number, numbers: readonly (number | null)[]): Drawing {
  const corners = CIRCLES.filter((_, place) => place % 3 === 0)
  const sides = corners.map(([x1, y1], index): Shape => {
    const [x2, y2] = corners[(index + 1) % corners.length] ?? [x1, y1]
    return { shape: 'line', kind: 'line', x1: mm(x1), y1: mm(y1), x2: mm(x2), y2: mm(y2) }
  })
  const circles = CIRCLES.flatMap(([x, y], place): Shape[] => {
    const number = numbers[place] ?? null
    const ring: Shape = { shape: 'circle', kind: 'ring', cx: mm(x), cy: mm(y), r: CIRCLE }
    return number === null ? [ring] : [ring, textAt(x, y + 2.4, String(number), 'number')]
  })
  return { width: 86, height: 77, shapes: [...sides, ...circles, textAt(43, 52, String(total), 'total')] }
}

/** What a triangle shows, for readers who do not see it. */
export function triangleInWords(total: number, numbers: readonly (number | null)[]): string {
  const all = CIRCLES.map((_, place) => String(numbers[place] ?? 'empty')).join(', ')
  return `Every side makes ${total}. From the top clockwise: ${all}.`
}

const BAR_WIDTH = 84
const BAR_HEIGHT = 8
/** Between two bars that are compared. */
const BARS_APART = 2
/** Where bars are cut that show no amounts. */
const BLANK_SHARE = 0.6
/** The narrowest part that is drawn, so that its amount can be read and written. */
const NARROWEST = 19
/** Height of a line of labels. */
const LABELS = 5.5

/**
 * One bar of a story in millimetres: the whole above its two parts, their widths in proportion (a narrow part a little wider than
 * it should be); in a comparison the larger amount above the smaller one, with the difference in a broken line. Bars to be filled by the
 * pupil are all cut at one place, so that they give nothing away.
 */
export function barDrawing({ compares, whole, parts: [first, second] }: Bar, shown: Shown): Drawing {
  const share = shown === 'nothing' ? BLANK_SHARE * BAR_WIDTH : (BAR_WIDTH * first.length) / whole.length
  const width = Math.min(Math.max(share, NARROWEST), BAR_WIDTH - NARROWEST)
  const apart = compares ? BARS_APART : 0
  const middle = LABELS + BAR_HEIGHT + apart
  const below = middle + BAR_HEIGHT + 4.2
  const box = (piece: Piece, x: number, y: number, wide: number, kind = 'bar'): Shape[] => [
    { shape: 'rect', kind, x: mm(x), y: mm(y), width: mm(wide), height: BAR_HEIGHT },
    textAt(x + wide / 2, y + 5.5, amountShown(piece, shown), 'amount'),
  ]
  return {
    width: BAR_WIDTH,
    height: 2 * BAR_HEIGHT + 2 * LABELS + apart,
    shapes: [
      textAt(0, LABELS - 1.6, whole.label, 'label'),
      ...box(whole, 0, LABELS, BAR_WIDTH),
      ...box(first, 0, middle, width),
      ...box(second, width, middle, BAR_WIDTH - width, compares ? 'difference' : 'bar'),
      textAt(0, below, first.label, 'label'),
      textAt(BAR_WIDTH, below, second.label, 'label end'),
    ],
  }
}

/** What a bar shows, for readers who do not see it. */
export function barInWords({ compares, whole, parts: [first, second] }: Bar, shown: Shown): string {
  const words = (piece: Piece) => `${piece.label} ${amountShown(piece, shown) || 'empty'}`
  return compares
    ? `The larger: ${words(whole)}. The smaller: ${words(first)}. The difference: ${words(second)}.`
    : `The whole: ${words(whole)}. Its parts: ${words(first)}, ${words(second)}.`
}

function textAt(x: number, y: number, text: string, kind: string): Shape {
  return { shape: 'text', kind, x: mm(x), y: mm(y), text }
}

/** A drawing in millimetres as SVG, with what it shows in words. */
export function printedDrawing({ width, height, shapes }: Drawing, words: string): string {
  return svg(width, height, shapes.map(element).join(''), words)
}

function element(shape: Shape): string {
  const { shape: name, kind, ...rest } = shape
  const { text, ...numbers } = { text: '', ...rest }
  const attributes = Object.entries(numbers).map(([key, value]) => ` ${key}="${value}"`)
  return `<${name}${attributes.join('')} class="${kind}">${escapeText(text)}</${name}>`
}

/** SVG in millimetres, with a little room around it for lines along its edge; passed over by readers where it has no words. */
function svg(width: number, height: number, inner: string, words = ''): string {
  const [wide, high] = [mm(width + 2 * EDGE), mm(height + 2 * EDGE)]
  const said = words === '' ? 'aria-hidden="true"' : `role="img" aria-label="${escapeText(words)}"`
  return `<svg width="${wide}mm" height="${high}mm" viewBox="${-EDGE} ${-EDGE} ${wide} ${high}" ${said}>${inner}</svg>`
}

/** A length as it stands in a drawing, to a hundredth of a millimetre. */
function mm(length: number): number {
  return Math.round(100 * length) / 100
}
