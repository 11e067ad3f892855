import { readQuestion, type Question } from '../../src/arithmetic/question'

/** The question that a text asks. Throws where it asks none. */
export function asked(text: string): Question {
  const reading = readQuestion(text)
  if ('problem' in reading) throw new Error(`${JSON.stringify(text)}: ${reading.problem}`)
  return reading.question
}

/** A question as a text writes it, and what it asks. Throws where it asks none. */
export const askedAs = (text: string) => ({ text, question: asked(text) })
