import { answerKey, type AnswerKey } from '../../src/answers/typed'
import { generatorFrom } from '../../src/items/seed'
import { Chance } from './chance'
import { knownClasses, readClasses } from './classes'
import { lostCells, questionProblems, sheetProblems, typedProblems } from './holds'
import { knownMessage } from './messages'
import { keptSheet, noteProblems } from './notes'
import { readKnown } from './readMessages'
import { knownSheet, randomSheet } from './sheets'
import { questionText, typedValue } from './texts'
import { asked } from '../support/asked'

/** A case that does not hold: what it was made of, and why. */
export interface Failure {
  readonly input: unknown
  readonly why: string
}

/** What was tried: so many cases, the failures, and the longest that one case took, in milliseconds. */
export interface Tried {
  readonly cases: number
  readonly failures: readonly Failure[]
  readonly slowest: { readonly milliseconds: number; readonly input: unknown }
}

const KEYS: readonly AnswerKey[] = [
  '932 − 457',
  '8.6 − 2.35',
  '£8.60 − £2.00',
  '86p + 45p',
  '5.2 kg − 3.1 kg',
  '46 − 46',
  '1 − 0',
].map((text) => answerKey(asked(text)))

/** The kinds of cases, each with the problems of one case that is made by chance. */
export const KINDS = {
  'texts read as questions': (chance: Chance) => {
    const input = questionText(chance)
    return { input, problems: () => questionProblems(input) }
  },
  'typed answers marked': (chance: Chance) => {
    const [value, key] = [typedValue(chance), chance.of(KEYS)]
    return { input: [value, key.value, key.unit], problems: () => typedProblems(value, key) }
  },
  'whole sheets': (chance: Chance) => {
    const matrix = randomSheet(chance)
    return { input: matrix, problems: () => sheetProblems(matrix) }
  },
  'several classes on a sheet, no answer another child’s': (chance: Chance) => {
    const sheet = knownClasses(chance)
    return { input: { how: sheet.how, values: sheet.values }, problems: () => readClasses(sheet).wrong }
  },
  'marksheets of which no cell may be lost': (chance: Chance) => {
    const { matrix, typed } = knownSheet(chance)
    return {
      input: matrix,
      problems: () => [
        ...sheetProblems(matrix),
        ...lostCells(matrix, typed).map((place) => `${place} is lost.`),
      ],
    }
  },
  'notes, each in a free cell and where it was': (chance: Chance) => {
    const matrix = keptSheet(chance)
    return { input: matrix, problems: () => noteProblems(matrix) }
  },
  'messages, no answer that was not given': (chance: Chance) => {
    const message = knownMessage(chance)
    return { input: message.text, problems: () => readKnown(message).wrong }
  },
} as const

export type KindName = keyof typeof KINDS

/** Tries so many cases of a kind; the same seed gives the same cases. */
export function tryCases(kind: KindName, cases: number, seed: string | number): Tried {
  const chance = new Chance(generatorFrom(`${seed} ${kind}`))
  const failures: Failure[] = []
  let slowest: Tried['slowest'] = { milliseconds: 0, input: null }
  for (let index = 0; index < cases; index++) {
    const { input, problems } = KINDS[kind](chance)
    const start = performance.now()
    failures.push(...whyNot(problems).map((why) => ({ input, why })))
    const milliseconds = performance.now() - start
    if (milliseconds > slowest.milliseconds) slowest = { milliseconds, input }
  }
  return { cases, failures, slowest }
}

/** The share of all answers on so many sheets with several classes that are read as their own child's. */
export function shareRead(cases: number, seed: string | number): number {
  const chance = new Chance(generatorFrom(`${seed} share`))
  let [right, all] = [0, 0]
  for (let index = 0; index < cases; index++) {
    const sheet = knownClasses(chance)
    right += readClasses(sheet).right
    all += sheet.owners.size
  }
  return right / all
}

function whyNot(problems: () => readonly string[]): readonly string[] {
  try {
    return problems()
  } catch (error) {
    return [`It throws: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`]
  }
}
