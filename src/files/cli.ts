import { readFile, writeFile } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { planMarking, planMastery } from '../marksheet/marking/plan'
import { reviewJson } from '../marksheet/reports/json'
import type { Matrix } from '../marksheet/layout/matrix'
import { review, type Review } from '../marksheet/marking/review'
import { applyPlans, keptBesideCells } from './apply'
import { matrixOf, openWorkbook } from './read'
import { reviewTable } from './table'

const USAGE = 'Use: npm run --silent mark -- FILE.xlsx [--json] [--out COPY.xlsx]'

/** The command line: marks every marksheet of a workbook and prints the result. Exit 0, or 2 where the file cannot be read. */
async function main(): Promise<void> {
  const { file, json, out } = readArguments()
  const bytes = await readFile(file).catch(() =>
    fail(`Cannot read ${file}: there is no such file, or it may not be opened.`),
  )
  const workbook = await openWorkbook(bytes).catch(() =>
    fail(
      `Cannot read ${basename(file)}: it is not an Excel workbook (.xlsx), or it is damaged or protected by a password.`,
    ),
  )
  const sheets = workbook.worksheets.map(matrixOf).map((matrix) => ({ matrix, reviews: review(matrix) }))
  const reviews = sheets.flatMap((sheet) => sheet.reviews)
  if (out !== undefined) await saveMarkedCopy(bytes, sheets, file, out)
  process.stdout.write(
    json
      ? `${JSON.stringify({ sheets: reviews.map(reviewJson) })}\n`
      : `${reviewTable(reviews)}${out === undefined ? '' : `\nThe marked copy is ${out}.\n`}`,
  )
}

async function saveMarkedCopy(
  bytes: Uint8Array,
  sheets: readonly { matrix: Matrix; reviews: Review[] }[],
  file: string,
  out: string,
): Promise<void> {
  if (resolve(out) === resolve(file))
    fail('The marked copy needs a name of its own: the workbook itself is not changed.')
  const marked = sheets.filter(({ reviews }) => reviews.length > 0)
  const plans = marked.map(({ matrix, reviews }) => planMarking(matrix, reviews))
  for (const sentence of plans.flatMap(({ told }) => told)) process.stderr.write(`${sentence}\n`)
  const tables = marked.length > 0 ? [planMastery(marked.flatMap(({ reviews }) => reviews))] : []
  const kept = await keptBesideCells(bytes)
  if (kept.length > 0) process.stderr.write(`Kept in the copy as they are: ${kept.join(', ')}.\n`)
  const copy = await applyPlans(bytes, plans, tables).catch((error: unknown) =>
    fail(`Cannot mark ${basename(file)}: ${String(error)}`),
  )
  await writeFile(out, copy).catch(() => fail(`Cannot write ${out}.`))
}

function readArguments(): { file: string; json: boolean; out: string | undefined } {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { json: { type: 'boolean', default: false }, out: { type: 'string' } },
    })
    const [file, ...more] = positionals
    if (file === undefined || more.length > 0) return fail(USAGE)
    return { file, json: values.json, out: values.out }
  } catch {
    return fail(USAGE)
  }
}

function fail(sentence: string): never {
  process.stderr.write(`${sentence}\n`)
  process.exit(2)
}

// A reader that wants no more, like `head`, closes the pipe: that is no fault.
process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => process.exit(code === 'EPIPE' ? 0 : 2))
await main()
