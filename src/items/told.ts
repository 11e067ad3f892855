import { FAULTS } from '../answers/faults'
import type { Operation } from '../arithmetic/question'
import type { TellingApartSet, Told, Way } from './telling-apart'

/** What a set can and cannot tell apart, in sentences for the teacher. `shown`: the faults that it shows for sure. */
export interface ToldInWords {
  readonly summary: string
  readonly shown: readonly string[]
  readonly limits: readonly string[]
}

/** On how many questions two ways of working must differ, so that one slip cannot hide it. */
const SURE = 2

/** Says what a telling-apart set with questions of these operations tells: which faults it shows, and where it cannot tell. */
export function toldInWords({ pairs }: TellingApartSet, operations: readonly Operation[]): ToldInWords {
  const sentenceOf = (way: Way) => sentencesOf(way, operations)
  const fromRight = pairs.filter(({ ways }) => ways[0] === 'right')
  const sure = new Set(fromRight.filter(isSure).map(({ ways }) => ways[1]))
  const among = pairs.filter(({ ways }) => ways.every((way) => sure.has(way)))
  const open = [...fromRight, ...among].filter((pair) => !isSure(pair))
  const between = among.every(isSure) ? 'and any two of them from each other, ' : ''
  return {
    summary:
      `Tells ${sure.size} of ${fromRight.length} known faults from the right way of working, ` +
      `${between}each on two questions or more.`,
    shown: [...sure].map(sentenceOf),
    limits: open.map((pair) => limitOf(pair, sentenceOf)),
  }
}

const isSure = ({ questions }: Told) => questions >= SURE

function sentencesOf(way: Way, operations: readonly Operation[]): string {
  const named = FAULTS.filter(({ id, operation }) => id === way && operations.includes(operation))
  return [...new Set(named.map(({ sentence }) => sentence))].join(' Or: ')
}

function limitOf({ ways: [one, other], questions }: Told, sentenceOf: (way: Way) => string): string {
  if (one === 'right')
    return `${questions === 0 ? 'Does not show' : 'Shows on one question only'}: ${sentenceOf(other)}`
  const pair = `“${sentenceOf(one)}” from “${sentenceOf(other)}”`
  return questions === 0 ? `Cannot tell ${pair}` : `Only one question tells ${pair}`
}
