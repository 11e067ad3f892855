import type { Question } from '../arithmetic/question'

/** Those of some questions that were set before, each once; a calculation is the same in whatever form and unit it is asked. */
export function repeatedIn(questions: readonly Question[], before: readonly Question[]): Question[] {
  const known = new Set(before.map(keyOf))
  return [...new Map(questions.map((question) => [keyOf(question), question]))]
    .filter(([key]) => known.has(key))
    .map(([, question]) => question)
}

function keyOf({ calculation }: Question): string {
  return JSON.stringify(calculation)
}

/** How many numbers are tried before the one that repeats least is taken. */
const MOST_TRIES = 40

/** The first number of those drawn that repeats nothing; where many all repeat something, the one that repeats least. */
export function freshNumber(draw: () => string, repeats: (number: string) => number): string {
  let best = { number: draw(), repeated: Infinity }
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const number = tries === 0 ? best.number : draw()
    const repeated = repeats(number)
    if (repeated < best.repeated) best = { number, repeated }
    if (repeated === 0) break
  }
  return best.number
}
