import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { FEEDBACK, HOME_CHOICES, PAPERS, WHENS, type HomeChoices } from '../home/choices'
import { homeFileName, homeSetsOf } from '../home/fromMarksheet'
import { homeWorkbook, isHomeAsMade } from '../home/workbook'
import { findMarksheets } from '../marksheet/layout/find'
import { bytesOf, fail, failNotSaved, run, say, sheetsOf } from './commandLine'
import { NotSaved, refusePlace, saveWhole, type Kind } from './save'
import { visible, visibleJson } from './visible'

const USAGE =
  'Use: npm run --silent home -- MARKSHEET.xlsx --out FOLDER [--feedback none|look-again|hints] ' +
  '[--when each|all] [--paper lines|squares] [--json] [--force]'
const HOME: Kind = { word: 'home workbook', isAsMade: isHomeAsMade }

interface Arguments {
  readonly file: string
  readonly out: string
  readonly choices: HomeChoices
  readonly json: boolean
  readonly force: boolean
}

/**
 * The command line: writes a home workbook for each pupil of a workbook's first marksheet into a folder, all of them or none, and prints
 * which is whose. Exit 0, or 2 where the file cannot be read or the folder not written to.
 */
async function main(): Promise<void> {
  const { file, out, choices, json, force } = readArguments()
  const marksheets = (await sheetsOf(await bytesOf(file), file)).flatMap((matrix) =>
    findMarksheets(matrix).map((marksheet) => ({ sheet: matrix.name, marksheet })),
  )
  const [first] = marksheets
  if (first === undefined) return fail(`No marksheet was found in ${file}: a class list with questions.`)
  if (marksheets.length > 1)
    say(`Made for the first of ${marksheets.length} marksheets only, on the sheet ${first.sheet}.`)
  const made = homeSetsOf(first.marksheet)
    .filter(({ questions }) => questions.length > 0)
    .map((home) => ({ ...home, path: join(out, homeFileName(home.child)), ...homeWorkbook(home, choices) }))
  await mkdir(out, { recursive: true }).catch(() =>
    failNotSaved(new NotSaved(`Cannot write into ${out}: it is no folder, or may not be written to.`)),
  )
  for (const { path } of made) await refusePlace(file, path, force, HOME).catch(failNotSaved)
  for (const { path, bytes } of made) await saveWhole(path, bytes).catch(failNotSaved)
  const files = made.map(({ path, pupil, sheet, items }) => ({ file: path, pupil: pupil.name, sheet, items }))
  process.stdout.write(
    json
      ? `${visibleJson(JSON.stringify({ files }))}\n`
      : files.map((each) => `${visible(`${each.pupil}: ${each.file}`)}\n`).join(''),
  )
}

function readArguments(): Arguments {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        feedback: { type: 'string', default: HOME_CHOICES.feedback },
        when: { type: 'string', default: HOME_CHOICES.when },
        paper: { type: 'string', default: HOME_CHOICES.paper },
        json: { type: 'boolean', default: false },
        force: { type: 'boolean', default: false },
      },
    })
    const [file, ...more] = positionals
    const feedback = FEEDBACK.find((each) => each === values.feedback)
    const when = WHENS.find((each) => each === values.when)
    const paper = PAPERS.find((each) => each === values.paper)
    if (file === undefined || more.length > 0 || values.out === undefined) return fail(USAGE)
    if (!feedback || !when || !paper) return fail(USAGE)
    return {
      file,
      out: values.out,
      choices: { feedback, when, paper },
      json: values.json,
      force: values.force,
    }
  } catch {
    return fail(USAGE)
  }
}

await run(main, 60)
