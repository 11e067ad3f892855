import { readQuestion } from '../arithmetic/question'
import { readTyped } from '../answers/typed'
import type { View } from './matrix'

/** The columns of a view that hold pupils' names: one, or first name and surname. */
export interface NameColumns {
  readonly first: number
  readonly surname: number | null
}

const FULL_NAME =
  /^(?:(?:your|pupil|child|student|learner|full)(?:'?s)?\.? ?)*names?\b|\bname\?$|^(?:pupil|child|student|learner)s?$|^children$/i
const SURNAME = /^(?:sur|last|family) ?name/i
const FIRST_NAME = /^(?:first|fore|given|christian|preferred) ?names?/i
const OTHER_HEADER =
  /^(?:id|no\.?|number|start time|completion time|timestamp|e-?mail|last modified|language)\b|\b(?:notes?|comments?|score|points|marks?|total|group|class|set|table|teacher|upn|dob|gender|sex|house|target|level|sen|send|eal|pp|feedback)\b/i

/** What stands where a name would, in rows that sum up, head or explain. */
const SUMMARY =
  /^(?:(?:class|group|year|overall|whole|grand|sub) ?-?(?:average|mean|median|total|score)s?|averages?|means?|medians?|totals?|sum|percent(?:age)?s?|%.*|(?:no|number|count|how many)\.? .*|(?:max(?:imum)?|min(?:imum)?|highest|lowest|top|possible|available|total)(?: possible)? (?:marks?|scores?|points?)|out of\b.*|marks? (?:available|possible|out of)|answers?|(?:answer|mark) (?:key|scheme)|correct(?: answers?)?|key|questions?|names?|(?:success|facility|pass) rate|right|wrong|dates?|types?|notes?)(?: ?[:=%].*)?$/i
const HEADING =
  /^(?:(?:maths )?group|table|set|part|section|class|year|week|boys|girls|adults?)\b.{0,20}$|^q(?:uestion)?\.? ?\d/i

/** Whether a text can be a pupil's name (or a code in its place) by its look: a few words with letters, no sentence, no answer. */
export function looksLikeName(text: string): boolean {
  return (
    text.length <= 40 &&
    /\p{L}/u.test(text) &&
    !/[@:;?=%*!/\\<>]|\d{3}/.test(text) &&
    text.split(/\s+/).length <= 5 &&
    !SUMMARY.test(text) &&
    !HEADING.test(text) &&
    readTyped(text).kind === 'unreadable' &&
    'problem' in readQuestion(text)
  )
}

/** Whether a text in a name's place heads or sums up rows ("Class average", "Group B") and so is no pupil. */
export function isHeadingOrSummary(text: string): boolean {
  return SUMMARY.test(text) || HEADING.test(text)
}

/**
 * The name columns among `columns` of a view whose header stands in `header` (or in the row above it), for the body rows.
 * A header that says so decides; otherwise the column nearest to the questions whose texts look like names and differ.
 */
export function findNameColumns(
  view: View,
  header: number,
  columns: readonly number[],
  body: readonly number[],
): NameColumns | null {
  const headed = columns.map((column) => ({ column, title: titleOf(view, header, column) }))
  const surname = headed.find(({ title }) => SURNAME.test(title))?.column
  const first = headed.find(({ title }) => FIRST_NAME.test(title))?.column
  if (first !== undefined) return { first, surname: surname ?? null }
  if (surname !== undefined) return { first: surname, surname: null }
  const named = headed.filter(({ title }) => FULL_NAME.test(title)).map(({ column }) => column)
  const likely = headed.filter(({ title }) => !OTHER_HEADER.test(title)).map(({ column }) => column)
  const best =
    mostNames(view, named, body, 0.3) ??
    mostNames(view, likely.toReversed(), body, 0.6) ??
    mostCodes(view, named, body)
  return best === null ? null : { first: best, surname: null }
}

/** Whether a column can only hold names: its header says so and its texts differ, or nearly all of them look like names. */
export function isNameColumn(view: View, header: number, column: number, body: readonly number[]): boolean {
  const title = titleOf(view, header, column)
  if (SURNAME.test(title) || FIRST_NAME.test(title)) return true
  if (FULL_NAME.test(title)) return mostNames(view, [column], body, 0.3) !== null
  return !OTHER_HEADER.test(title) && mostNames(view, [column], body, 0.8) !== null
}

/** The pupil's name in a row, first name before surname, or '' where there is none. */
export function nameIn(view: View, { first, surname }: NameColumns, row: number): string {
  const parts = surname === null ? [view.text(row, first)] : [view.text(row, first), view.text(row, surname)]
  return parts.filter((part) => part !== '').join(' ')
}

function titleOf(view: View, header: number, column: number): string {
  const title = view.text(header, column)
  return title === '' && header > 0 ? view.text(header - 1, column) : title
}

/** The first column whose filled cells nearly all differ and, to at least the given share of the rows, look like names. */
function mostNames(
  view: View,
  columns: readonly number[],
  body: readonly number[],
  share: number,
): number | null {
  for (const column of columns) {
    const texts = body
      .map((row) => view.text(row, column))
      .filter((text) => text !== '' && !isHeadingOrSummary(text))
    const names = texts.filter(looksLikeName)
    const distinct = new Set(names.map((name) => name.toLowerCase())).size
    if (names.length > 0 && names.length >= share * body.length && distinct >= 0.75 * names.length)
      return column
  }
  return null
}

/** The first column under a header for names whose filled cells differ, whatever they hold (numbers given in place of names). */
function mostCodes(view: View, columns: readonly number[], body: readonly number[]): number | null {
  for (const column of columns) {
    const texts = body.map((row) => view.text(row, column)).filter((text) => text !== '')
    if (texts.length >= 0.6 * body.length && new Set(texts).size >= 0.75 * texts.length) return column
  }
  return null
}
