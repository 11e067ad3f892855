import { printQuestion, type Question } from '../../src/arithmetic/question'
import type { HomeQuestion } from '../../src/home/format'
import type { Marksheet } from '../../src/marksheet/layout/find'

/** The questions of children to make home workbooks of; `common` are those of all, null where each child has its own. */
export interface AtHome {
  readonly common: readonly HomeQuestion[] | null
  readonly children: readonly { readonly name: string; readonly questions: readonly HomeQuestion[] }[]
}

/** Children who all have the same questions. */
export function sameForAll(questions: readonly Question[], names: readonly string[]): AtHome {
  const common = questions.map(asked)
  return { common, children: names.map((name) => ({ name, questions: common })) }
}

/** Children with questions of their own. */
export function ownForEach(
  sets: readonly { readonly name: string; readonly questions: readonly Question[] }[],
): AtHome {
  return {
    common: null,
    children: sets.map(({ name, questions }) => ({ name, questions: questions.map(asked) })),
  }
}

/** The children of a marksheet with its questions, as they are written there. */
export function fromMarksheet({ orientation, questions, pupils }: Marksheet): AtHome {
  return {
    common: orientation === 'pairs' ? null : questions,
    children: pupils.map(({ name, answers }) => ({
      name,
      questions: answers.flatMap((answer) => questions[answer.question] ?? []),
    })),
  }
}

function asked(question: Question): HomeQuestion {
  return { text: printQuestion(question), question }
}
