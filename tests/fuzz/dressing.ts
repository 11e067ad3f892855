import type { CellValue } from '../../src/answers/typed'
import type { Chance } from './chance'

/** A cell that holds what a sheet shows, or a child's answer with whose it is. */
export type Cell = CellValue | { readonly answer: CellValue; readonly of: string }

/** A question's two numbers, its sign and its right answer. */
export interface Sum {
  readonly one: number
  readonly sign: '−' | '+'
  readonly other: number
  readonly answer: number
}

/** Names of children in which a word of a label stands. */
export const LIKE_LABELS = [
  'Ada Common',
  'Mark S.',
  'Max T.',
  'Will A.',
  'Grace T.',
  'April M.',
  'Rose Marks',
  'Ben Wright',
  'Tom Best',
  'June K.',
  'Ivy Green',
  'Summer L.',
]

/** Rows under or over the pupils that are no child's, as teachers keep them: what they are called, and what stands in them. */
const NOBODY: readonly (readonly [string, (chance: Chance, sum: Sum) => CellValue])[] = [
  ['Common wrong answer', (chance, { answer }) => answer + chance.of([10, 100, -10])],
  ['Most common error', () => 'exchange'],
  ['Objective', () => 'tens'],
  ['Difficulty', (chance) => chance.whole(1, 3)],
  ['Last year', (chance) => `${chance.whole(20, 99)}%`],
  ['% correct', (chance) => chance.whole(1, 100) / 100],
  ['Percentages', (chance) => chance.whole(20, 99)],
  ['Average', (chance) => chance.whole(1, 9) / 10],
  ['Class average', (chance, { answer }) => answer - chance.whole(1, 40)],
  ['Mark scheme', (_, { answer }) => answer],
  ['Answers', (_, { answer }) => answer],
  ['Correct answer', (_, { answer }) => answer],
  ['Target', (chance) => chance.whole(50, 90)],
  ['Out of', () => 1],
  ['Total', (chance) => chance.whole(0, 7)],
  ['Number correct', (chance) => chance.whole(0, 7)],
  ['Marks available', () => 1],
]

const MARK_HEADS = ['Mark', '✓', '✓/✗', '/1', 'Marked', 'Tick', '']
const TOTAL_HEADS = ['Total', 'Score', '/10', 'Mark', 'Marks', '%']

/** How the questions of a block stand over the answers, which the children give one below the other. */
export type Head = 'plain' | 'signed below' | 'labelled' | 'stacked' | 'spread' | 'marks beside'

/** The cells of a block as pupils down (`isTurned` where it is to be turned about afterwards): heading rows, rows that are nobody's, the children's rows with their answers. */
export function dressed(
  chance: Chance,
  corner: string,
  isTurned: boolean,
  sums: readonly Sum[],
  children: readonly { readonly name: string; readonly answers: readonly Cell[] }[],
): Cell[][] {
  const head = chance.onceIn(3)
    ? chance.of<Head>([
        'signed below',
        'labelled',
        'stacked',
        isTurned ? 'stacked' : 'spread',
        'marks beside',
      ])
    : 'plain'
  const mark = chance.of([() => null, () => chance.of(['✓', '✗']), () => chance.of([1, 0])])
  const row = (name: string, cells: readonly Cell[]): Cell[] => {
    if (head === 'spread') return [name, ...cells.flatMap((cell) => [null, null, null, cell])]
    return head === 'marks beside' ? [name, ...cells.flatMap((cell) => [cell, mark()])] : [name, ...cells]
  }
  const nobody = (): Cell[] => {
    const [label, value] = chance.of(NOBODY)
    return row(
      label,
      sums.map((sum) => value(chance, sum)),
    )
  }
  const some = () => (chance.onceIn(6) ? chance.some(1, 2, nobody) : [])
  const rows = [
    ...headRows(chance, head, corner, sums),
    ...some(),
    ...children.map(({ name, answers }) => row(name, answers)),
    ...some(),
  ]
  return chance.onceIn(6) ? withTotals(chance, rows, rows.length - children.length) : rows
}

function headRows(chance: Chance, head: Head, corner: string, sums: readonly Sum[]): Cell[][] {
  const text = ({ one, sign, other }: Sum) => `${one} ${sign} ${other}`
  const tops = sums.map(({ one }) => one)
  if (head === 'signed below')
    return [
      [corner, ...tops],
      ['', ...sums.map(({ sign, other }) => `${sign} ${other}`)],
    ]
  if (head === 'labelled' && sums.every(({ sign }) => sign === '−'))
    return [
      [corner, ...tops],
      [chance.of(['take away', 'Subtract', 'minus', '−']), ...sums.map(({ other }) => other)],
    ]
  if (head === 'stacked') {
    const rows: Cell[][] = [tops, sums.map(({ sign }) => sign), sums.map(({ other }) => other)]
    if (chance.onceIn(2)) rows.push(sums.map(() => '='))
    return rows.map((cells, index) => [index === 0 ? corner : '', ...cells])
  }
  if (head === 'spread') return [[corner, ...sums.flatMap(({ one, sign, other }) => [one, sign, other, '='])]]
  const title = chance.of(MARK_HEADS)
  return [[corner, ...sums.flatMap((sum) => (head === 'marks beside' ? [text(sum), title] : [text(sum)]))]]
}

/** A column of totals behind the rest, under its heading in the first row, filled or empty. */
function withTotals(chance: Chance, rows: readonly Cell[][], from: number): Cell[][] {
  const width = Math.max(...rows.map(({ length }) => length))
  const title = chance.of(TOTAL_HEADS)
  const isFilled = chance.onceIn(2)
  return rows.map((row, index) => [
    ...row,
    ...Array.from({ length: width - row.length }, () => null),
    index === 0 ? title : index >= from && isFilled ? chance.whole(0, 9) : null,
  ])
}
