import { check, same, until } from './check'
import type { Check } from './check'

/** What cells show while a function has not answered yet. */
const WAITING = /^#(?:BUSY!|GETTING_DATA)$/

const QUESTIONS = [['12 − 7', '12 − 7', '12 − 7', '12 − 7']]
/** Cells that are empty, hold 0, an error, and a date that was made of 3-4. */
const TYPED = [['', 0, '=NA()', '3-4']]

const marked = (name: string, typed: string, wanted: readonly unknown[]): Check =>
  check(name, async (sheet, context) => {
    sheet.getRange('A1:D1').values = QUESTIONS
    sheet.getRange('A2:D2').values = TYPED
    sheet.getRange('A4').formulas = [[`=COLUMNWISE.MARK(A1:D1,${typed})`]]
    await context.sync()
    const given = sheet.getRange('A4:D4')
    const isThere = async () => {
      given.load('values')
      await context.sync()
      const [first] = given.values[0] ?? []
      return first !== '' && !WAITING.test(String(first))
    }
    await until('the answer of the function', isThere)
    same('marks', given.values, [wanted])
  })

/**
 * Excel 2508 forgot an add-in's functions once a window of it had been opened (issue 6139 of office-js, closed since): to be run after the
 * step with the windows.
 */
export const AFTER_WINDOWS: readonly Check[] = [
  marked('functions are still there after windows', 'A2:D2&""', ['blank', false, 'unreadable', false]),
]

/** What needs the add-in's own functions in cells: to be run in its pane. */
export const IN_PANE: readonly Check[] = [
  marked('functions tell an empty cell, 0, an error and a date apart where &"" is passed', 'A2:D2&""', [
    'blank',
    false,
    'unreadable',
    false,
  ]),
  marked('functions take an empty cell and a bare 0 for blank where &"" is not passed', 'A2:D2', [
    'blank',
    'blank',
    'unreadable',
    false,
  ]),
]
