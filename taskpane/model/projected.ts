import { FAULTS, type FaultId } from '../../src/answers/faults'
import { readQuestion, type Question } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import type { Notation } from '../../src/lesson/model/notation'
import { COMPARING_STEPS } from './playing'

/**
 * What the large window is asked to show: a question as printed, how many steps are done, a fault to compare with and how
 * far it is compared, its colours and the school's notation.
 */
export interface Projected {
  readonly text: string
  readonly step: number
  readonly fault: FaultId | null
  readonly comparing: number
  readonly isDark: boolean
  readonly notation: Notation
}

/** The page of the large window with what it shows, beside the page of the pane. */
export function projectorAddress(
  { text, step, fault, comparing, isDark, notation }: Projected,
  paneAddress: string,
): string {
  const address = new URL('projector.html', paneAddress)
  address.searchParams.set('question', text)
  address.searchParams.set('step', String(step))
  if (fault !== null) address.searchParams.set('fault', fault)
  if (comparing > 0) address.searchParams.set('comparing', String(comparing))
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
  const number = (name: string, most: number) => {
    const value = Math.trunc(Number(asked.get(name)))
    return Number.isFinite(value) ? Math.min(Math.max(value, 0), most) : 0
  }
  return {
    question,
    step: number('step', stepsOf(question).length),
    fault: FAULTS.find(({ id }) => id === asked.get('fault'))?.id ?? null,
    comparing: number('comparing', COMPARING_STEPS),
    isDark: asked.get('dark') === 'yes',
    notation: {
      exchange: asked.get('exchange') === 'above' ? 'above' : 'beside',
      carry: asked.get('carry') === 'above' ? 'above' : 'below',
    },
  }
}

/** What is shown as a message between the pane and the large window: the same as stands in its address. */
export function projectedMessage(shown: Projected): string {
  return new URL(projectorAddress(shown, 'https://columnwise.invalid/')).search
}
