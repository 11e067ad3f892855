import { wordsFor } from '../../arithmetic/places'
import type { Paper, PaperColumn, Standing } from './paper'

/** What stands on the paper, for readers who hear it: each row from the left, and for each digit what was written over it. */
export function paperInWords({ sign, unit, columns, points }: Paper): string {
  const row = (name: string, point: number | null, words: (column: PaperColumn) => string) => {
    const read = columns.map((column) => ({ place: column.place, words: words(column) }))
    if (read.every((each) => each.words === '')) return []
    const parts = read.flatMap(({ place, words: said }) => [said, place === point ? 'point' : ''])
    return [`${name}: ${parts.filter((part) => part !== '').join(', ')}.`]
  }
  const rows = [
    ...row('Carried', null, ({ carried, place }) =>
      carried === '' ? '' : `${carried} in the ${wordsFor(unit).placeName(place)}`,
    ),
    ...row('Top', points.top, ({ top }) => top.map(levelInWords).join(' then ')),
    ...row(sign === '+' ? 'Add' : 'Subtract', points.bottom, ({ bottom }) => bottom),
    ...row('Answer', points.answer, ({ answer }) => answer),
  ]
  return rows.length === 0 ? 'Empty squared paper.' : rows.join(' ')
}

function levelInWords({ digit, ten, crossed }: Standing): string {
  return `${digit + (ten ? 10 : 0)}${crossed ? ' crossed out' : ''}`
}
