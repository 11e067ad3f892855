import { groupedText, numeralText } from '../../arithmetic/numeral'
import type { AnswerKey, CellValue, Outcome } from '../../answers/typed'
import type { LookName } from './looks'
import { MARKS, readMark } from '../layout/ticks'
import type { Part } from '../layout/marksheet'
import { addressOf, type Area, type CellRef } from '../layout/matrix'

/**
 * A conditional format: the look that every cell of `areas` takes on where the formula holds. The formula is written for the
 * first cell of the first area, without a leading =, in the English form that files and Office.js keep. At most 255 characters,
 * the least that any place in Excel takes.
 */
export interface Rule {
  readonly areas: readonly Area[]
  readonly formula: string
  readonly look: LookName
}

/** Every rule holds this part, which is always true, so that our rules can be told from the teacher's. */
export const SIGNATURE = 'N("Columnwise")=0'

/** Excel's day numbers of 2020 to 2049: a number cell between them may be a date that was made of an answer such as 3-4. */
const DATES = { first: 43831, last: 54788 } as const

/** Letters of which none stands in a number, a measure or a word for a blank or an absence, however these are written. */
const NO_ANSWER = 'orhduwyfx'

/** The longest formula that is written. */
const LONGEST = 255

const signed = (test: string) => `AND(${SIGNATURE},${test})`
/** The cell's text with non-breaking spaces folded and nothing around it. (CHAR(160) is another sign on some systems.) */
const text = (cell: string) => `TRIM(SUBSTITUTE(${cell},"\u00a0"," "))`
const quoted = (literal: string) => `"${literal.replaceAll('"', '""')}"`
/** Whether an expression is one of some texts, which it is looked up in between bars, so that it need stand only once. */
const isOneOf = (expression: string, texts: readonly string[]) =>
  `ISNUMBER(FIND("¦"&${expression}&"¦",${quoted(`¦${texts.join('¦')}¦`)}))`

/** A question where it stands on the sheet: a rule about its answers says nothing once something else stands there. */
export interface AskedAt extends CellRef {
  readonly text: string
  readonly parts?: readonly Part[]
}

/** Adds to a formula, as far as there is room, that the question still stands in its cell, or all its parts in theirs. */
function guarded({ areas, formula, look }: Rule, asked: AskedAt): Rule {
  const tests = asked.parts ? partTests(asked.parts) : textTests(asked)
  const formulas = tests.map((test) => formula.replace(SIGNATURE, `${SIGNATURE},${test}`))
  return { areas, look, formula: formulas.find(({ length }) => length <= LONGEST) ?? formula }
}

function textTests({ text: asked, ...cell }: AskedAt): string[] {
  const numbers = /\d.*\d|\d/s.exec(asked)?.[0] ?? asked
  return [`${fixed(cell)}=${quoted(asked)}`, `FIND(${quoted(numbers)},${fixed(cell)})`]
}

/** That every part of a spread question stands where it did; or, in less room, its numbers. */
function partTests(parts: readonly Part[]): string[] {
  const tests = (some: readonly Part[]) =>
    some
      .map(({ value, ...cell }) =>
        typeof value === 'number' ? `${fixed(cell)}=${value}` : `${fixed(cell)}=${quoted(String(value))}`,
      )
      .join(',')
  return [tests(parts), tests(parts.filter(({ value }) => /\d/.test(String(value))))]
}

const fixed = (cell: CellRef) => addressOf(cell).replace(/^([A-Z]+)(\d+)$/, '$$$1$$$2')

/** The rule that recolours right answers to one question, whatever is typed later. */
export function rightRule(areas: readonly Area[], key: AnswerKey, asked: AskedAt): Rule {
  const cell = firstCell(areas)
  const isNumber = key.value.includes('.') ? `ABS(${cell}-${key.value})<1E-9` : `${cell}=${key.value}`
  const isText = isOneOf(text(cell), rightTexts(key))
  const formula = signed(`IF(ISNUMBER(${cell}),${isNumber},${isText})`)
  return guarded({ areas, look: 'right', formula }, asked)
}

/** The rules that tell unreadable and absent answers, the same for every question. They follow the right ones. */
export function otherRules(areas: readonly Area[]): Rule[] {
  const cell = firstCell(areas)
  const own = text(cell)
  const small = `LOWER(${own})`
  const letters = [...NO_ANSWER].map((letter) => `SEARCH("${letter}",${cell})`).join(',')
  const has = (part: string) => `ISNUMBER(FIND(${quoted(part)},${cell}))`
  const rule = (look: LookName, test: string): Rule => ({ areas, look, formula: signed(test) })
  return [
    rule('absent', isOneOf(small, ['a', 'abs', 'absent', 'ill'])),
    rule('unreadable', `COUNT(${letters})>0`),
    rule('unreadable', `OR(${has('?')},${has(', ')},AND(${has('/')},ISNUMBER(-LEFT(${own}))))`),
    rule('unreadable', `OR(ISERROR(${cell}),ISLOGICAL(${cell}))`),
  ]
}

/**
 * The rules that show what is left as wrong: numbers, and texts of plain numbers. They follow all others. Where Excel's own decimal sign is a
 * comma, --text and TEXT read and write otherwise: then grouped numbers are left as they are.
 */
export function wrongRules(areas: readonly Area[], asked: AskedAt): Rule[] {
  const cell = firstCell(areas)
  const own = text(cell)
  const digits = `SUBSTITUTE(${own},",","")`
  return [
    `IF(ISNUMBER(${cell}),OR(${cell}<${DATES.first},${cell}>${DATES.last}),${own}=--${digits}&"")`,
    `ISTEXT(${cell}),FIND(",",${cell}),--${digits}<>0,${own}=TEXT(--${digits},"#,##0")`,
  ].map((test) => guarded({ areas, look: 'wrong', formula: signed(test) }, asked))
}

/** The rules for a sheet that holds marks (ticks, 1 and 0, y and n) in place of answers. */
export function markRules(areas: readonly Area[]): Rule[] {
  const small = `LOWER(${text(firstCell(areas))})`
  const rule = (look: LookName, marks: readonly string[]): Rule => ({
    areas,
    look,
    formula: signed(isOneOf(small, marks)),
  })
  return [
    rule('right', MARKS.right),
    rule('wrong', MARKS.wrong),
    rule('absent', ['a', 'abs', 'absent', 'ill']),
  ]
}

/** A rule for one cell whose outcome no formula can read: it holds only as long as the cell keeps what it holds now. */
export function exceptionRule(cell: CellRef, value: CellValue, look: LookName, asked: AskedAt): Rule | null {
  const address = addressOf(cell)
  const test =
    typeof value === 'number'
      ? `ISNUMBER(${address}),${address}=${value}`
      : `EXACT(${address},${quoted(String(value))})`
  const formula = signed(test)
  const area = { top: cell.row, left: cell.column, bottom: cell.row, right: cell.column }
  return formula.length > LONGEST ? null : guarded({ areas: [area], look, formula }, asked)
}

/** What a flag's formula holds, so that flags can be told from marks. */
const FLAG = 'N("flag")=0'

/** Whether a formula of ours flags names (those of version 0.1 did whatever the name was). */
export function isFlag(formula: string): boolean {
  return formula.includes(FLAG) || formula.replace(/^=/, '') === signed('TRUE')
}

/**
 * The rules that flag names wherever they stand among the name cells, so that a flag goes with its child when rows are sorted. A name may
 * be in two cells: `cells` are those of the first name of an area, as they are to stand in a formula ("A4", or "$A4" and "$B4"). The names
 * must be as `nameText` has them, and stand once among all.
 */
export function flagRules(
  areas: readonly Area[],
  cells: readonly string[],
  names: readonly string[],
): Rule[] {
  const own = cells.map(text).join('&" "&')
  const formula = (some: readonly string[]) => signed(`${FLAG},${isOneOf(own, some)}`)
  const pieces: string[][] = []
  for (const name of names) {
    const last = pieces.at(-1)
    if (last && formula([...last, name]).length <= LONGEST) last.push(name)
    else if (formula([name]).length <= LONGEST) pieces.push([name])
  }
  return pieces.map((some) => ({ areas, look: 'flag', formula: formula(some) }))
}

/** The text of a name's cells as the flags' formulas read it. */
export function nameText(values: readonly CellValue[]): string {
  return values.map((value) => trimmed(String(value ?? ''))).join(' ')
}

/** The look in which an outcome is shown; a blank cell stays as it is. */
export function lookOf(outcome: Outcome): LookName | null {
  const looks = {
    correct: 'right',
    incorrect: 'wrong',
    unreadable: 'unreadable',
    absent: 'absent',
    blank: null,
  } as const
  return looks[outcome]
}

/**
 * What the rules make of a cell of a sheet of typed answers, worked out here as Excel works out the formulas above. Null where they
 * leave the cell as it is.
 */
export function lookByRules(value: CellValue, key: AnswerKey): LookName | null {
  if (value === null || value === '') return null
  if (typeof value === 'number') {
    const apart = Math.abs(value - Number(key.value))
    if (key.value.includes('.') ? apart < 1e-9 : apart === 0) return 'right'
    return value < DATES.first || value > DATES.last ? 'wrong' : null
  }
  const own = trimmed(String(value))
  if (rightTexts(key).includes(own)) return 'right'
  const small = own.toLowerCase()
  if (['a', 'abs', 'absent', 'ill'].includes(small)) return 'absent'
  const hasLetters = [...NO_ANSWER].some((letter) => small.includes(letter))
  const hasDoubt = own.includes('?') || String(value).includes(', ') || /^\d.*\//s.test(own)
  if (hasLetters || hasDoubt) return 'unreadable'
  return /^-?(?:0|[1-9]\d{0,14})(?:\.\d*[1-9])?$|^-?[1-9]\d{0,2}(?:,\d{3})+$/.test(own) ? 'wrong' : null
}

/** The same for a cell of a sheet of marks. */
export function lookByMarkRules(value: CellValue): LookName | null {
  const text = trimmed(String(value ?? '')).toLowerCase()
  const mark = readMark(text)
  if (mark !== null) return mark ? 'right' : 'wrong'
  return ['a', 'abs', 'absent', 'ill'].includes(text) ? 'absent' : null
}

/** The texts that are coloured right while they are typed; other ways to write the number wait for the next marking. */
function rightTexts({ value, unit, numeral }: AnswerKey): string[] {
  const texts = new Set([value, numeralText(numeral), groupedText(numeral)])
  if (numeral.places === 0) texts.add(groupedText(numeral).replaceAll(',', ' '))
  if (unit === '£') texts.add(`£${groupedText(numeral)}`)
  if (unit === 'p') texts.add(`${numeralText(numeral)}p`)
  return [...texts]
}

/** A text as Excel's TRIM leaves it, non-breaking spaces folded. */
function trimmed(text: string): string {
  return text.replaceAll('\u00a0', ' ').replace(/ +/g, ' ').replace(/^ | $/g, '')
}

function firstCell(areas: readonly Area[]): string {
  const [area] = areas
  if (area === undefined) throw new RangeError('A rule needs an area.')
  return addressOf({ row: area.top, column: area.left })
}
