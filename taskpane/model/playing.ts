import { printQuestion, type Question } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import { strategyFor } from '../../src/arithmetic/strategy'

/** What is said after the first n steps: the sentence of the last one; before the first, how the question could be tackled. */
export function saidAfter(question: Question, n: number): string {
  const step = stepsOf(question)[n - 1]
  return step?.say ?? `${printQuestion(question)}: how shall we do this? ${strategyFor(question).reason}`
}

/** The step that a key leads to, of `count` steps; null for other keys. */
export function stepByKey(key: string, step: number, count: number): number | null {
  if (key === 'ArrowRight') return Math.min(step + 1, count)
  if (key === 'ArrowLeft') return Math.max(step - 1, 0)
  if (key === 'Home') return 0
  return key === 'End' ? count : null
}
