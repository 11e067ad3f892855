import type { CellValue } from '../../src/answers/typed'
import type { CellRef, Matrix } from '../../src/marksheet/layout/matrix'
import type { Chance } from './chance'
import { nameText, questionText, typedValue } from './texts'

/** A sheet that may or may not hold a marksheet. */
export function randomSheet(chance: Chance): Matrix {
  const cell = chance.of([
    () => null,
    () =>
      chance.of<() => CellValue>([
        () => null,
        () => null,
        () => questionText(chance),
        () => nameText(chance),
        () => typedValue(chance),
      ])(),
    () => chance.of<() => CellValue>([() => questionText(chance), () => typedValue(chance)])(),
  ])
  const width = chance.whole(1, 14)
  const values = chance.some(0, 25, () => chance.some(0, width, cell))
  const laid = chance.onceIn(3) ? [] : laidRows(chance)
  const at = chance.whole(0, values.length)
  return withFormats(chance, [...values.slice(0, at), ...laid, ...values.slice(at)])
}

/** Rows of something like a marksheet, of a shape by chance, now and then turned about. */
function laidRows(chance: Chance): CellValue[][] {
  const columns = chance.whole(1, 10)
  const questions = Array.from({ length: columns }, () =>
    chance.onceIn(6) ? questionText(chance) : plainQuestion(chance),
  )
  const pupils = chance.some(0, 15, () => nameText(chance))
  const marks = chance.onceIn(6)
  const typed = (): CellValue =>
    marks
      ? chance.of([1, 0, '✓', '✗', 'y', null, typedValue(chance)])
      : chance.onceIn(3)
        ? typedValue(chance)
        : chance.whole(0, 9999)
  const grid = () => [
    [chance.of(['Name', '', 'Class 4B', 'Pupil']), ...questions],
    ...pupils.map((name) => [name, ...questions.map(typed)]),
  ]
  const pairs = () =>
    pupils.map((name) => [name, ...questions.flatMap(() => [plainQuestion(chance), typed()])])
  const rows = chance.of<() => CellValue[][]>([grid, grid, pairs])()
  return chance.onceIn(4) ? turned(rows) : rows
}

function plainQuestion(chance: Chance): string {
  const top = chance.whole(0, 9999)
  return chance.onceIn(3) ? `${top} + ${chance.whole(0, 9999)}` : `${top} − ${chance.whole(0, top)}`
}

function turned(rows: readonly (readonly CellValue[])[]): CellValue[][] {
  const width = Math.max(0, ...rows.map(({ length }) => length))
  return Array.from({ length: width }, (_, column) => rows.map((row) => row[column] ?? null))
}

function withFormats(chance: Chance, values: CellValue[][]): Matrix {
  const name = chance.of(['Sheet1', "Owls, Mrs D's!", '李', '=A1'])
  if (chance.onceIn(2)) return { name, values }
  const formats = values.map((row) =>
    row.map(() =>
      chance.onceIn(10) ? chance.of(['d-mmm', '0%', '@', 'h:mm', '"d"0', '[h]:mm']) : 'General',
    ),
  )
  const formulas = values.map((row) => row.map(() => (chance.onceIn(20) ? '=SUM(A1:A9)' : '')))
  return { name, values, formats, formulas }
}

/** A marksheet as a teacher lays it out, and the cells in which its pupils type. */
export interface KnownSheet {
  readonly matrix: Matrix
  readonly typed: readonly CellRef[]
}

/**
 * A marksheet with a headed column of pupils, different questions and one name a pupil, whatever the pupils typed; upright or turned. Only
 * the first pupil types a number at least: words alone, right under the questions, may describe them.
 */
export function knownSheet(chance: Chance): KnownSheet {
  const questions = [...new Set(Array.from({ length: chance.whole(2, 12) }, () => plainQuestion(chance)))]
  const pupils = Array.from(
    { length: chance.whole(3, 12) },
    (_, index) => `Pupil ${'ABCDEFGHIJKL'[index] ?? ''}`,
  )
  const upright: CellValue[][] = [
    ['Name', ...questions],
    ...pupils.map((name, pupil) => [
      name,
      ...questions.map((_, question) =>
        pupil + question === 0 ? chance.whole(0, 9999) : answerLike(chance),
      ),
    ]),
  ]
  const isTurned = chance.onceIn(3)
  const top = chance.whole(0, 3)
  const rows = isTurned ? turned(upright) : upright
  const values = [...Array.from({ length: top }, () => [chance.of([null, 'Autumn check'])]), ...rows]
  const typed = pupils.flatMap((_, pupil) =>
    questions.map((__, question) =>
      isTurned
        ? { row: top + question + 1, column: pupil + 1 }
        : { row: top + pupil + 1, column: question + 1 },
    ),
  )
  return { matrix: { name: 'Known', values }, typed }
}

/** Anything that is no question of its own, which would make another marksheet of the cell. */
function answerLike(chance: Chance): CellValue {
  const value = typedValue(chance)
  return typeof value === 'string' &&
    /[-−–—‐‑‒－⁻➖﹣+＋➕⁺]|subtract|take|minus|add|plus|less|sum|total|difference/i.test(value)
    ? chance.whole(0, 9999)
    : value
}
