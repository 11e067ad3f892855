import type { ReactElement } from 'react'
import type { Outcome } from '../../src/answers/typed'

/** A sign and a word for each outcome, so that none is told by its colour alone. */
export const OUTCOME_WORDS: Readonly<Record<Outcome, readonly [sign: string, word: string]>> = {
  correct: ['✓', 'right'],
  incorrect: ['✗', 'wrong'],
  unreadable: ['?', 'to look at'],
  blank: ['–', 'blank'],
  absent: ['a', 'absent'],
}

/** How many answers came out so, in the colours that they have on the sheet. */
export function OutcomeCount({
  outcome,
  count,
}: {
  readonly outcome: Outcome
  readonly count: number
}): ReactElement {
  const [sign, word] = OUTCOME_WORDS[outcome]
  return (
    <li className={`outcome ${outcome}`}>
      <span className="sign" aria-hidden="true">
        {sign}
      </span>
      <strong>{count.toLocaleString('en-GB')}</strong> {word}
    </li>
  )
}
