import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readXlsx, saveXlsx, showWorkbook } from '../../src/bench/files'
import { startBench } from '../../src/bench/node'
import type { Matrix } from '../../src/marksheet/layout/matrix'
import { reviewJson } from '../../src/marksheet/reports/json'
import { review } from '../../src/marksheet/marking/review'
import { markSheet } from '../../src/office/marking/markSheet'
import { readSheet } from '../../src/office/workbook/read'
import { bytesOf, matricesOf, WORKBOOKS, type WorkbookName } from '../marksheets'
import { allConverted, allShownFills, LIBREOFFICE } from './libreoffice'
import { markedCopy, wantedFills } from './marked'

/** A workbook opened on the bench, marked there by the add-in, and saved. */
async function markedOnBench(name: WorkbookName): Promise<Uint8Array> {
  const bench = await startBench()
  const bytes = bytesOf(name)
  showWorkbook(bench, await readXlsx(bytes.slice().buffer))
  for (const { id } of bench.grid.sheets()) {
    const reading = await readSheet(id)
    const reviews = review(reading.matrix)
    if (reviews.length > 0) await markSheet(reading, reviews, { flags: true, mastery: true })
  }
  return new Uint8Array(await saveXlsx(bench))
}

const MADE = {
  'as the school keeps it': (name: WorkbookName) => Promise.resolve(bytesOf(name)),
  'marked by the command line': (name: WorkbookName) => markedCopy(bytesOf(name)),
  'marked on the bench': markedOnBench,
} as const

type How = keyof typeof MADE

/** Opened and saved by LibreOffice as workbooks, or by way of its own format. */
const WAYS = {
  'saved as .xlsx': (files: readonly Uint8Array[]) => allConverted(files, 'xlsx', 'xlsx'),
  'saved as .ods and from there as .xlsx': async (files: readonly Uint8Array[]) =>
    allConverted(await allConverted(files, 'xlsx', 'ods'), 'ods', 'xlsx'),
} as const

type Way = keyof typeof WAYS

const keysOf = <Key extends string>(record: Readonly<Record<Key, unknown>>) => Object.keys(record) as Key[]

const FILES = WORKBOOKS.flatMap((name) => keysOf(MADE).map((how) => ({ name, how })))
const CASES = FILES.flatMap((file) => keysOf(WAYS).map((way) => ({ ...file, way })))

/** A file, and the fills that LibreOffice shows on its first sheet. */
interface Shown {
  readonly bytes: Uint8Array
  readonly fills: readonly (readonly (string | null)[])[]
}

/** What every cell that is not empty holds, by its place. Fractions are compared to 12 digits: files hold no more than 15. */
function held({ values }: Matrix): Record<string, unknown> {
  const entries = values.flatMap((row, i) =>
    row.flatMap((value, j) =>
      value === null || value === ''
        ? []
        : [[`${i},${j}`, typeof value === 'number' ? Number(value.toPrecision(12)) : value]],
    ),
  )
  return Object.fromEntries(entries) as Record<string, unknown>
}

const reviewsOf = (matrices: readonly Matrix[]) =>
  matrices.flatMap((matrix) => review(matrix)).map(reviewJson)

/** The Mastery sheet's texts, row by row, as far as the given number of rows. */
async function masteryTexts(bytes: Uint8Array, rows?: number): Promise<string[]> {
  const mastery = (await matricesOf(bytes)).find(({ name }) => name === 'Mastery')
  return (mastery?.values ?? []).slice(0, rows).map((row) =>
    row
      .map((value) => String(value ?? ''))
      .join('\t')
      .trimEnd(),
  )
}

describe.skipIf(LIBREOFFICE === null)('LibreOffice', () => {
  const before = new Map<string, Shown>()
  const after = new Map<string, Shown>()
  const known = (map: ReadonlyMap<string, Shown>, ...key: readonly string[]): Shown => {
    const shown = map.get(key.join(' '))
    if (!shown) throw new Error(`There is no ${key.join(' ')}.`)
    return shown
  }
  const madeAs = (name: WorkbookName, how: How) => known(before, name, how)
  const savedAs = (name: WorkbookName, how: How, way: Way) => known(after, name, how, way)
  /** Cells compared before and after LibreOffice; printed at the end, for DEVELOPERS.md. */
  const compared = { cells: 0, colours: 0 }

  beforeAll(async () => {
    const made: Uint8Array[] = []
    for (const { name, how } of FILES) made.push(await MADE[how](name))
    const saved = await Promise.all(keysOf(WAYS).map((way) => WAYS[way](made)))
    const fills = await allShownFills([...made, ...saved.flat()])
    FILES.forEach(({ name, how }, index) => {
      const [bytes = new Uint8Array(), shown = []] = [made[index], fills[index]]
      before.set(`${name} ${how}`, { bytes, fills: shown })
      keysOf(WAYS).forEach((way, at) => {
        const place = (at + 1) * FILES.length + index
        after.set(`${name} ${how} ${way}`, {
          bytes: saved[at]?.[index] ?? new Uint8Array(),
          fills: fills[place] ?? [],
        })
      })
    })
  }, 300_000)

  afterAll(() => {
    const [cells, colours] = [compared.cells, compared.colours].map((count) => count.toLocaleString('en-GB'))
    console.log(`Compared through LibreOffice: ${cells} cells, and the colours of ${colours} answers`)
  })

  it.each(CASES)('opens $name, $how and $way, and loses nothing', async ({ name, how, way }) => {
    const { bytes, fills } = madeAs(name, how)
    const saved = savedAs(name, how, way)
    const [old, now] = [await matricesOf(bytes), await matricesOf(saved.bytes)]
    expect(now.map((matrix) => matrix.name)).toEqual(old.map((matrix) => matrix.name))
    for (const [index, matrix] of old.entries()) {
      const wanted = held(matrix)
      compared.cells += Object.keys(wanted).length
      expect(held(now[index] ?? { name: '', values: [] })).toEqual(wanted)
    }
    expect(reviewsOf(now)).toEqual(reviewsOf(old))
    expect(reviewsOf(now).length).toBeGreaterThan(0)
    expect(saved.fills).toEqual(fills)
  })

  it.each(CASES.filter(({ how }) => how !== 'as the school keeps it'))(
    'shows every answer of $name, $how and $way, in the colour of the review',
    async ({ name, how, way }) => {
      const { fills: original } = madeAs(name, 'as the school keeps it')
      const { bytes, fills } = savedAs(name, how, way)
      const wanted = await wantedFills(bytes)
      compared.colours += wanted.length
      const at = (shown: Shown['fills'], { row, column }: { row: number; column: number }) =>
        shown[row]?.[column] ?? null
      expect(wanted.map(({ cell, typed }) => [typed, at(fills, cell)])).toEqual(
        wanted.map(({ cell, typed, fill }) => [typed, fill ?? at(original, cell)]),
      )
      expect(new Set(wanted.map(({ fill }) => fill)).size).toBeGreaterThan(2)
    },
  )

  it.each(WORKBOOKS)('keeps the summary of %s, marked on the bench, that of a marked copy', async (name) => {
    const wanted = await masteryTexts(madeAs(name, 'marked by the command line').bytes)
    expect(wanted.length).toBeGreaterThan(10)
    const { bytes } = savedAs(name, 'marked on the bench', 'saved as .xlsx')
    expect(await masteryTexts(bytes, wanted.length)).toEqual(wanted)
  })
})
