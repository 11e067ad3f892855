import { foldText } from '../arithmetic/numeral'
import { printQuestion, type Question } from '../arithmetic/question'
import { hashText } from '../items/seed'

/** No vowels, so that no code is a word, and no two signs that look alike. */
const SIGNS = '23456789BCDFGHJKMNPQRSTVWXZ'
const LENGTH = 6

/** How a set's and a child's code look in a text. */
export const SET_CODE = new RegExp(`\\bS[${SIGNS}]{${LENGTH}}\\b`)
export const CHILD_CODE = new RegExp(`\\bC[${SIGNS}]{${LENGTH}}\\b`)

/** The code of a set: the same for the same questions in the same order, however they are written. */
export function setCode(questions: readonly Question[]): string {
  return `S${coded(JSON.stringify(questions.map(printQuestion)))}`
}

/**
 * The codes of children in a set, in the order of their full names: worked out from name and set, so that no list is kept, and another one
 * in each set. Of several with one name the second has the code of the second, and so on. Two names may have one code by chance (one
 * pair of children in 387 million): whoever looks a code up must take two for a doubt.
 */
export function childCodes(names: readonly string[], set: string): string[] {
  const seen = new Map<string, number>()
  return names.map((name) => {
    const folded = foldText(name)
    const nth = (seen.get(folded) ?? 0) + 1
    seen.set(folded, nth)
    return `C${coded(JSON.stringify([set, folded, nth]))}`
  })
}

/** What stands in a home workbook for a full name: first name and initial ("Ada K."), or '' where the name gives none. */
export function shortName(name: string): string {
  const [surname = '', given] = name.split(',').map((part) => part.trim())
  const address = /^([^@\s]+)@/.exec(name.trim())?.[1]
  const words = (given === undefined ? name : `${given} ${surname}`)
    .normalize('NFC')
    .split(/\s+/)
    .filter((word) => /[\p{L}\p{N}]/u.test(word))
  if (address !== undefined || words.length === 0) return ''
  const [first = '', ...more] = words
  const initial = /[\p{L}\p{N}]\p{M}*/u.exec(more.at(-1) ?? '')?.[0]
  return initial === undefined ? first : `${first} ${initial.toLocaleUpperCase('en-GB')}.`
}

function coded(text: string): string {
  let rest = hashText(text)
  return Array.from({ length: LENGTH }, () => {
    const sign = SIGNS.charAt(rest % SIGNS.length)
    rest = Math.floor(rest / SIGNS.length)
    return sign
  }).join('')
}
