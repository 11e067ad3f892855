import { readTyped } from '../../answers/typed'
import type { Question } from '../../arithmetic/question'
import { askedOf } from './asked'
import { readClaims, REASONS, valueOf, type Claim } from './claims'
import { readList, withRuns } from './lists'
import { ownWords } from './ownWords'
import { writersOf } from './signature'
import { foldedLine, tokensOf, type Token } from './tokens'

/** What a message says of a question: its answer as typed, why it is left for the teacher, or nothing. */
export type MessageAnswer =
  | { readonly kind: 'sure'; readonly typed: string }
  | { readonly kind: 'left'; readonly reason: string }
  | { readonly kind: 'none' }

/** The longest message that is read, in characters. */
export const LONGEST_MESSAGE = 20_000

/**
 * The answers in a pasted message (mail or chat), for each question in its order. Found by a question's number, by its calculation, or in
 * the order of the questions where there are as many answers as questions. Whatever leaves a doubt is left for the teacher with a sentence.
 * `name`: the pupil whose answers they are, whose name in the text stands for "I". Where one of the `classmates` signs it, or is named above
 * answers, all of it is left.
 */
export function readMessage(
  text: string,
  questions: readonly { readonly question: Question; readonly text: string }[],
  name = '',
  classmates: readonly string[] = [],
): MessageAnswer[] {
  if (text.length > LONGEST_MESSAGE)
    return questions.map(() => ({ kind: 'left', reason: 'The message is too long to be read.' }))
  const read = readWords(text, questions, name)
  const [writer] = writersOf(text, [name, ...classmates]).filter((index) => index > 0)
  if (writer === undefined || name === '') return read
  const reason = `The message may be ${classmates[writer - 1] ?? ''}’s.`
  return read.map((answer) => (answer.kind === 'none' ? answer : { kind: 'left', reason }))
}

function readWords(
  text: string,
  questions: readonly { readonly question: Question; readonly text: string }[],
  name: string,
): MessageAnswer[] {
  const asked = askedOf(questions)
  const own = new Set(
    foldedLine(name)
      .split(' ')
      .filter((word) => word.length > 1),
  )
  const said = ownWords(text).lines.join('\n')
  const { lines, unclear } = withRuns(
    said.split('\n').map((line) => tokensOf(line, asked, own)),
    asked,
  )
  const told = readClaims(sentencesOf(lines), asked)
  const isBare = lines.every((line) => line.every(({ kind }) => kind !== 'L'))
  const listed =
    isBare && !unclear && told.claims.every(({ by }) => by === 'label')
      ? readList(lines, said, asked, told.skipped)
      : null
  const claims = [...told.claims, ...(listed ?? [])]
  return questions.map(({ question }, index): MessageAnswer => {
    const own = claims.filter((claim) => claim.question === index)
    const reason =
      told.left.get(index) ??
      doubtOf(own, told.skipped.has(index)) ??
      (told.beyond.length > 0 && own.some(({ by }) => by === 'label')
        ? `The message speaks of a question “${told.beyond[0]?.trim()}”, which is not in this marksheet.`
        : null)
    const [first] = own
    if (reason !== null && (own.length > 0 || told.left.has(index))) return { kind: 'left', reason }
    if (!first) return { kind: 'none' }
    return readTyped(first.typed, question.unit).kind === 'number'
      ? { kind: 'sure', typed: first.typed }
      : { kind: 'left', reason: REASONS.form }
  })
}

function doubtOf(claims: readonly Claim[], isSkipped: boolean): string | null {
  const [first, ...others] = claims
  if (!first) return null
  if (others.some(({ typed }) => valueOf(typed) !== valueOf(first.typed))) return REASONS.two
  return claims.find(({ doubt }) => doubt !== null)?.doubt ?? (isSkipped ? REASONS.doubt : null)
}

/** The lines' sentences; a line that only names a question goes together with a number alone in the next line. */
function sentencesOf(lines: readonly (readonly Token[])[]): Token[][] {
  const sentences: Token[][] = []
  let isOpen = false
  for (const line of lines) {
    if (line.length === 0) continue
    const kinds = line.map(({ kind }) => kind).join('')
    const goesOn = isOpen && /^[egd]*[NH][.m]*$/.test(kinds)
    isOpen = /^f?(?:[QLO]e?|[QL]?Ce?)$/.test(kinds)
    let sentence: Token[] = goesOn ? (sentences.pop() ?? []) : []
    for (const token of line) {
      if (token.kind === '.') {
        if (sentence.length > 0) sentences.push(sentence)
        sentence = []
      } else sentence.push(token)
    }
    if (sentence.length > 0) sentences.push(sentence)
  }
  return sentences
}
