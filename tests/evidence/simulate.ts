import { heldTables } from './held'
import { outsideTable } from './outside'
import { pathToFileURL } from 'node:url'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { prepareDiagnosis } from '../../src/answers/diagnosis'
import { answerWith, areCompatible, FAULTS, type Fault, type FaultId } from '../../src/answers/faults'
import type { Operation, Question } from '../../src/arithmetic/question'
import { generatorFrom } from '../../src/items/seed'
import { chooseTellingApart } from '../../src/items/telling-apart'
import { answersOf, oneOf, sheetOf } from './pupils'

const OPERATIONS: readonly Operation[] = ['subtract', 'add']
const SETS = ['random', 'telling-apart'] as const
type SetKind = (typeof SETS)[number]
const COUNTS = [6, 8, 12, 20]
const SLIPS = [0, 0.05, 0.1, 0.2]
const SHEETS = 60
const CANDIDATES = 150
/** A fault counts as showing where it gives a wrong answer on so many questions of the sheet. */
const SHOWS = 3

interface Tally {
  pupils: number
  hits: number
}
const percent = ({ hits, pupils }: Tally, digits = 1) =>
  pupils === 0 ? '–' : `${((100 * hits) / pupils).toFixed(digits)}%`

/** The sheets of one setting, the same for every slip rate. */
function sheets(operation: Operation, kind: SetKind, count: number): Question[][] {
  const generator = generatorFrom(`${operation} ${kind} ${count}`)
  return Array.from({ length: SHEETS }, () => {
    if (kind === 'random') return sheetOf(generator, operation, count)
    const candidates = sheetOf(generator, operation, CANDIDATES)
    return chooseTellingApart(candidates, count).chosen.flatMap((index) => candidates[index] ?? [])
  })
}

function showsOn(
  questions: readonly Question[],
  faults: readonly Fault[],
  others: readonly Fault[] = [],
): number {
  return questions.filter(
    ({ calculation }) => answerWith(faults, calculation) !== answerWith(others, calculation),
  ).length
}

interface Outcome {
  readonly all: Tally
  readonly showing: Tally
  readonly pairs: Tally
  readonly secure: Tally
  readonly confusion: Map<FaultId, Map<string, number>>
}

function simulate(operation: Operation, kind: SetKind, count: number, slip: number): Outcome {
  const generator = generatorFrom(`pupils ${operation} ${kind} ${count} ${slip}`)
  const catalogue = FAULTS.filter((fault) => fault.operation === operation)
  const outcome: Outcome = {
    all: { pupils: 0, hits: 0 },
    showing: { pupils: 0, hits: 0 },
    pairs: { pupils: 0, hits: 0 },
    secure: { pupils: 0, hits: 0 },
    confusion: new Map(),
  }
  const count1 = (tally: Tally, hit: boolean) => {
    tally.pupils += 1
    tally.hits += Number(hit)
  }
  for (const questions of sheets(operation, kind, count)) {
    const { diagnose } = prepareDiagnosis(questions)
    const named = (faults: readonly Fault[]) => diagnose(answersOf(generator, questions, faults, slip)).named
    for (const fault of catalogue) {
      const visible = showsOn(questions, [fault])
      if (visible === 0) continue
      for (let pupil = 0; pupil < 3; pupil += 1) {
        const [first] = named([fault])
        const hit = first !== undefined && [first.fault, ...first.alsoFits].includes(fault.id)
        count1(outcome.all, hit)
        if (visible < SHOWS) continue
        count1(outcome.showing, hit)
        const row = outcome.confusion.get(fault.id) ?? new Map<string, number>()
        const result = hit ? fault.id : (first?.fault ?? 'none named')
        row.set(result, (row.get(result) ?? 0) + 1)
        outcome.confusion.set(fault.id, row)
      }
    }
    for (let pupil = 0; pupil < 12; pupil += 1) {
      const pair = randomPair(generator, catalogue)
      const [one, other] = pair
      if (showsOn(questions, pair, [one]) < SHOWS || showsOn(questions, pair, [other]) < SHOWS) continue
      const found = named(pair).flatMap(({ fault, alsoFits }) => [fault, ...alsoFits])
      count1(
        outcome.pairs,
        pair.every(({ id }) => found.includes(id)),
      )
    }
    for (let pupil = 0; pupil < 100; pupil += 1) count1(outcome.secure, named([]).length > 0)
  }
  return outcome
}

function randomPair(generator: RandomGenerator, catalogue: readonly Fault[]): [Fault, Fault] {
  for (;;) {
    const pair: [Fault, Fault] = [oneOf(generator, catalogue), oneOf(generator, catalogue)]
    if (pair[0] !== pair[1] && areCompatible(...pair)) return pair
  }
}

/** The tables: recovery and false naming for every setting, then the confusion of subtraction faults at 12 questions. */
function tables(): string[] {
  const lines = [
    'operation | set | questions | slips | fault named first, of all shown | of those shown on 3 or more | both of a pair named | secure pupils named a fault',
  ]
  const confusion: string[] = []
  for (const operation of OPERATIONS)
    for (const kind of SETS)
      for (const count of COUNTS)
        for (const slip of SLIPS) {
          const { all, showing, pairs, secure, confusion: found } = simulate(operation, kind, count, slip)
          lines.push(
            [
              operation,
              kind,
              count,
              `${slip * 100}%`,
              percent(all),
              percent(showing),
              percent(pairs),
              percent(secure, 2),
            ].join(' | '),
          )
          if (kind === 'random' && count === 12 && slip === 0.05)
            for (const [id, row] of found)
              confusion.push(
                `${operation} ${id}: ${[...row].map(([result, times]) => `${result} ${times}`).join(', ')}`,
              )
        }
  return [
    ...lines,
    '',
    'Confusion, random sets of 12 questions, 5% slips, fault shown on 3 or more:',
    ...confusion,
  ]
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  console.log(tables().join('\n'))
  console.log(['', ...heldTables(), '', ...outsideTable()].join('\n'))
}
