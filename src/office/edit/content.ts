/**
 * What is written into a cell: a text stays a text whatever it looks like ('' empties the cell), a number is a number, a formula is one;
 * null leaves the cell as it is.
 */
export type Content = string | number | { readonly formula: string } | null

/** Words of letters alone, of which Excel makes nothing else. */
const WORDS_ALONE = /^(?!(?:true|false)$)\p{L}[\p{L} ,;.’-]*$/iu

const ERROR = /^#(?:N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!|SPILL!|CALC!)$/

/** A text as it must be passed so that it stays a text: behind an apostrophe where Excel could read a date, a number or a formula in it. */
export function asText(text: string): string {
  return text === '' || WORDS_ALONE.test(text) ? text : `'${text}`
}

/** Contents as the client library takes them. */
export function passed(content: Content): string | number | null {
  if (content === null || typeof content === 'number') return content
  return typeof content === 'string' ? asText(content) : content.formula
}

/** What a cell held, by its value and its formula, as it must be passed so that it holds the same again. */
export function passedBack(value: unknown, formula: unknown): unknown {
  if (typeof value !== 'string' && value === formula) return value
  if (typeof formula === 'string' && formula.startsWith('=') && formula !== value) return formula
  return typeof value === 'string' && !ERROR.test(value) ? asText(value) : value
}

/** Whether a cell took what was written to it; how Excel keeps breaks and spaces does not matter. */
export function took(content: Content, value: unknown, formula: unknown): boolean {
  const inShort = (text: unknown) => String(text).replace(/\s+/g, ' ').trim()
  return (
    holds(content, value, formula) || (typeof content === 'string' && inShort(content) === inShort(value))
  )
}

/** Whether a cell holds what was written to it. (A cell with the format Text makes a text of a number.) */
export function holds(content: Content, value: unknown, formula: unknown): boolean {
  if (content === null) return true
  return typeof content === 'object' ? formula === content.formula : String(value) === String(content)
}
