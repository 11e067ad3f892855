import type { Asked } from './asked'
import type { Claim } from './claims'
import type { Token } from './tokens'

const kindsOf = (tokens: readonly Token[]) => tokens.map(({ kind }) => kind).join('')

/** A piece of a line that may be a label and an answer, and how the two are written beside each other. */
interface Pair {
  readonly label: number
  readonly answer: string
  readonly form: 'spaced' | 'grouped' | 'dash' | 'equals' | 'colon' | 'point' | 'comma'
}

/** The fewest pairs that make a run. */
const RUN = 3
const PAIRS: readonly (readonly [Pair['form'], RegExp, RegExp])[] = [
  ['spaced', /^Ns?N[.,mo]*$/, /^(\d{1,2})\n(.+)$/],
  ['grouped', /^H[.,mo]*$/, /^(\d{1,2}) (\d{3})$/],
  ['dash', /^NdN[.,mo]*$/, /^(\d{1,2})\n[-–—]\n(.+)$/],
  ['equals', /^NeN[.,mo]*$/, /^(\d{1,2})\n(.+)$/],
  ['colon', /^(?:T|LN)[.,mo]*$/, /^(\d{1,2}):\n?(.+)$/],
  ['point', /^N[.,mo]*$/, /^(\d{1,2})\.(\d+)$/],
  ['comma', /^N[.,mo]*$/, /^(\d{1,2}),(\d{3})$/],
]

/**
 * Lines such as "1 475", "2 - 321", "3:45", "1.475" with the numbers in front made labels, where these run 1, 2, 3 … `unclear` where the
 * lines may be whole numbers as well.
 */
export function withRuns(
  lines: readonly (readonly Token[])[],
  asked: Asked,
): { readonly lines: readonly (readonly Token[])[]; readonly unclear: boolean } {
  const segments = lines.map(parted)
  const pairs = segments.flatMap((parts) => parts.flatMap((part) => pairIn(part, asked) ?? []))
  const isRun = pairs.every(({ label }, index) => index === 0 || label === (pairs[index - 1]?.label ?? 0) + 1)
  if (pairs.length < RUN || !isRun) return { lines, unclear: false }
  const forms = new Set(pairs.map(({ form }) => form))
  const isOnly = (...wanted: Pair['form'][]) => [...forms].every((form) => wanted.includes(form))
  const isSplit =
    (forms.has('spaced') && isOnly('spaced', 'grouped')) ||
    isOnly('dash') ||
    isOnly('equals') ||
    isOnly('colon') ||
    (isOnly('point') && !asked.hasDecimals)
  if (!isSplit) return { lines, unclear: pairs[0]?.label === 1 }
  return { lines: segments.map((parts) => parts.flatMap((part) => split(part, asked))), unclear: false }
}

/** A line in segments: each pair of a line of nothing but pairs, else each part with its comma or full stop. */
function parted(line: readonly Token[]): Token[][] {
  const parts: Token[][] = [[]]
  const kinds = kindsOf(line)
  const pair = /^(?:N[ed]N[,.mo]*){2,}$/.test(kinds) ? 2 : /^(?:NN[mo]*){2,}$/.test(kinds) ? 1 : null
  line.forEach((token, index) => {
    const isStart = pair !== null && /^N[ed]?N/.test(kinds.slice(index)) && (parts.at(-1)?.length ?? 0) > pair
    if (isStart) parts.push([])
    parts.at(-1)?.push(token)
    if (/[,.]/.test(token.kind)) parts.push([])
  })
  return parts.filter((part) => part.length > 0)
}

function pairIn(part: readonly Token[], asked: Asked): Pair | null {
  const kinds = kindsOf(part)
  const text = part
    .filter(({ kind }) => /[NHTLd]/.test(kind))
    .map((token) => token.text)
    .join('\n')
  for (const [form, shape, written] of PAIRS) {
    const [, label, answer] = shape.test(kinds) ? (written.exec(text) ?? []) : []
    if (label !== undefined && answer !== undefined && asked.labels.has(label))
      return { label: Number(label), answer, form }
  }
  return null
}

function split(part: readonly Token[], asked: Asked): readonly Token[] {
  const pair = pairIn(part, asked)
  const [first] = part
  if (!pair || !first) return part
  const index = asked.labels.get(String(pair.label))
  const label: Token = {
    ...first,
    kind: 'L',
    text: String(pair.label),
    asked: index === undefined ? [] : [index],
  }
  const answer: Token = { ...first, kind: 'N', text: pair.answer, asked: [] }
  return [label, answer, ...part.filter(({ kind }) => /[.,mo]/.test(kind))]
}

/** What may stand before a list of answers in its own part of the sentence. */
const INTRODUCTION =
  /^(?:here|are|is|was|my|the|her|his|our|answers?|ans|in|order|maths?|sums?|work|homework|for|today'?s?|this|these|weeks?|i|we|she|he|they|got|have|has|put|so|all|ok|okay|hi|hello|results?|of|done|it|=|:|am|sending|were|they're|from)$/
/** What is not read as a list in the order of the questions, wherever it is said. */
const OTHER_ORDER =
  /\b(?:reverse|backwards|wrong order|random|mixed up|any order|not in order|out of order|jumbled|bottom to top|from the end|right to left|last to first)\b/i

/**
 * The answers of a message that lists them in the order of the questions, one for each question that is not said to be left out; null where
 * it holds no such list, or more numbers than that.
 */
export function readList(
  lines: readonly (readonly Token[])[],
  text: string,
  asked: Asked,
  skipped: ReadonlySet<number>,
): Claim[] | null {
  if (OTHER_ORDER.test(text)) return null
  const parts = lines.map(listIn).filter((part) => part !== null)
  const items = parts.flat()
  const free = asked.questions.map((_, index) => index)
  const open = items.length === free.length ? free : free.filter((index) => !skipped.has(index))
  if (items.length < 2 || items.length !== open.length) return null
  const numbers = items.flatMap(({ typed }) => typed ?? [])
  if (numbers.length < 2 || !isOneReading(items, asked) || areLabels(numbers, asked)) return null
  return items.flatMap(({ typed }, index) => {
    const question = open[index]
    return typed === null || question === undefined
      ? []
      : [{ question, typed, by: 'order', doubt: null } as Claim]
  })
}

/** An answer of a list, null where it is left out, and whether nothing but a space parts it from the next. */
interface Item {
  readonly typed: string | null
  readonly isNextClose: boolean
}

/** The answers that a line lists; null where the line is no part of a list. */
function listIn(line: readonly Token[]): Item[] | null {
  const kinds = kindsOf(line)
  const first = kinds.search(/[NHd?z]/)
  if (first < 0) return null
  const list = /^(?:[NH](?:[,sm]*[,sm]|(?=[NH.]|$))|[dz?](?:[,sm]+|$))+(?=$|\.)/.exec(
    withoutSpoken(kinds.slice(first)),
  )
  if (!list || !/[NH]/.test(list[0])) return null
  if (!isIntroduction(line.slice(0, first))) return null
  const behind = kinds.slice(first + list[0].length)
  if (!/^(?:[mowex,]*|\.[^NHTyCLk?ct]*)$/.test(behind)) return null
  return line
    .slice(first, first + list[0].length)
    .flatMap(({ kind, text }, index): Item[] =>
      /[NH]/.test(kind)
        ? [{ typed: text, isNextClose: /[NH]/.test(kinds[first + index + 1] ?? '') }]
        : /[dz?]/.test(kind)
          ? [{ typed: null, isNextClose: false }]
          : [],
    )
}

/** Words that may follow an answer, as signs, so that they do not end a list. */
function withoutSpoken(kinds: string): string {
  return kinds.replace(/(?<=[NH])o+(?=[,.]|$)/g, (all) => 'm'.repeat(all.length))
}

function isIntroduction(tokens: readonly Token[]): boolean {
  const kinds = kindsOf(tokens)
  if (/[QLOCTyk?ct]/.test(kinds)) return false
  const start = Math.max(kinds.lastIndexOf(','), kinds.lastIndexOf('.')) + 1
  return tokens
    .slice(start)
    .filter(({ kind }) => !/[mx]/.test(kind))
    .every(({ text }) =>
      text
        .toLowerCase()
        .split(/\s+/)
        .every((word) => INTRODUCTION.test(word)),
    )
}

/** Whether the numbers cannot be read as fewer, longer ones: "475 321" for three-digit questions can only be two. */
function isOneReading(items: readonly Item[], asked: Asked): boolean {
  return items.every(({ typed, isNextClose }, index) => {
    const next = items[index + 1]?.typed ?? ''
    const isGroup = isNextClose && /^\d{1,3}$/.test(typed ?? '') && /^\d{3}$/.test(next)
    return !isGroup || (typed ?? '').length + next.length > asked.mostDigits
  })
}

/** Whether the numbers are rather those of the questions: "I did 1, 2, 3". */
function areLabels(numbers: readonly string[], asked: Asked): boolean {
  const leads = numbers.map((number) => Number(/^\d+/.exec(number)?.[0] ?? NaN))
  const areConsecutive = (each: readonly number[]) => each.every((lead, index) => lead === index + 1)
  return (
    areConsecutive(leads) ||
    areConsecutive(leads.filter((_, index) => index % 2 === 0)) ||
    (new Set(numbers).size === numbers.length && numbers.every((number) => asked.labels.has(number)))
  )
}
