import { personalTable, type PersonalSet } from '../../lesson/personal'
import { columnWidthFor, MOST_LAID_OUT, type PlanReading } from './layOut'

const ADVICE =
  'Each row holds a pupil’s own questions. Type each answer on the right of its question; leave it empty where there is none.'
const NAME_WIDTH = { least: 14, most: 36 } as const
const ANSWER_WIDTH = 11

/**
 * Lays out personal sets: a title, advice, and one row for each pupil with question and empty answer side by side, as the review reads
 * pairs.
 */
export function planPersonalSheet(title: string, sets: readonly PersonalSet[]): PlanReading {
  if (sets.length === 0) return { problem: 'There are no pupils to lay personal sets out for.' }
  if (sets.length > MOST_LAID_OUT.pupils)
    return {
      problem: `Personal sets are laid out for up to ${MOST_LAID_OUT.pupils.toLocaleString('en-GB')} pupils.`,
    }
  const table = personalTable(sets)
  const columns = table[0]?.length ?? 1
  const filled = (cells: readonly string[]) => Array.from({ length: columns }, (_, at) => cells[at] ?? '')
  const head = 2
  const names = sets.map(({ name }) => name.length + 2)
  return {
    plan: {
      rows: [filled([title]), filled([ADVICE]), ...table.map(filled)],
      head,
      answers: { top: head + 1, left: 1, bottom: head + sets.length, right: columns - 1 },
      widths: Array.from({ length: columns }, (_, at) => {
        if (at === 0) return Math.min(NAME_WIDTH.most, Math.max(NAME_WIDTH.least, ...names))
        return at % 2 === 0
          ? ANSWER_WIDTH
          : Math.max(...table.slice(1).map((row) => columnWidthFor(row[at] ?? '')))
      }),
    },
  }
}
