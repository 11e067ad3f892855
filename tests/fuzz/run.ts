import { readMessages } from './readMessages'
import { shareRead, tryCases, type KindName } from './fuzzing'

/** Longer than this for one text or sheet is a hang, in milliseconds. */
const HANG = 1_000
/** How many failures of a kind are printed. */
const SHOWN = 5

const CASES: Readonly<Record<KindName, number>> = {
  'texts read as questions': 500_000,
  'typed answers marked': 500_000,
  'whole sheets': 3_000,
  'several classes on a sheet, no answer another child’s': 20_000,
  'marksheets of which no cell may be lost': 3_000,
  'notes, each in a free cell and where it was': 3_000,
  'messages, no answer that was not given': 20_000,
}

/** `npm run fuzz [SEED]`: a million texts and thousands of sheets; exit 1 where one throws, hangs or loses a cell. */
const [seed = '1'] = process.argv.slice(2)
let isClean = true
for (const [kind, cases] of Object.entries(CASES) as [KindName, number][]) {
  const start = performance.now()
  const { failures, slowest } = tryCases(kind, cases, seed)
  const seconds = (performance.now() - start) / 1000
  const hangs = slowest.milliseconds > HANG
  isClean &&= failures.length === 0 && !hangs
  console.log(
    `${kind}, seed ${seed}: ${(cases - failures.length).toLocaleString('en-GB')} of ${cases.toLocaleString('en-GB')} hold ` +
      `(${seconds.toFixed(0)} s, the slowest ${slowest.milliseconds.toFixed(0)} ms)`,
  )
  for (const { input, why } of failures.slice(0, SHOWN)) console.log(`  ${why}\n    ${inShort(input)}`)
  if (hangs) console.log(`  One case took too long:\n    ${inShort(slowest.input)}`)
}
const share = shareRead(10_000, seed)
console.log(
  `several classes on a sheet: ${(100 * share).toFixed(1)}% of the answers read, the others left out`,
)
const messages = readMessages(20_000, seed)
console.log(
  `messages: ${messages.found.toLocaleString('en-GB')} of ${messages.clear.toLocaleString('en-GB')} clear answers found, ${messages.wrong.length} wrong`,
)
process.exitCode = isClean ? 0 : 1

function inShort(input: unknown): string {
  const text = JSON.stringify(input)
  return text.length > 1200 ? `${text.slice(0, 600)} … ${text.slice(-100)} (${text.length} characters)` : text
}
