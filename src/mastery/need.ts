import type { FaultEvidence } from '../answers/diagnosis'
import type { TypingTrouble } from '../answers/diagnosis/typing'
import { FAULTS, type FaultId } from '../answers/faults'
import { TEACHING_ORDER, type GroupNeed } from './support'
import { familyOf, FAMILIES } from '../arithmetic/families'
import type { Count, Judgement, Need, Standings, TypeStanding } from './standing'

/** What the need is found from besides the standings: all answers of the latest occasion, and what they look like together. */
export interface Answers extends Count {
  readonly named: readonly FaultEvidence[]
  readonly typing: TypingTrouble | null
}

/** The fewest tried for `no pattern`. */
const FEWEST_WITHOUT_PATTERN = 4

/** Joins standings and answers into the one verdict on a pupil. */
export function judge(standings: Standings, answers: Answers): Judgement {
  const need = needOf(standings, answers)
  return { ...standings, need, needsSupport: isFlagged(need) }
}

/** Whether a need is flagged: typing is only looked at, slips are no need. */
export function isFlagged({ kind }: Need): boolean {
  return kind === 'fault' || kind === 'family' || kind === 'no pattern'
}

/** What the pupil needs, the first that applies, with its sentence of evidence. */
export function needOf(standings: Standings, answers: Answers): Need {
  const { named, typing, right, tried } = answers
  const wrong = tried - right
  const nothing = { fault: null, family: null, type: null }
  if (typing !== null) return { ...nothing, kind: 'typing', sentence: typingInWords(typing) }
  const [first] = named
  if (first !== undefined)
    return { ...nothing, kind: 'fault', fault: first.fault, sentence: faultEvidence(named, wrong) }
  const carried = familyNeed(standings)
  if (carried !== null) return carried
  const count = `${wrong} of ${tried} wrong`
  if (tried >= FEWEST_WITHOUT_PATTERN && 2 * wrong >= tried)
    return { ...nothing, kind: 'no pattern', sentence: `${count}, without a pattern` }
  if (wrong > 0) return { ...nothing, kind: 'slips', sentence: count }
  return { ...nothing, kind: 'none', sentence: tried === 0 ? '' : `${right} of ${tried} right` }
}

/** The first family in teaching order that needs support, by its sum or by one of its types, and the type that carries it. */
function familyNeed({ byType, byFamily }: Standings): Need | null {
  if (![...byType, ...byFamily].some(({ status }) => status === 'needs support')) return null
  for (const family of FAMILIES) {
    const types = TEACHING_ORDER.flatMap((type) =>
      familyOf(type) === family ? byType.filter((each) => each.type === type && each.tried > 0) : [],
    )
    const standing = byFamily.find((each) => each.family === family)
    const needing = types.find(({ status }) => status === 'needs support')
    const isFamily = standing?.status === 'needs support'
    const carrier = needing ?? (isFamily ? mostWrong(types) : undefined)
    if (carrier === undefined) continue
    const shown = isFamily ? { what: family, ...standing } : { what: carrier.type, ...carrier }
    const sentence = `${shown.what}: ${shown.right} of ${shown.tried}`
    return { kind: 'family', fault: null, family, type: carrier.type, sentence }
  }
  return null
}

function mostWrong(types: readonly TypeStanding[]): TypeStanding | undefined {
  return types.reduce<TypeStanding | undefined>(
    (most, each) => (most === undefined || each.tried - each.right > most.tried - most.right ? each : most),
    undefined,
  )
}

const NOW_AND_THEN = 'now and then '

function faultEvidence(named: readonly FaultEvidence[], wrong: number): string {
  const explained = new Set(named.flatMap(({ explains }) => explains)).size
  const what = named
    .map(({ fault, held }) => `${held === 'always' ? '' : NOW_AND_THEN}${faultInWords(fault)}`)
    .join('; ')
  return `${what}: ${explained} of ${wrong} wrong ${wrong === 1 ? 'answer' : 'answers'}`
}

function typingInWords(typing: TypingTrouble): string {
  const of = `${typing.count} of ${typing.tried} answers`
  if (typing.kind === 'out by') return `${of} are out by ${typing.amount.replace('-', '')}`
  const cells = Math.abs(typing.by)
  return `${of} stand ${cells} ${cells === 1 ? 'cell' : 'cells'} too ${typing.by > 0 ? 'late' : 'early'}`
}

/** What a pupil with the fault does, to stand inside a sentence: "adds instead of subtracting". */
export function faultInWords(id: FaultId): string {
  const sentence = FAULTS.find((fault) => fault.id === id)?.sentence ?? ''
  return `${sentence.charAt(0).toLowerCase()}${sentence.slice(1).replace(/\.$/, '')}`
}

/** What a group has in common, as a title. */
export function groupTitle({ kind, fault, type }: GroupNeed): string {
  if (fault !== null) return faultInWords(fault)
  return kind === 'no pattern' || type === null ? 'no pattern yet: look at the working' : type
}

const COUNT = String.raw`\d+ of \d+`
const EVIDENCE = new RegExp(`^(.*): ${COUNT}(?: wrong answers?)?$`)
const NO_PATTERN = new RegExp(`^${COUNT} wrong, without a pattern$`)
const SUBJECTS: ReadonlySet<string> = new Set([
  ...TEACHING_ORDER,
  ...FAMILIES,
  ...FAULTS.map(({ id }) => faultInWords(id)),
])

/** Whether a text is the sentence of a flagged need, as `needOf` words it. */
export function isFlaggedSentence(text: string): boolean {
  const what = EVIDENCE.exec(text)?.[1]
  return (
    NO_PATTERN.test(text) ||
    (what !== undefined && what.split('; ').every((part) => SUBJECTS.has(part.replace(NOW_AND_THEN, ''))))
  )
}
