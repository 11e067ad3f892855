import { FAULTS, type FaultId } from '../faults'
import type { FaultEvidence } from './naming'

/** What the diagnosis comes to, in a word or two. */
export type Verdict =
  'fault named' | 'right method' | 'slips' | 'more questions would tell' | 'no pattern' | 'nothing to go on'

/** The sentence for the teacher: what the pupil does and how many of the wrong answers it explains, or why nothing is named. */
export function sentenceFor(
  verdict: Verdict,
  named: readonly FaultEvidence[],
  open: readonly FaultId[],
  wrong: number,
): string {
  switch (verdict) {
    case 'fault named':
      return named.map((evidence) => namedSentence(evidence, wrong)).join(' ')
    case 'right method':
      return 'Every answer given is right.'
    case 'slips':
      return `The method is right; ${wrong === 1 ? 'the wrong answer looks' : `the ${wrong} wrong answers look`} like slips.`
    case 'more questions would tell':
      return `More questions would tell. Perhaps: ${open.map(quoted).join(' or ')}.`
    case 'no pattern':
      return 'No pattern in the wrong answers: look at the working.'
    case 'nothing to go on':
      return 'No answer can be read.'
  }
}

function namedSentence(evidence: FaultEvidence, wrong: number): string {
  const { fault, alsoFits, explains, explainsButForSlip, held } = evidence
  const slips =
    explainsButForSlip.length === 0 ? '' : ` and, but for a slip, ${explainsButForSlip.length} more`
  const others =
    alsoFits.length === 0 ? '' : ` These answers fit as well: ${alsoFits.map(quoted).join(' or ')}.`
  const explained = `This explains ${explains.length} of ${wrong} wrong answers${slips}.`
  const what = faultSentence(fault)
  const now = held === 'always' ? what : `Now and then: ${what.charAt(0).toLowerCase()}${what.slice(1)}`
  return `${now} ${explained}${others}`
}

function faultSentence(id: FaultId): string {
  return FAULTS.find((fault) => fault.id === id)?.sentence ?? ''
}

function quoted(id: FaultId): string {
  const sentence = faultSentence(id)
  return `“${sentence.charAt(0).toLowerCase()}${sentence.slice(1).replace(/\.$/, '')}”`
}
