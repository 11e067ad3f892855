import { pathToFileURL } from 'node:url'
import { prepareDiagnosis } from '../../src/answers/diagnosis'
import { FAULTS, type Fault } from '../../src/answers/faults'
import type { Operation } from '../../src/arithmetic/question'
import { generatorFrom } from '../../src/items/seed'
import { answersOf, chance, oneOf, sheetOf } from '../evidence/pupils'

const PUPILS = 10_000
const QUESTIONS = 40
/** Seconds on two cores for everything, the getting ready included. */
const GOAL = 3

/** Times the diagnosis of many pupils over all single faults and pairs, for subtraction alone and for a mixed sheet. */
export async function diagnosis(): Promise<{ name: string; lines: string[]; met: boolean }> {
  const sheets: readonly (readonly [string, readonly Operation[]])[] = [
    ['subtraction', ['subtract']],
    ['half subtraction, half addition', ['subtract', 'add']],
  ]
  const timed = sheets.map(([what, operations]) => ({ what, seconds: secondsFor(operations) }))
  return Promise.resolve({
    name: `Diagnosis: ${PUPILS} pupils × ${QUESTIONS} answers in at most ${GOAL} s`,
    lines: timed.map(({ what, seconds }) => `${what}: ${seconds.toFixed(2)} s`),
    met: timed.every(({ seconds }) => seconds <= GOAL),
  })
}

function secondsFor(operations: readonly Operation[]): number {
  const generator = generatorFrom(`speed ${operations.join()}`)
  const questions = operations.flatMap((operation) =>
    sheetOf(generator, operation, QUESTIONS / operations.length),
  )
  const faults = FAULTS.filter(({ operation }) => operations.includes(operation))
  const typed = Array.from({ length: PUPILS }, () => {
    const has: Fault[] = chance(generator) < 0.4 ? [oneOf(generator, faults)] : []
    return answersOf(generator, questions, has, oneOf(generator, [0, 0.05, 0.2]))
  })
  const start = performance.now()
  const { diagnose } = prepareDiagnosis(questions)
  const verdicts = new Set(typed.map((answers) => diagnose(answers).verdict))
  if (verdicts.size < 2) throw new Error('The pupils should not all come out alike.')
  return (performance.now() - start) / 1000
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) console.log(await diagnosis())
