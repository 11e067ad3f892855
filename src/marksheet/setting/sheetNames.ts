/** How many characters Excel allows in a sheet's name. Source: Microsoft, "Rename a worksheet" (from memory). */
const MOST = 31

/** A sheet's name where `number` is 1, else the numbered one for where that is taken: "Record (2)". Never longer than Excel allows. */
export function numberedName(name: string, number: number): string {
  const end = number === 1 ? '' : ` (${number})`
  return name.slice(0, MOST - end.length).trimEnd() + end
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** A sheet's name with the day it is for ("2026-11-06"), so that weeks are told apart: "Subtraction 6 Nov". */
export function datedName(name: string, day: string): string {
  const [, month, date] = day.split('-').map(Number)
  return `${name} ${date ?? ''} ${MONTHS[(month ?? 0) - 1] ?? ''}`.trimEnd()
}

/** Whether two names are the same sheet's: Excel takes no notice of capitals. */
export function isSameSheet(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase()
}
