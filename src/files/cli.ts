import { readFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { parseArgs } from 'node:util'
import { reviewJson } from '../marksheet/report'
import { review, type Review } from '../marksheet/review'
import { matrixOf, openWorkbook } from './read'
import { reviewTable } from './table'

const USAGE = 'Use: npm run --silent mark -- FILE.xlsx [--json] [--out COPY.xlsx]'

/** The command line: marks every marksheet of a workbook and prints the result. Exit 0, or 2 where the file cannot be read. */
async function main(): Promise<void> {
  const { file, json } = readArguments()
  const bytes = await readFile(file).catch(() =>
    fail(`Cannot read ${file}: there is no such file, or it may not be opened.`),
  )
  const workbook = await openWorkbook(bytes).catch(() =>
    fail(
      `Cannot read ${basename(file)}: it is not an Excel workbook (.xlsx), or it is damaged or protected by a password.`,
    ),
  )
  const reviews = workbook.worksheets.flatMap((sheet): Review[] => review(matrixOf(sheet)))
  process.stdout.write(
    json ? `${JSON.stringify({ sheets: reviews.map(reviewJson) })}\n` : reviewTable(reviews),
  )
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

await main()
