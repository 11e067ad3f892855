import { addressOf, areaAddress } from '../marksheet/layout/matrix'
import type { Review, ReviewedPupil } from '../marksheet/marking/review'
import { visible } from './visible'

/** Reviews as text for people: for each marksheet every pupil's count, what is left to look at, and what flags a pupil. */
export function reviewTable(reviews: readonly Review[]): string {
  if (reviews.length === 0) return 'No marksheet found: there is no sheet with questions and pupils’ names.\n'
  return reviews.map(sheetTable).join('\n')
}

function sheetTable({ sheet, area, questions, pupils }: Review): string {
  const head = ['Pupil', 'Right', 'To look at', 'Needs support']
  const rows = pupils.map((pupil) => [
    visible(pupil.name),
    score(pupil),
    toLookAt(pupil),
    pupil.judgement.needsSupport ? pupil.judgement.need.sentence : '',
  ])
  const widths = head.map((title, column) =>
    Math.max(title.length, ...rows.map((row) => row[column]?.length ?? 0)),
  )
  const line = (row: readonly string[]) =>
    row
      .map((text, column) => text.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd()
  const title = `${visible(sheet)} ${areaAddress(area)}: ${pupils.length} pupils, ${questions.length} questions`
  return [title, '', line(head), line(widths.map((width) => '─'.repeat(width))), ...rows.map(line), ''].join(
    '\n',
  )
}

function score({ outcomes }: ReviewedPupil): string {
  const right = outcomes.filter((outcome) => outcome === 'correct').length
  const answered = right + outcomes.filter((outcome) => outcome === 'incorrect').length
  return `${right} of ${answered}`
}

function toLookAt({ answers, outcomes }: ReviewedPupil): string {
  return answers
    .filter((_, index) => outcomes[index] === 'unreadable')
    .map(addressOf)
    .join(' ')
}
