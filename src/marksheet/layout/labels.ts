import { readQuestion } from '../../arithmetic/question'
import { readTyped } from '../../answers/typed'
import { rowLabel } from './words'

/** What a column or row is headed with that holds pupils' names: all of the name, or a part of it. */
export type NameHeading = 'full' | 'surname' | 'first'

const SURNAME = /^(?:legal |family )?(?:surname|last ?name|family(?: name)?|last)(?:s|\(s\))?$/i
const FIRST_NAME =
  /^(?:legal |preferred )?(?:first|fore|given|christian) ?name(?:s|\(s\))?$|^first$|^known as$|^preferred(?: name)?$/i
const FULL_NAME =
  /^(?:(?:your|pupil|child|student|learner|full|display)(?:'?s)?\.? ?)*names?(?: ?\(.*\))?$|\b(?:your )?name(?: here)?[?:]$|\byour (?:full )?name\b|^(?:pupil|child|student|learner|children)s?(?: ?\/ ?\w+)?$/i
const CODE = /^(?:upn|code|i\.?d\.?|(?:pupil|child|admission|candidate)? ?(?:no\.?|number|code|id))$/i
const CLASS =
  /^\W*$|^(?:mrs?|ms|miss|dr)\b|^(?:questions?|calculations?)$|\b(?:class|year|group|set|table|house|list|register|team)\b|^(?:y|r)?\d{1,2}[a-z]{0,3}$/i
const NOT_NAMES =
  /^(?:start time|completion time|timestamp|e-?mail.*|last modified.*|language|ra|mon|tue|wed|thu|fri)\b|\b(?:notes?|comments?|score|points|marks?|total|teacher|upn|dob|birth|gender|sex|target|level|sen|send|eal|pp|feedback|topic|types?|skills?|objective|strand|focus|strateg(?:y|ies)|partner|buddy|marked by|working|reason|next steps?|method|days?|lesson|date|pages?|support|home|language|how|why|what|explain)\b/i

/** Which part of pupils' names a heading announces, or null. */
export function nameHeading(title: string): NameHeading | null {
  if (SURNAME.test(title)) return 'surname'
  if (FIRST_NAME.test(title)) return 'first'
  return FULL_NAME.test(title) ? 'full' : null
}

/** Whether a heading announces numbers or codes in place of names. */
export function isCodeHeading(title: string): boolean {
  return CODE.test(title)
}

/** Whether a heading leaves open that names stand under it: it is empty, or says which class or group they are of. */
export function isOpenHeading(title: string): boolean {
  return CLASS.test(title) || !NOT_NAMES.test(title)
}

/** Whether a heading is empty or names a class, as it may stand over the names of another marksheet. */
export function isClassHeading(title: string): boolean {
  return CLASS.test(title)
}

/** Whether a label of several words is written as a remark, with a later word of three letters or more in lower case outside brackets. */
export function isRemark(text: string): boolean {
  const words = text
    .replace(/\(.*?\)/g, '')
    .trim()
    .split(/\s+/)
  return words.slice(1).some((word) => /^\p{Ll}{3,}/u.test(word) && !PARTICLE.test(word))
}

/** Whether a row without answers is labelled as a heading of a group, a key or a sum. */
export function isHeadingLabel(text: string): boolean {
  const label = rowLabel(text)
  return label === 'nobody' || (label === 'unsure' && !text.split(/\s+/).every(isNameWord))
}

const PARTICLE = /^(?:de|da|di|du|del|della|la|le|el|al|van|von|der|den|bin|ibn|ap|y|and|&|o')$/i

/** A word as names have it: with a capital, of a script without capitals, in brackets, or a small word between names. */
function isNameWord(word: string): boolean {
  return /^[("'*]?(?!\p{Ll})[\p{L}\p{M}]/u.test(word) || PARTICLE.test(word) || /^\W+$/.test(word)
}

/** Whether every word of a text is as names have it, so that it is no sentence. */
export function hasNameWords(text: string): boolean {
  return text.split(/\s+/).every(isNameWord)
}

/** Whether a text can be a pupil's name (or a code in its place) by its look: a few words with letters, no sentence, no answer. */
export function looksLikeName(text: string): boolean {
  return (
    text.length <= 40 &&
    /\p{L}/u.test(text) &&
    !/[@:;?=%!/\\<>]|\d{3}|^[a-z0-9]{1,2}\)$|^(?:mon|tues|wednes|thurs|fri|satur|sun)day$/i.test(text) &&
    text.split(/\s+/).length <= 6 &&
    !isHeadingLabel(text) &&
    readTyped(text).kind === 'unreadable' &&
    'problem' in readQuestion(text)
  )
}

/** Whether a text can be a whole name by its look, of two words with capitals or more: "Ada B". */
export function isWholeName(text: string): boolean {
  return /\p{L}\S*\s+\p{L}/u.test(text) && looksLikeName(text) && hasNameWords(text)
}
