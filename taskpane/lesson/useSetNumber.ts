import { useState } from 'react'
import { newSetNumber, setNumber } from '../set/choices'

/** A set number that counts for a part of the lesson, and what its field needs. */
export interface SetNumberState {
  /** The number or word as it counts. */
  readonly set: string
  readonly field: {
    readonly typed: string
    readonly onType: (typed: string) => void
    readonly onAgain: () => void
  }
}

/** Draws a set number and keeps what is typed in its place. */
export function useSetNumber(): SetNumberState {
  const [typed, setTyped] = useState(newSetNumber)
  return {
    set: setNumber(typed),
    field: {
      typed,
      onType: setTyped,
      onAgain: () => {
        setTyped(newSetNumber())
      },
    },
  }
}
