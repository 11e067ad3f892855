import { readdir, readFile, stat } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { parseArgs } from 'node:util'
import { arrivalsIn, refused, type Arrival } from '../home/collect/arrivals'
import { messageArrival } from '../home/collect/fromMessage'
import { planOf, takenReason, type Left, type Plan } from '../home/collect/plan'
import { namesakes, targetsOn, type Target } from '../home/collect/targets'
import { addressOf } from '../marksheet/layout/matrix'
import { bytesOf, fail, failNotSaved, run, sheetsOf } from './commandLine'
import { fillCells } from './fill'
import { matrixOf } from './matrix'
import { refusePlace, saveWhole } from './save'
import { visible, visibleJson } from './visible'
import { Unreadable } from './xlsx/unreadable'
import { readWorkbook } from './xlsx/workbook'

const USAGE =
  'Use: npm run --silent collect -- MARKSHEET.xlsx (FILES... | --message TEXT.txt --pupil NAME) --out COPY.xlsx [--json] [--force]'

/**
 * The command line: writes the answers of home workbooks that came back, of a form's answers, or of one pupil's message into the blank
 * cells of a copy of the marksheet, and prints what was written and what is left for the teacher. Exit 0, or 2 where the marksheet or the
 * message cannot be read.
 */
async function main(): Promise<void> {
  const { file, files, message, out, json, force } = readArguments()
  const bytes = await bytesOf(file)
  if (out !== undefined) await refusePlace(file, out, force).catch(failNotSaved)
  const targets = targetsOn(await sheetsOf(bytes, file))
  if (targets.length === 0) return fail(`Cannot read ${basename(file)}: it holds no marksheet.`)
  const arrivals = message
    ? [await fromMessage(message.text, message.pupil, targets)]
    : await fromFiles(files, [file, ...(out === undefined ? [] : [out])], targets)
  const plan = planOf(arrivals)
  if (out !== undefined) await saveWhole(out, await fillCells(bytes, plan.writes)).catch(failNotSaved)
  process.stdout.write(json ? `${visibleJson(JSON.stringify(jsonOf(plan)))}\n` : tableOf(plan, out))
}

function jsonOf(plan: Plan) {
  return {
    written: plan.writes.map(({ pupil, question, cell, typed }) => ({
      pupil,
      question,
      cell: addressOf(cell),
      typed,
    })),
    left: leftOf(plan),
  }
}

function leftOf({ left, taken }: Plan): Left[] {
  return [
    ...left,
    ...taken.map((each) => ({ file: each.file, pupil: each.pupil, reason: takenReason(each) })),
  ]
}

function tableOf(plan: Plan, out: string | undefined): string {
  const { writes, present } = plan
  const counts = new Map<string, number>()
  for (const { pupil } of writes) counts.set(pupil, (counts.get(pupil) ?? 0) + 1)
  const lines = [
    ...[...counts].map(([pupil, count]) => `${pupil}: ${counted(count, 'answer')} written`),
    ...(present > 0 ? [`${counted(present, 'answer')} already there`] : []),
    ...leftOf(plan).map(
      ({ file, pupil, reason }) => `Left: ${file}${pupil === '' ? '' : `, ${pupil}`}: ${reason}`,
    ),
    ...(out === undefined ? [] : [`The copy is ${out}.`]),
  ]
  return `${lines.map(visible).join('\n')}\n`
}

const counted = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`

async function fromMessage(file: string, name: string, targets: readonly Target[]): Promise<Arrival> {
  const text = await textOf(file)
  const { sure, likely } = namesakes(name, targets)
  const found = sure.length > 0 ? sure : likely
  const [target] = found
  if (!target) return fail(`There is no pupil called ${name} in the marksheet.`)
  const others = found.filter((each) => each.matrix === target.matrix)
  if (others.length > 1)
    return fail(`${name} may be ${others.map(({ pupil }) => pupil.name).join(' or ')}: give the whole name.`)
  const classmates = targets.filter(({ pupil }) => pupil !== target.pupil).map(({ pupil }) => pupil.name)
  return messageArrival(file, text, target, classmates)
}

async function textOf(file: string): Promise<string> {
  const bytes = await bytesOf(file)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return fail(`Cannot read ${file}: it is not a text in UTF-8.`)
  }
}

/** What files and folders bring, the marksheet and the copy among them aside. */
async function fromFiles(
  named: readonly string[],
  aside: readonly string[],
  targets: readonly Target[],
): Promise<Arrival[]> {
  const own = await Promise.all(aside.map(identityOf))
  const files = (await Promise.all(named.map(filesIn))).flat()
  const arrivals = files.map(async (file) => {
    const identity = await identityOf(file)
    return identity !== null && own.includes(identity) ? [] : fromFile(file, targets)
  })
  return (await Promise.all(arrivals)).flat()
}

async function fromFile(file: string, targets: readonly Target[]): Promise<Arrival[]> {
  try {
    const workbook = await readWorkbook(await readFile(file))
    return arrivalsIn(
      file,
      workbook.map((sheet) => matrixOf(sheet).matrix),
      targets,
    )
  } catch (error) {
    if (error instanceof Unreadable) return [refused(file, `It cannot be read: ${error.message}`)]
    return [refused(file, 'It cannot be read: there is no such file, or it may not be opened.')]
  }
}

/** What tells a file from others, whatever its name; null where it is not there. */
function identityOf(file: string): Promise<string | null> {
  return stat(file).then(
    ({ dev, ino }) => `${dev} ${ino}`,
    () => null,
  )
}

/** A file, or those of a folder and its folders by name; hidden ones and those that a program keeps while a workbook is open are left out. */
async function filesIn(place: string): Promise<string[]> {
  const isFolder = await stat(place).then(
    (entry) => entry.isDirectory(),
    () => false,
  )
  if (!isFolder) return [place]
  const names = (await readdir(place)).filter((name) => !/^(?:\.|~\$)/.test(name)).sort()
  return (await Promise.all(names.map((name) => filesIn(join(place, name))))).flat()
}

interface Arguments {
  readonly file: string
  readonly files: readonly string[]
  readonly message: { readonly text: string; readonly pupil: string } | null
  readonly out: string | undefined
  readonly json: boolean
  readonly force: boolean
}

function readArguments(): Arguments {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        message: { type: 'string' },
        pupil: { type: 'string' },
        json: { type: 'boolean', default: false },
        force: { type: 'boolean', default: false },
      },
    })
    const [file, ...files] = positionals
    const { message: text, pupil, out, json, force } = values
    const isMessage = text !== undefined && pupil !== undefined && files.length === 0
    const isFiles = text === undefined && pupil === undefined && files.length > 0
    if (file === undefined || !(isMessage || isFiles)) return fail(USAGE)
    return { file, files, message: isMessage ? { text, pupil } : null, out, json, force }
  } catch {
    return fail(USAGE)
  }
}

await run(main, 60)
