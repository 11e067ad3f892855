import { numfmt } from '@univerjs/core'
import type { CellValue } from './grid'

/** What a cell shows: its value under its number format, in US form. */
export function cellText(value: CellValue, numberFormat: string): string {
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  if (typeof value === 'number' || numberFormat !== 'General')
    return numfmt.format(numberFormat, value, { locale: 'en-US', throws: false })
  return value
}

/** The error values a cell can show. */
const ERRORS = /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|CALC!|SPILL!|BUSY!)$/

/** Whether a value is one of Excel's error values. */
export const isErrorValue = (value: CellValue): boolean => typeof value === 'string' && ERRORS.test(value)
