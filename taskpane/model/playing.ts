import { estimate } from '../../src/arithmetic/check'
import { amountText, printQuestion, type Question } from '../../src/arithmetic/question'
import { stepsOf } from '../../src/arithmetic/steps'
import { strategyFor, type StrategyName } from '../../src/arithmetic/strategy'

/** How a way that needs no columns is brought up. */
const WITHOUT_COLUMNS: Readonly<Record<Exclude<StrategyName, 'written method'>, string>> = {
  'count on': 'Without columns you could count on.',
  'count back': 'Without columns you could count back.',
  'round and adjust': 'Without columns you could round and adjust.',
  'in the head': 'Without columns you could work in the head.',
}

/**
 * What is said after the first n steps: the sentence of the last one; before the first, how the question could be tackled. Where that is
 * by the written method, there is an estimate before it, and the answer is held against it.
 */
export function saidAfter(question: Question, n: number): string {
  const isWritten = strategyFor(question).name === 'written method'
  const about = isWritten ? estimate(question) : null
  const step = stepsOf(question)[n - 1]
  if (!step) {
    const close = about ? ` Estimate first: ${about.text}.` : ''
    return `${printQuestion(question)}: how shall we do this? ${waysTo(question)}${close}`
  }
  const was = about && step.kind === 'answer' ? amountText(about.answer, about.question.unit) : null
  return was === null ? step.say : `${step.say} Our estimate was ${was}.`
}

/** The way that suits a question, told from the written method, which is the one that the steps show. */
function waysTo(question: Question): string {
  const { name, reason } = strategyFor(question)
  if (name === 'written method') return reason
  return `${WITHOUT_COLUMNS[name]} ${reason} The steps that follow show another way: the written method.`
}

/** How often a working with a mistake is stepped forward: to the place of the mistake, then to the right working. */
export const COMPARING_STEPS = 2

/** The step that a key leads to, of `count` steps; null for other keys. */
export function stepByKey(key: string, step: number, count: number): number | null {
  if (key === 'ArrowRight') return Math.min(step + 1, count)
  if (key === 'ArrowLeft') return Math.max(step - 1, 0)
  if (key === 'Home') return 0
  return key === 'End' ? count : null
}

/** Of a key that was pressed, in React or outside. */
type KeyPress = Pick<
  KeyboardEvent,
  'key' | 'altKey' | 'ctrlKey' | 'metaKey' | 'defaultPrevented' | 'preventDefault' | 'stopPropagation'
>

/** Leads through `count` steps by keys; other keys, and those that something else has acted on, are left alone. */
export function steppingByKeys(
  step: number,
  count: number,
  onStep: (step: number) => void,
): (press: KeyPress) => void {
  return (press) => {
    const to = stepByKey(press.key, step, count)
    if (to === null || press.altKey || press.ctrlKey || press.metaKey || press.defaultPrevented) return
    press.preventDefault()
    press.stopPropagation()
    onStep(to)
  }
}
