import type { Asked } from './asked'
import { NOISE, PHRASES, SPELT, type Kind } from './words'

/** A piece of a line: what it is, the text as it was typed, and for a label or a calculation the questions that it can be. */
export interface Token {
  readonly kind: Kind
  readonly text: string
  /** Indices of questions, for Q, L, O and C; empty where the marksheet has no such question. */
  readonly asked: readonly number[]
  readonly start: number
  readonly end: number
}

const COUNTING =
  'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  )
const ORDINALS =
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth'.split(
    ' ',
  )

const NAMED = new RegExp(
  String.raw`(?:(?:questions?|qu?e?s?t?n|qu|q|number|num|no|nr|sum|problem|calculation|part)(?: number| no\.?)?\.? ?[-#]?|# ?)\(?(\d{1,3}[a-z]?|${COUNTING.join('|')})(?![a-z\d]|,\d{3}|\.\d+\.|\/)\)?(?:'s(?![a-z]))?(?: ?(?:[):\]]|\.(?! *(?:q|number|$)))+)?(?: ?[-–—](?=\d|£))?`,
  'y',
)
const NAMED_ANSWER =
  /(?:answers?|ans)\.? ?(\d{1,3}[a-z]?)(?![a-z\d]|,\d{3}|\.\d)(?= ?[):=]| is | was )(?: ?[):])?/y
const ORDINAL = new RegExp(
  String.raw`(?:(${ORDINALS.join('|')})|(\d{1,2})(?:st|nd|rd|th))(?![a-z\d])( (?:one|question|answer|sum|calculation|problem|q)(?![a-z]))?`,
  'y',
)
const NUMBER = String.raw`£ ?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?|(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?|\.\d+`
const UNITS = String.raw`(?: ?(?:kg|km|cm|mm|ml|g|m|l|p)(?![a-z]))?`
const OPERAND = `(?:${NUMBER})${UNITS}`
const SPACED = String.raw`\d{1,3}(?: \d{3})+(?!\d)`
const GAP = String.raw`[□▢☐◻⬜◯○]|_+|\?+|\[ ?\]|\.{3,}`
const SIGN = String.raw` ?(?:[-−–—‐‑‒➖+➕]| take ?away | minus | subtract | plus | add | less )+ ?`
const NOT_LABEL = String.raw`(?![\d]|[,.]\d)`
const SUMS = [
  new RegExp(`(?:${OPERAND}|${GAP})${SIGN}(?:${OPERAND}|${GAP}) ?= ?(?:${OPERAND}|${GAP})${NOT_LABEL}`, 'y'),
  new RegExp(`(?:${SPACED}|${OPERAND})${SIGN}(?:${SPACED}|${OPERAND})${NOT_LABEL}`, 'y'),
  new RegExp(
    `(?:take(?: away)?|subtract) (?:${SPACED}|${OPERAND}) (?:away )?from (?:${SPACED}|${OPERAND})${NOT_LABEL}`,
    'y',
  ),
  new RegExp(`add (?:${SPACED}|${OPERAND}) to (?:${SPACED}|${OPERAND})${NOT_LABEL}`, 'y'),
]
const PLAIN_SUM = new RegExp(
  `${OPERAND}${SIGN}${OPERAND}${NOT_LABEL}(?=(?: ?[=]| is| equals| makes| was))`,
  'y',
)
const BRACKETED = /\((\d{1,3}[a-z]?|[a-z])\)/y
const LABEL =
  /(\d{1,3}[a-z]?|[a-h])(?: ?[)\]]|\.\)|[.:](?=\s|$|£)|:(?=\d{3}|\d{1,2}(?!\d)|\d,))(?: ?[-–—](?= ))?/y
const TIME = /(\d{1,2}):(\d{2})(?!\d|:)/y
const NUMERAL = new RegExp(`(?:${NUMBER})(?: ?p(?![a-z\\d]))?`, 'y')
const GROUPED = new RegExp(`£?${SPACED}`, 'y')
const WORD = /[\p{L}\p{M}]+(?:['’][\p{L}\p{M}]+)*/uy
const SIGNS: Readonly<Record<string, Kind>> = {
  ',': ',',
  ';': ',',
  '!': '.',
  '?': '?',
  '=': 'e',
  ':': 'e',
  '→': 'e',
  '&': 's',
  '|': 's',
}

/** A line with variants of signs folded, every sign in its place: full-width digits, capitals, all kinds of
 * spaces and quotes; a tab is a line between cells. */
export function foldedLine(line: string): string {
  return Array.from(line, (sign) => {
    if (sign === '\t') return '|'
    if (/\s/.test(sign)) return ' '
    if (sign === '’' || sign === '‘' || sign === '`') return "'"
    const folded = sign.normalize('NFKC').toLowerCase()
    return folded.length === sign.length ? folded : sign
  }).join('')
}

/** The tokens of a line. `own` are words that stand for the sender: the pupil's names. */
export function tokensOf(line: string, asked: Asked, own: ReadonlySet<string>): Token[] {
  const plain = line
    .replace(/([0-9])\ufe0f?\u20e3/g, '$1) ')
    .replace(/(\*{1,2})([^*\s]{1,8})\1/g, (all, stars: string, bold: string) =>
      bold.padEnd(all.length - stars.length).padStart(all.length),
    )
  const folded = foldedLine(plain)
  const source = folded.length === line.length ? line : folded
  const tokens: Token[] = []
  let at = 0
  while (at < folded.length) {
    if (folded[at] === ' ') {
      at++
      continue
    }
    const { kind, end, asked: can = [] } = next(folded, at, asked, own, tokens)
    if (kind !== null) tokens.push({ kind, text: source.slice(at, end), asked: can, start: at, end })
    at = end
  }
  return tokens
}

interface Found {
  readonly kind: Kind | null
  readonly end: number
  readonly asked?: readonly number[]
}

function next(
  line: string,
  at: number,
  asked: Asked,
  own: ReadonlySet<string>,
  before: readonly Token[],
): Found {
  const isWordStart = !/[\p{L}\d]/u.test(line[at - 1] ?? ' ')
  const match = (form: RegExp) => {
    form.lastIndex = at
    return form.exec(line)
  }
  const label = (text: string): number[] => {
    const index = asked.labels.get(text.replace(/\s/g, ''))
    return index === undefined ? [] : [index]
  }
  if (isWordStart) {
    for (const form of NOISE) {
      const found = match(form)
      if (found && !isNamed(line, at, asked)) return { kind: 'x', end: at + found[0].length }
    }
    const named = match(NAMED) ?? match(NAMED_ANSWER)
    if (named) {
      const [all, name = ''] = named
      const counted = COUNTING.indexOf(name)
      return { kind: 'Q', end: at + all.length, asked: label(counted < 0 ? name : String(counted + 1)) }
    }
    const ordinal = match(ORDINAL)
    if (ordinal) {
      const [all, word, number, noun] = ordinal
      const place = word === undefined ? Number(number) : ORDINALS.indexOf(word) + 1
      return { kind: noun === undefined ? 'O' : 'Q', end: at + all.length, asked: label(String(place)) }
    }
    const sum = sumAt(line, at, asked, match)
    if (sum) return sum
    const bracketed = match(BRACKETED)
    if (bracketed && label(bracketed[1] ?? '').length > 0)
      return { kind: 'L', end: at + bracketed[0].length, asked: label(bracketed[1] ?? '') }
    const time = match(TIME)
    if (time && Number(time[2]) < 60)
      return { kind: 'T', end: at + time[0].length, asked: label(time[1] ?? '') }
    const marked = match(LABEL)
    if (marked && mayBeLabel(marked, before, line, at, asked))
      return { kind: 'L', end: at + marked[0].length, asked: label(marked[1] ?? '') }
  }
  const number = numberAt(line, at, asked, before, match)
  if (number) return number
  if (isWordStart) {
    const word = match(WORD)
    if (word && own.has(word[0])) return { kind: 'o', end: at + word[0].length }
    const spelt = match(SPELT)
    if (spelt) return { kind: 'y', end: at + spelt[0].length }
    for (const [kind, form] of PHRASES) {
      const found = match(form)
      if (found) return { kind, end: at + found[0].length }
    }
    if (word) return { kind: word[0] === 'the' ? null : 'w', end: at + word[0].length }
  }
  return signAt(line, at, before)
}

/** Whether a question is named by number here, though it looks like a number that is no answer ("no 3"). */
function isNamed(line: string, at: number, asked: Asked): boolean {
  NAMED.lastIndex = at
  const named = NAMED.exec(line)
  return named !== null && asked.labels.size > 0
}

function sumAt(
  line: string,
  at: number,
  asked: Asked,
  match: (form: RegExp) => RegExpExecArray | null,
): Found | null {
  const isLabelled = (sum: string) => {
    const open = line.slice(0, at)
    return /^ ?\)/.test(line.slice(at + sum.length)) && open.split('(').length <= open.split(')').length
  }
  for (const form of SUMS) {
    const found = match(form)
    const stated = found && !isLabelled(found[0]) ? asked.sums(found[0]) : []
    if (found && stated.length > 0) return { kind: 'C', end: at + found[0].length, asked: stated }
  }
  const other = match(PLAIN_SUM)
  return other && !isLabelled(other[0]) ? { kind: 'C', end: at + other[0].length, asked: [] } : null
}

/** Whether a number with a mark behind it stands where a list's number can: at the start, behind a mark, behind what came before. */
function mayBeLabel(
  [all, name = '']: RegExpExecArray,
  before: readonly Token[],
  line: string,
  at: number,
  asked: Asked,
): boolean {
  const behind = line.slice(at + all.length).trim()
  if (!asked.labels.has(name) && !(/^\d{1,2}$/.test(name) && /^£?\d/.test(behind))) return false
  if (behind === '' && /[.:]$/.test(all) && before.length > 0) return false
  const last = before.at(-1)
  if (last === undefined || /[.,sm?zxo]/.test(last.kind)) return true
  if (/[NH]/.test(last.kind)) return true
  if (/[LQC]/.test(last.kind)) return false
  if (last.kind === 'e') return line[last.start] === ':' && !/[QLOC]/.test(before.at(-2)?.kind ?? '')
  if (/[)\]]/.test(all))
    return (
      !line.slice(0, at).includes('(') ||
      line.slice(0, at).split('(').length === line.slice(0, at).split(')').length
    )
  const following = new RegExp(`\\s${Number(name) + 1}[.:]\\s`)
  return /[wg]/.test(last.kind) && name === '1' && following.test(line.slice(at))
}

function numberAt(
  line: string,
  at: number,
  asked: Asked,
  before: readonly Token[],
  match: (form: RegExp) => RegExpExecArray | null,
): Found | null {
  const minus = /[-−–](?=£?\.?\d)/y
  minus.lastIndex = at
  if (minus.test(line) && (at === 0 || /[\s=:,(]/.test(line[at - 1] ?? '') || before.at(-1)?.kind === 'L')) {
    const whole = /[-−–]£?[\d.,]+/y
    whole.lastIndex = at
    return { kind: 'y', end: at + (whole.exec(line)?.[0].length ?? 1) }
  }
  const spaced = match(GROUPED)
  const grouped = spaced && spaced[0].replace(/\D/g, '').length <= asked.mostDigits ? spaced : null
  const numeral = match(NUMERAL)
  const found = grouped ?? numeral
  if (!found) return null
  const end = at + found[0].length
  if (
    /^(?:[\p{L}\d°½¼¾²³%*×÷/^]|[.,:]\d|\.{0}['’]\w)/u.test(line.slice(end)) ||
    /[\p{L}]/u.test(line[at - 1] ?? '')
  ) {
    const whole = /[£\d\p{L}.,:/°½¼¾²³%*×÷^]*[\p{L}\d%°½¼¾²³]/uy
    whole.lastIndex = at
    return { kind: 'y', end: Math.max(end, at + (whole.exec(line)?.[0].length ?? 0)) }
  }
  return { kind: grouped ? 'H' : 'N', end }
}

function signAt(line: string, at: number, before: readonly Token[]): Found {
  const arrow = /(?:-+|=+|~+)>|={2,}|>/y
  arrow.lastIndex = at
  const arrowed = arrow.exec(line)
  if (arrowed) return { kind: 'e', end: at + arrowed[0].length }
  const face = /[:;]['’]?-?[)(dpo](?![\p{L}\d])/uy
  face.lastIndex = at
  const faced = face.exec(line)
  if (faced) return { kind: 'm', end: at + faced[0].length }
  const sign = line[at] ?? ''
  if (sign === '.') return { kind: /^\.+(?:\s|$|\p{L})/u.test(line.slice(at)) ? '.' : null, end: at + 1 }
  if (/[-−–—]/.test(sign)) return { kind: before.length === 0 ? null : 'd', end: at + 1 }
  if (/[+×÷*/^<%]/.test(sign)) return { kind: before.length === 0 ? null : 'y', end: at + 1 }
  const known = before.length === 0 && sign === '|' ? null : SIGNS[sign]
  if (known !== undefined) return { kind: known, end: at + 1 }
  if (/["'“”«»#@~_\\]/.test(sign)) return { kind: null, end: at + 1 }
  const size = (line.codePointAt(at) ?? 0) > 0xffff ? 2 : 1
  return { kind: 'm', end: at + size }
}
