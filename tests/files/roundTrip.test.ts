import { afterAll, describe, expect, it } from 'vitest'
import { readXlsx, saveXlsx, showWorkbook } from '../../src/bench/files'
import { startBench } from '../../src/bench/node'
import { applyPlans } from '../../src/files/apply'
import type { Matrix } from '../../src/marksheet/matrix'
import { planMarking, planMastery } from '../../src/marksheet/plan'
import { reviewJson } from '../../src/marksheet/report'
import { review } from '../../src/marksheet/review'
import { markSheet } from '../../src/office/marking'
import { readSheet } from '../../src/office/read'
import { bytesOf, matricesOf, WORKBOOKS, type WorkbookName } from '../marksheets'
import { converted, LIBREOFFICE, shownFills } from './libreoffice'

/** Cells compared before and after LibreOffice; printed at the end, for DEVELOPERS.md. */
let cells = 0

afterAll(() => {
  if (cells > 0) console.log(`${cells.toLocaleString('en-GB')} cells compared through LibreOffice`)
})

/** A workbook marked as the command line marks it. */
async function markedFile(name: WorkbookName): Promise<Uint8Array> {
  const sheets = (await matricesOf(bytesOf(name))).map((matrix) => ({ matrix, reviews: review(matrix) }))
  const marked = sheets.filter(({ reviews }) => reviews.length > 0)
  return applyPlans(
    bytesOf(name),
    marked.map(({ matrix, reviews }) => planMarking(matrix, reviews)),
    [planMastery(marked.flatMap(({ reviews }) => reviews))],
  )
}

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

const MADE: Readonly<Record<string, (name: WorkbookName) => Promise<Uint8Array>>> = {
  'as the school keeps it': (name) => Promise.resolve(bytesOf(name)),
  'marked by the command line': markedFile,
  'marked on the bench': markedOnBench,
}

/** The same bytes, and what LibreOffice shows of them, for every case that begins with them. */
const made = new Map<string, Promise<{ readonly bytes: Uint8Array; readonly fills: (string | null)[][] }>>()

function madeOnce(name: WorkbookName, how: string) {
  const key = `${name} ${how}`
  const known = made.get(key)
  if (known) return known
  const making = (async () => {
    const bytes = (await MADE[how]?.(name)) ?? new Uint8Array()
    return { bytes, fills: await shownFills(bytes) }
  })()
  made.set(key, making)
  return making
}

/** Opened and saved by LibreOffice as a workbook, or by way of its own format. */
const WAYS: Readonly<Record<string, (bytes: Uint8Array) => Promise<Uint8Array>>> = {
  'saved as .xlsx': (bytes) => converted(bytes, 'xlsx', 'xlsx'),
  'saved as .ods and from there as .xlsx': async (bytes) =>
    converted(await converted(bytes, 'xlsx', 'ods'), 'ods', 'xlsx'),
}

const CASES = WORKBOOKS.flatMap((name) =>
  Object.keys(MADE).flatMap((how) => Object.keys(WAYS).map((way) => ({ name, how, way }))),
)

/** What every cell that is not empty holds, by its place. Fractions are kept to the 15 digits that files hold. */
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

describe.skipIf(LIBREOFFICE === null)('LibreOffice', () => {
  it.each(CASES)('opens $name, $how and $way, and loses nothing', async ({ name, how, way }) => {
    const { bytes, fills } = await madeOnce(name, how)
    const after = (await WAYS[way]?.(bytes)) ?? new Uint8Array()
    const [before, now] = [await matricesOf(bytes), await matricesOf(after)]
    expect(now.map((matrix) => matrix.name)).toEqual(before.map((matrix) => matrix.name))
    for (const [index, matrix] of before.entries()) {
      const wanted = held(matrix)
      cells += Object.keys(wanted).length
      expect(held(now[index] ?? { name: '', values: [] })).toEqual(wanted)
    }
    expect(reviewsOf(now)).toEqual(reviewsOf(before))
    expect(reviewsOf(now).length).toBeGreaterThan(0)
    expect(await shownFills(after)).toEqual(fills)
  })

  it.each(WORKBOOKS)(
    'shows %s, marked on the bench, in the colours and with the summary of a marked copy',
    async (name) => {
      const [file, bench] = [
        await madeOnce(name, 'marked by the command line'),
        await madeOnce(name, 'marked on the bench'),
      ]
      const answers = (await matricesOf(file.bytes))
        .slice(0, 1)
        .flatMap((matrix) => review(matrix))
        .flatMap(({ pupils }) => pupils.flatMap((pupil) => pupil.answers))
      const on = ({ fills }: typeof file) => answers.map(({ row, column }) => fills[row]?.[column] ?? null)
      expect(on(bench)).toEqual(on(file))
      expect(new Set(on(file)).size).toBeGreaterThan(2)
      const saved = await converted(bench.bytes, 'xlsx', 'xlsx')
      const masteryOf = async (bytes: Uint8Array) =>
        (await matricesOf(bytes)).find((matrix) => matrix.name === 'Mastery')
      const [wanted, shown] = [await masteryOf(file.bytes), await masteryOf(saved)]
      const texts = (matrix: Matrix | undefined, rows: number) =>
        (matrix?.values ?? []).slice(0, rows).map((row) =>
          row
            .map((value) => String(value ?? ''))
            .join('\t')
            .trimEnd(),
        )
      const rows = wanted?.values.length ?? 0
      expect(rows).toBeGreaterThan(10)
      expect(texts(shown, rows)).toEqual(texts(wanted, rows))
    },
  )
})

/** What a web form exports: the time of each response, an email address, a name, and a column for each question with its text. */
const FORM = `Timestamp,Email Address,What is your name?,What is 532 − 217?,What is 603 − 245?,"What is 4,003 − 1,567?",What is 940 − 268?,Anything to tell us?
2026/11/06 9:12:05 am GMT,a.patel@school.example,Amira Patel,315,358,"2,436",672,
2026/11/06 9:12:44 am GMT,b.lowe@school.example,Bertie Lowe,325,442,3564,728,it was hard
2026/11/06 9:13:01 am GMT,c.hughes@school.example,Cerys Hughes,315 ,358.,?,,"I like 532 − 217, really"
2026/11/06 9:20:30 am GMT,d.osei@school.example,Daniel Osei,=315,3-4,2436,672,
2026/11/06 9:31:12 am GMT,b.lowe@school.example,Bertie Lowe,315,358,2436,672,second go
`

describe.skipIf(LIBREOFFICE === null)('the export of a web form, made a workbook by LibreOffice', () => {
  it('is found with the names and the questions in its headings, each response marked, the second one of a pupil too', async () => {
    const bytes = await converted(new TextEncoder().encode(FORM), 'csv', 'xlsx')
    const [matrix] = await matricesOf(bytes)
    const [found, ...others] = review(matrix ?? { name: '', values: [] })
    expect(others).toEqual([])
    expect(found?.questions.map(({ key }) => key.value)).toEqual(['315', '358', '2436', '672'])
    expect(found?.pupils.map(({ name, outcomes }) => [name, outcomes])).toEqual([
      ['Amira Patel', ['correct', 'correct', 'correct', 'correct']],
      ['Bertie Lowe', ['incorrect', 'incorrect', 'incorrect', 'incorrect']],
      ['Cerys Hughes', ['correct', 'correct', 'unreadable', 'blank']],
      ['Daniel Osei', ['correct', 'unreadable', 'correct', 'correct']],
      ['Bertie Lowe', ['correct', 'correct', 'correct', 'correct']],
    ])
    const again = await converted(bytes, 'xlsx', 'xlsx')
    expect(reviewsOf(await matricesOf(again))).toEqual(reviewsOf(await matricesOf(bytes)))
  })
})
