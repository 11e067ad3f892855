import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import type { Question } from '../arithmetic/question'
import { gridOf, type PaperLine } from './model/grid'
import { NOTATION } from './model/notation'
import { finishedPaper } from './model/paper'
import { pickFrom, shuffled } from './random'

/** What stands where a pupil writes a digit. */
const EMPTY_DIGIT = '□'

/** The most digits that are left out. */
const MOST_EMPTY = 3

/**
 * The two numbers of a question and its answer, with digits left out in up to three columns, one in each. So there is exactly one way to
 * fill it: from the right each column tells its digit. The first line is empty, for exchanges or carried tens.
 */
export function missingDigits(question: Question, generator: RandomGenerator): PaperLine[] {
  const numbers = gridOf(finishedPaper(question, NOTATION))
    .filter(({ kind }) => kind === 'top' || kind === 'bottom' || kind === 'answer')
    .map(({ kind, cells }) => ({ kind, texts: cells.map(({ text }) => text.replace(/[^\d.+−]/g, '')) }))
  const linesWith = (at: number) => numbers.filter(({ texts }) => /\d/.test(texts[at] ?? ''))
  const columns = (numbers[0]?.texts ?? []).map((_, at) => at).filter((at) => linesWith(at).length > 1)
  const empty = shuffled(columns, generator)
    .slice(0, MOST_EMPTY)
    .map((at) => ({ at, line: pickFrom(linesWith(at), generator) }))
  const line = ({
    kind,
    texts,
  }: {
    readonly kind: PaperLine['kind']
    readonly texts: readonly string[]
  }) => ({
    kind,
    cells: texts.map((text) => ({ text, crossed: false })),
  })
  return [
    line({ kind: 'mark', texts: (numbers[0]?.texts ?? []).map(() => '') }),
    ...numbers.map((number) =>
      line({
        kind: number.kind,
        texts: number.texts.map((text, at) =>
          empty.some((each) => each.line === number && each.at === at) ? EMPTY_DIGIT : text,
        ),
      }),
    ),
  ]
}
