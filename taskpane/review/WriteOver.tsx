import type { ReactElement } from 'react'
import { WriteOver as AskWriteOver } from '../common/WriteOver'
import type { Reviewer, ReviewerState } from './reviewer'

/** Asks before questions are written over cells that are not empty. */
export function WriteOver(props: {
  readonly reviewer: Reviewer
  readonly state: ReviewerState
}): ReactElement | null {
  const { reviewer, state } = props
  return (
    state.asked && <AskWriteOver {...state.asked.target} onAnswer={(over) => void reviewer.answer(over)} />
  )
}
