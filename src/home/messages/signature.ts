import { foldText } from '../../arithmetic/numeral'
import { shortName } from '../codes'
import { ownWords } from './ownWords'

const CLOSING = String.raw`(?:from|love|thanks|thank you|many thanks|regards|kind regards|best wishes|best|cheers|by|yours)`
const INTRODUCED = (name: string) =>
  new RegExp(
    String.raw`(?:^|[\s,])(?:this is|it'?s|i am|i'm|my name is) ${name}(?![\p{L}'])|^${name} here\b|(?:^|\s)${name}'s (?:answers|homework|maths|work|sums)`,
    'iu',
  )
const HEADING = (name: string) =>
  new RegExp(String.raw`^${name}(?:'s (?:answers|work|sums|homework))? ?(?:[:–—-]|$)`, 'iu')
const SIGNED = (name: string) =>
  new RegExp(
    String.raw`^(?:[-–—~*]+ ?)?(?:${CLOSING}[,!.]* ?(?:from )?)?${name}[\s.,!x♥❤️🙂]*(?:(?:\(|,| ?age|class|year|aged)\b.*)?$`,
    'iu',
  )

/**
 * The pupils who may have written a message, or of whom it says that the answers are theirs: by a signature, a heading, the sender of a mail
 * or chat. By the full name as the class list has it, else by the first name. A guess, for the teacher to choose from; indices of `names`.
 */
export function writersOf(text: string, names: readonly string[]): number[] {
  const { lines, senders } = ownWords(text)
  const said = lines.map((line) => foldText(line).replace(/[’‘]/g, "'")).filter((line) => line !== '')
  const by = (forms: (name: string) => readonly string[]) =>
    names.flatMap((name, index) =>
      forms(foldText(name)).some((form) => isNamed(form, said, senders)) ? [index] : [],
    )
  const full = by((name) =>
    [name, foldText(shortName(name))]
      .flatMap((form) => [form, form.replace(/\.$/, '')])
      .filter((form) => form.includes(' ')),
  )
  const first = by((name) => [foldText(shortName(name)).split(' ')[0] ?? ''])
  return [...new Set([...full, ...first.filter((index) => !sameFirst(names, index, full))])]
}

/** Whether a name's first word is also that of one of the pupils who are named in full. */
function sameFirst(names: readonly string[], index: number, full: readonly number[]): boolean {
  const first = (name = '') => foldText(name).split(' ')[0]
  return full.some((other) => other !== index && first(names[other]) === first(names[index]))
}

function isNamed(form: string, lines: readonly string[], senders: readonly string[]): boolean {
  if (form.length < 2) return false
  const name = form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
  return (
    senders.some((sender) => foldText(sender) === form) ||
    lines.some((line) => INTRODUCED(name).test(line) || HEADING(name).test(line) || SIGNED(name).test(line))
  )
}
