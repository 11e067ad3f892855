import { numfmt } from '@univerjs/core'
import { isErrorValue } from '../grid/cellText'
import type { Content } from '../grid/grid'
import { invalidArgument } from './errors'

/** What Excel makes of something written into a cell. */
export interface Entry {
  readonly content: Content
  /** The number format that the entry brings, where the cell had none. */
  readonly numberFormat?: string
}

/** The longest text a cell can hold. */
const MAX_TEXT = 32_767
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/**
 * Reads what is written to a cell as Excel does, in US form: numbers, percentages, currency, dates ('3-4' is the 4th of
 * March), times, booleans and formulas are made out of text, unless a leading apostrophe or the format '@' keeps it
 * text. Null leaves the cell as it is. Throws InvalidArgument for what no cell can hold.
 */
export function readEntry(written: unknown, cellFormat: string, today: Date): Entry {
  if (written === null) return { content: null }
  const isText = numfmt.isTextFormat(cellFormat)
  if (typeof written === 'number' && Number.isFinite(written))
    return { content: isText ? String(written) : written }
  if (typeof written === 'boolean') return { content: written }
  if (typeof written !== 'string' || written.length > MAX_TEXT) throw invalidArgument()
  if (written.startsWith("'")) return { content: written.slice(1) }
  if (isText || written.trim() === '') return { content: written }
  if (written.startsWith('=') && written.length > 1) {
    requireWellFormed(written)
    return { content: { formula: written } }
  }
  if (isErrorValue(written.toUpperCase())) return { content: written.toUpperCase() }
  return readDate(written.trim(), today) ?? readPlain(written) ?? { content: written }
}

function readPlain(text: string): Entry | null {
  const mixed = /^([+-]?\d+) (\d{1,3})\/(\d{1,3})$/.exec(text.trim())
  if (mixed && Number(mixed[3]) > 0) {
    const whole = Number(mixed[1])
    const part = Number(mixed[2]) / Number(mixed[3])
    return { content: whole < 0 ? whole - part : whole + part, numberFormat: '# ?/?' }
  }
  const parsed = numfmt.parseValue(text, { locale: 'en-US' })
  if (!parsed || (typeof parsed.v !== 'number' && typeof parsed.v !== 'boolean')) return null
  const content = parsed.v
  const numberFormat = parsed.z?.replace('hh:mm', 'h:mm')
  return numberFormat === undefined ? { content } : { content, numberFormat }
}

const serial = (year: number, month: number, day: number): number | null => {
  const date = new Date(Date.UTC(year, month - 1, day))
  const real = date.getUTCMonth() === month - 1 && date.getUTCDate() === day
  return real && year >= 1900 ? numfmt.dateToSerial([year, month, day]) : null
}

const fullYear = (text: string): number => {
  const year = Number(text)
  if (text.length > 2) return year
  return year < 30 ? 2000 + year : 1900 + year
}

const monthNamed = (word: string): number => {
  const lower = word.toLowerCase()
  const index = MONTHS.indexOf(lower.slice(0, 3))
  const full =
    index < 0 ? '' : new Date(2000, index, 1).toLocaleString('en-US', { month: 'long' }).toLowerCase()
  return lower.length >= 3 && full.startsWith(lower) ? index + 1 : 0
}

/** Dates as Excel's US form reads them, with the formats it gives them. */
function readDate(text: string, today: Date): Entry | null {
  const dated = (value: number | null, numberFormat: string): Entry | null =>
    value === null ? null : { content: value, numberFormat }
  const two = /^(\d{1,2})[-/](\d{1,4})$/.exec(text)
  if (two) {
    const [, first = '', second = ''] = two
    const thisYear = second.length > 2 ? null : serial(today.getFullYear(), Number(first), Number(second))
    if (thisYear !== null) return dated(thisYear, 'd-mmm')
    return second.length === 3 ? null : dated(serial(fullYear(second), Number(first), 1), 'mmm-yy')
  }
  const three = /^(\d{1,2})[-/](\d{1,2})[-/](\d{1,2}|\d{4})$/.exec(text)
  if (three) {
    const [, month = '', day = '', year = ''] = three
    return dated(serial(fullYear(year), Number(month), Number(day)), 'm/d/yyyy')
  }
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text)
  if (iso) return dated(serial(Number(iso[1]), Number(iso[2]), Number(iso[3])), 'm/d/yyyy')
  const words = /^(?:(\d{1,2})[- /]?)?([a-z]{3,9})(?:[- /](\d{1,4}))?$/i.exec(text)
  if (!words || (words[1] === undefined && words[3] === undefined)) return null
  const month = monthNamed(words[2] ?? '')
  if (month === 0) return null
  const [, day, , tail] = words
  if (day !== undefined && tail !== undefined)
    return dated(serial(fullYear(tail), month, Number(day)), 'd-mmm-yy')
  const dayOfMonth = serial(today.getFullYear(), month, Number(day ?? tail))
  if (dayOfMonth !== null) return dated(dayOfMonth, 'd-mmm')
  return tail === undefined ? null : dated(serial(fullYear(tail), month, 1), 'mmm-yy')
}

/** Throws InvalidArgument for a formula that Excel would not take: open quotes or brackets, or an end in mid-air. */
export function requireWellFormed(formula: string): void {
  const code = formula.replace(/"(?:[^"]|"")*"/g, '0').replace(/'(?:[^']|'')*'!/g, '')
  let depth = 0
  for (const sign of code) {
    if (sign === '(') depth++
    if (sign === ')') depth--
    if (depth < 0) break
  }
  if (depth !== 0 || code.includes('"') || /[-+*/^&=<>,(]\s*$/.test(code) || /\(\s*[*/^&<>]/.test(code))
    throw invalidArgument()
}
