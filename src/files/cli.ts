import { basename } from 'node:path'
import { parseArgs } from 'node:util'
import { planMarking, planMastery } from '../marksheet/marking/plan'
import { leavingOut } from '../marksheet/layout/leftOut'
import { atOnce } from '../marksheet/layout/steps'
import { reviewJson } from '../marksheet/reports/json'
import type { Matrix } from '../marksheet/layout/matrix'
import { review, type Review } from '../marksheet/marking/review'
import { applyPlans, keptBesideCells } from './apply'
import { bytesOf, fail, failNotSaved, run, say, sheetsOf } from './commandLine'
import { refusePlace, saveWhole } from './save'
import { reviewTable } from './table'
import { visible, visibleJson } from './visible'

const USAGE = 'Use: npm run --silent mark -- FILE.xlsx [--json] [--out COPY.xlsx [--force]]'

/** The command line: marks every marksheet of a workbook and prints the result. Exit 0, or 2 where the file cannot be read. */
async function main(): Promise<void> {
  const { file, json, out, force } = readArguments()
  const bytes = await bytesOf(file)
  if (out !== undefined) await refusePlace(file, out, force).catch(failNotSaved)
  const sheets = (await sheetsOf(bytes, file)).map((matrix) => ({ matrix, reviews: review(matrix) }))
  for (const { matrix, reviews } of sheets)
    for (const sentence of atOnce(leavingOut(matrix, reviews))) say(`${matrix.name}: ${sentence}`)
  const reviews = sheets.flatMap((sheet) => sheet.reviews)
  if (out !== undefined) await saveMarkedCopy(bytes, sheets, file, out)
  process.stdout.write(
    json
      ? `${visibleJson(JSON.stringify({ sheets: reviews.map(reviewJson) }))}\n`
      : `${reviewTable(reviews)}${out === undefined ? '' : `\nThe marked copy is ${visible(out)}.\n`}`,
  )
}

async function saveMarkedCopy(
  bytes: Uint8Array,
  sheets: readonly { matrix: Matrix; reviews: Review[] }[],
  file: string,
  out: string,
): Promise<void> {
  const marked = sheets.filter(({ reviews }) => reviews.length > 0)
  const plans = marked.map(({ matrix, reviews }) => planMarking(matrix, reviews))
  for (const sentence of plans.flatMap(({ told }) => told)) say(sentence)
  const tables = marked.length > 0 ? [planMastery(marked.flatMap(({ reviews }) => reviews))] : []
  const kept = await keptBesideCells(bytes)
  if (kept.length > 0) say(`Kept in the copy as they are: ${kept.join(', ')}.`)
  const copy = await applyPlans(bytes, plans, tables).catch((error: unknown) =>
    fail(`Cannot mark ${basename(file)}: ${String(error)}`),
  )
  await saveWhole(out, copy).catch(failNotSaved)
}

function readArguments(): { file: string; json: boolean; out: string | undefined; force: boolean } {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        out: { type: 'string' },
        force: { type: 'boolean', default: false },
      },
    })
    const [file, ...more] = positionals
    if (file === undefined || more.length > 0) return fail(USAGE)
    return { file, json: values.json, out: values.out, force: values.force }
  } catch {
    return fail(USAGE)
  }
}

await run(main, 9)
