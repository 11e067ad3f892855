/** How many characters Excel allows in a sheet's name. Source: Microsoft, "Rename a worksheet" (from memory). */
const MOST = 31

/** A sheet's name where `number` is 1, else the numbered one for where that is taken: "Record (2)". Never longer than Excel allows. */
export function numberedName(name: string, number: number): string {
  const end = number === 1 ? '' : ` (${number})`
  return name.slice(0, MOST - end.length).trimEnd() + end
}

/** Whether two names are the same sheet's: Excel takes no notice of capitals. */
export function isSameSheet(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase()
}
