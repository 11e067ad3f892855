import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { foldText } from '../../arithmetic/numeral'
import type { Outcome } from '../../answers/typed'
import { generatorFrom } from '../../items/seed'
import { OWN_SHEET } from '../layout/find'
import { LOOKS } from '../marking/looks'
import type { TableCell, TableSheet } from '../marking/plan'
import type { Review } from '../marking/review'
import { lookOf } from '../marking/rules'

/** What stands in place of names: initials, or codes with the pupils in an order that says nothing. */
export type InPlaceOfNames = 'initials' | 'codes'

/** The name of the sheet that is laid out to be shared. */
export const SHARED_NAME = 'To share'

const CAUTION =
  'Without names, yet perhaps not anonymous: whoever knows the class may tell a child by its answers. This workbook still holds the names: ' +
  'move this sheet into a workbook of its own before you share it, and share as your school’s policy says.'

const SIGNS: Readonly<Record<Outcome, string>> = {
  correct: '✓ ',
  incorrect: '✗ ',
  unreadable: '? ',
  absent: '',
  blank: '',
}

/** A pupil on a reviewed sheet: the marksheet's number, and the pupil's in it, both from 0. */
interface Place {
  readonly sheet: number
  readonly pupil: number
}

/**
 * The sheet to share of reviewed marksheets: their questions and answers, told right from wrong, with initials or codes in place of the
 * names. A child has the same one in all of them; two of one name in a marksheet have two. `seed` shuffles the codes.
 */
export function planShared(reviews: readonly Review[], how: InPlaceOfNames, seed: string): TableSheet {
  const children = childrenIn(reviews)
  const labels =
    how === 'initials' ? initialsOf(children.map(({ name }) => name)) : codesFor(children.length, seed)
  const labelAt = new Map(
    children.flatMap(({ places }, index) => places.map((place) => [placeKey(place), labels[index] ?? ''])),
  )
  const questions = Math.max(0, ...reviews.map((review) => review.questions.length))
  return {
    name: SHARED_NAME,
    rows: [
      [cell(`${OWN_SHEET}${SHARED_NAME}`, true)],
      [cell(CAUTION)],
      ...reviews.flatMap((review, sheet) => {
        const rows = review.pupils.map((_, pupil) =>
          sharedRow(review, pupil, labelAt.get(placeKey({ sheet, pupil })) ?? ''),
        )
        return [[], ...headRows(review), ...(how === 'codes' ? sortedByLabel(rows) : rows)]
      }),
    ],
    widths: [14, ...Array.from({ length: questions }, () => 18)],
  }
}

/** Every child once, in the order of the sheet, with its places. A name that comes again in one marksheet is another child. */
function childrenIn(reviews: readonly Review[]): { name: string; places: Place[] }[] {
  const children = new Map<string, { name: string; places: Place[] }>()
  reviews.forEach(({ pupils }, sheet) => {
    const met = new Map<string, number>()
    pupils.forEach(({ name }, pupil) => {
      const folded = foldText(name)
      const time = met.get(folded) ?? 0
      met.set(folded, time + 1)
      const key = `${time} ${folded}`
      const child = children.get(key) ?? { name, places: [] }
      child.places.push({ sheet, pupil })
      children.set(key, child)
    })
  })
  return [...children.values()]
}

const placeKey = ({ sheet, pupil }: Place) => `${sheet} ${pupil}`

/** A letter with the signs that are joined to it, or a digit. */
const FIRST = /[\p{L}\p{N}]\p{M}*/u

/** The initials of names; where several have the same, numbered in their order ("AK 1", "AK 2"). */
export function initialsOf(names: readonly string[]): string[] {
  const plain = names.map((name) =>
    name
      .split(/[\s\-‐‑]+/u)
      .map((word) => FIRST.exec(word.normalize('NFC'))?.[0] ?? '')
      .join('')
      .toLocaleUpperCase('en-GB'),
  )
  const number = new Map<string, number>()
  return plain.map((initials) => {
    if (initials !== '' && plain.filter((other) => other === initials).length === 1) return initials
    number.set(initials, (number.get(initials) ?? 0) + 1)
    return `${initials} ${number.get(initials) ?? 1}`.trim()
  })
}

/** Codes "Pupil 01" and so on, shuffled (Fisher and Yates; from memory). */
function codesFor(count: number, seed: string): string[] {
  const generator = generatorFrom(seed)
  const width = String(count).length
  const codes = Array.from({ length: count }, (_, index) => `Pupil ${String(index + 1).padStart(width, '0')}`)
  for (let last = count - 1; last > 0; last--) {
    const other = uniformInt(generator, 0, last)
    ;[codes[last], codes[other]] = [codes[other] ?? '', codes[last] ?? '']
  }
  return codes
}

function headRows({ orientation, questions, pupils }: Review): TableCell[][] {
  const count = (number: number, one: string) => `${number} ${number === 1 ? one : `${one}s`}`
  const title = [cell(`${count(pupils.length, 'pupil')}, ${count(questions.length, 'question')}`, true)]
  const heads = orientation === 'pairs' ? [] : questions.map(({ text }) => text)
  return [title, ['Pupil', ...heads].map((text) => cell(text, true, LOOKS.absent.fill))]
}

/** A pupil's answers; where every pupil has questions of its own, each behind its question. */
function sharedRow({ orientation, questions, pupils }: Review, pupil: number, label: string): TableCell[] {
  const { answers = [], typed = [], outcomes = [] } = pupils[pupil] ?? {}
  return [
    cell(label, true),
    ...answers.map(({ question }, index) => {
      const outcome = outcomes[index] ?? 'unreadable'
      const look = lookOf(outcome)
      const asked = orientation === 'pairs' ? `${questions[question]?.text ?? ''} = ` : ''
      const text = `${SIGNS[outcome]}${asked}${typed[index] ?? ''}`
      return cell(text, outcome === 'incorrect', look && LOOKS[look].fill)
    }),
  ]
}

function sortedByLabel(rows: readonly TableCell[][]): TableCell[][] {
  return rows.toSorted(([one], [other]) => (one?.text ?? '').localeCompare(other?.text ?? '', 'en-GB'))
}

function cell(text: string, bold = false, fill: string | null = null): TableCell {
  return { text, bold, fill }
}
