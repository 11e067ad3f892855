import { FAULTS, type FaultId } from '../../src/answers/faults'
import { readQuestion, type Question } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import type { Notation } from '../../src/lesson/model/notation'

/**
 * What the large window is asked to show: a question as printed, how many steps are done, a fault to compare with, its colours and the
 * school's notation.
 */
export interface Projected {
  readonly text: string
  readonly step: number
  readonly fault: FaultId | null
  readonly isDark: boolean
  readonly notation: Notation
}

/** The page of the large window with what it shows, beside the page of the pane. */
export function projectorAddress(
  { text, step, fault, isDark, notation }: Projected,
  paneAddress: string,
): string {
  const address = new URL('projector.html', paneAddress)
  address.searchParams.set('question', text)
  address.searchParams.set('step', String(step))
  if (fault !== null) address.searchParams.set('fault', fault)
  address.searchParams.set('exchange', notation.exchange)
  address.searchParams.set('carry', notation.carry)
  if (isDark) address.searchParams.set('dark', 'yes')
  return address.href
}

/** A question for the large window to show. */
export interface ProjectedQuestion extends Omit<Projected, 'text'> {
  readonly question: Question
}

/** What an address asks the large window to show; the problem is a sentence where it holds no question. */
export function projectedIn(search: string): ProjectedQuestion | { readonly problem: string } {
  const asked = new URLSearchParams(search)
  const reading = readQuestion(asked.get('question') ?? '')
  if ('problem' in reading) return reading
  const { question } = reading
  const step = Math.trunc(Number(asked.get('step')))
  return {
    question,
    step: Number.isFinite(step) ? Math.min(Math.max(step, 0), stepsOf(question).length) : 0,
    fault: FAULTS.find(({ id }) => id === asked.get('fault'))?.id ?? null,
    isDark: asked.get('dark') === 'yes',
    notation: {
      exchange: asked.get('exchange') === 'above' ? 'above' : 'beside',
      carry: asked.get('carry') === 'above' ? 'above' : 'below',
    },
  }
}
