import { compareNumerals } from '../../arithmetic/numeral'
import { addWith, type AdditionHabit } from './addition'
import { subtractWith, type SubtractionHabit } from './subtraction'

/** Adds where the question says subtract. */
export const adds: SubtractionHabit = { instead: (setOut) => addWith({}, setOut) }

/** Subtracts the smaller number from the greater where the question says add. */
export const subtracts: AdditionHabit = {
  instead: ({ top, bottom }) =>
    subtractWith({}, compareNumerals(top, bottom) < 0 ? { top: bottom, bottom: top } : { top, bottom }),
}
