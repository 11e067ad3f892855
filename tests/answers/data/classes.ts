import { type Question } from '../../../src/arithmetic/question'
import fourteen from './fourteen-questions.json'
import nine from './nine-questions.json'
import ten from './ten-questions.json'
import twelve from './twelve-questions.json'
import { asked } from '../../support/asked'

/**
 * A pupil of an invented class. `typed`: canonical texts, null where nothing usable was typed; `slips`: where a slip was put in;
 * `fault`: the procedure that made the answers, `visibleOn` so many of them; `alsoFits`: faults that give the same answers.
 */
export interface InventedPupil {
  readonly typed: readonly (string | null)[]
  readonly slips: readonly number[]
  readonly kind: string
  readonly fault: string | null
  readonly visibleOn: number
  readonly alsoFits: readonly string[]
}

/** Four invented classes, each with its questions. */
export const CLASSES: readonly {
  readonly questions: readonly Question[]
  readonly pupils: readonly InventedPupil[]
}[] = [nine, ten, twelve, fourteen].map(({ questions, pupils }) => ({
  questions: questions.map(asked),
  pupils,
}))
