import { readMessage } from '../messages/readMessage'
import { refused, type Arrival } from './arrivals'
import type { Target } from './targets'

/** What a pasted message brings for a pupil. `classmates`: the other names of the class, one of whom may have written it. */
export function messageArrival(
  file: string,
  text: string,
  target: Target,
  classmates: readonly string[],
): Arrival {
  const read = readMessage(text, target.questions, target.pupil.name, classmates)
  return {
    ...refused(file, ''),
    target,
    mayBe: [target],
    shown: target.pupil.name,
    doubt: read.every(({ kind }) => kind === 'none')
      ? 'No answers to the questions of this marksheet were found in it.'
      : null,
    answers: read.flatMap((answer, question) =>
      answer.kind === 'sure' ? [{ question, typed: answer.typed }] : [],
    ),
    told: read.flatMap((answer, question) =>
      answer.kind === 'left' ? [`${target.questions[question]?.text.trim() ?? ''}: ${answer.reason}`] : [],
    ),
  }
}
