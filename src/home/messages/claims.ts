import { readTyped } from '../../answers/typed'
import type { Asked } from './asked'
import type { Token } from './tokens'

/** An answer that a message gives to a question, in the words of the message. `doubt` says why it is not sure. */
export interface Claim {
  readonly question: number
  readonly typed: string
  readonly by: 'label' | 'sum' | 'order'
  doubt: string | null
}

/** What is said of the questions, sentence by sentence. */
export interface Claims {
  readonly claims: Claim[]
  /** Questions that the message says are not done, or doubts. */
  readonly skipped: Set<number>
  /** Questions that a number or a doubt stands beside, with the reason why it is left for the teacher. */
  readonly left: Map<number, string>
  /** Numbers of questions that the marksheet does not have, with an answer behind them. */
  readonly beyond: string[]
}

export const REASONS = {
  more: 'More than one number stands beside it.',
  near: 'A number stands near it, but not clearly as its answer.',
  doubt: 'A doubt, a correction or another person stands beside it.',
  two: 'It has two different answers.',
  mixed: 'Its number and the calculation beside it do not go together.',
  twin: 'The calculation is asked more than once.',
  minus: 'What stands there may be a minus sign or a dash.',
  form: 'What stands there is not written as a plain number.',
  together: 'Several questions are named together.',
} as const

/** A run of tokens that has been understood: the answers in it, and the questions that it says are not done. */
interface Piece {
  readonly from: number
  readonly to: number
  readonly claims: Claim[]
}

const kindsOf = (tokens: readonly Token[]) => tokens.map(({ kind }) => kind).join('')

/** Reads the sentences of a message, each a list of tokens, one after another. */
export function readClaims(sentences: readonly (readonly Token[])[], asked: Asked): Claims {
  const found: Claims = { claims: [], skipped: new Set(), left: new Map(), beyond: [] }
  let last: readonly Claim[] = []
  for (const sentence of sentences) {
    const reader = new SentenceReader(sentence, asked, found)
    const pieces = reader.read()
    const claims = pieces.flatMap((piece) => piece.claims)
    if (pieces.length === 0 && isAfterthought(kindsOf(sentence)))
      for (const claim of last) spoil(claim, REASONS.doubt)
    if (claims.length > 0) last = claims.slice(-1)
  }
  return found
}

/** Whether a sentence without an answer of its own may correct the one before: "no wait, 68", a number alone. */
function isAfterthought(kinds: string): boolean {
  return /[NHy]/.test(kinds) && !/[QLC]/.test(kinds) && (/[ck]/.test(kinds) || /^[NHyegdsm,]+$/.test(kinds))
}

function spoil(claim: Claim, reason: string): void {
  claim.doubt ??= reason
}

class SentenceReader {
  readonly #kinds: string

  constructor(
    private readonly tokens: readonly Token[],
    private readonly asked: Asked,
    private readonly found: Claims,
  ) {
    this.#kinds = kindsOf(tokens)
  }

  read(): Piece[] {
    const pieces: Piece[] = []
    for (let at = 0; at < this.tokens.length;) {
      const piece = this.#pieceAt(at, pieces.at(-1)?.to ?? 0)
      if (piece) {
        pieces.push(piece)
        this.found.claims.push(...piece.claims)
      }
      at = piece && piece.to > at ? piece.to : at + 1
    }
    this.#lookBetween(pieces)
    return pieces
  }

  #pieceAt(at: number, from: number): Piece | null {
    return (
      this.#skipped(at) ??
      this.#summed(at, from) ??
      this.#summedBefore(at) ??
      this.#named(at, from) ??
      this.#bare(at) ??
      this.#namedBehind(at)
    )
  }

  #rest(at: number): string {
    return this.#kinds.slice(at)
  }

  #match(form: RegExp, at: number): number | null {
    return form.exec(this.#rest(at))?.[0].length ?? null
  }

  /** "I didn't do 5 or 6", "5) skipped", "7: -". */
  #skipped(at: number): Piece | null {
    const listed = this.#match(/^z(?:[,s?f]*[QLON](?![eg,d]*[NH]))+/, at)
    const said = this.#match(/^[QLO][,e]*(?:d?g?z|d(?=$|[,.sQLOm]))/, at)
    const length = listed ?? said
    if (length === null) return null
    const named = this.tokens.slice(at, at + length).flatMap((token) => this.#labelled(token))
    for (const question of named) this.found.skipped.add(question)
    return { from: at, to: at + length, claims: [] }
  }

  /** "932-457=475", "1) 932 - 457 = 475", "for 7214 - 86 I got 7128", "76 - 46 = 30" for a gap. */
  #summed(at: number, from: number): Piece | null {
    const length =
      this.#match(/^f?(?:[QLON][,xedm]*g?)?Cm?,?[egd]*[eg][egd]*[NH]/, at) ??
      (at === 0 ? this.#match(/^C[NH](?=[.,mo]*$)/, at) : null)
    if (length === null) return null
    const tokens = this.tokens.slice(at, at + length)
    const sum = tokens.find(({ kind }) => kind === 'C')
    const answer = tokens.at(-1)
    if (!sum || !answer) return null
    const label = tokens.find(({ kind }) => /[QLON]/.test(kind))
    const named = label && label !== answer ? this.#labelled(label) : []
    const filled = sum.asked.length === 0 ? this.asked.filled(sum.text, answer.text) : []
    const stated = sum.asked.length > 0 ? sum.asked : filled.map(({ index }) => index)
    if (label && label !== answer && label.kind === 'N' && !named.some((index) => stated.includes(index)))
      return null
    const piece = { from: at, to: at + length, claims: [] as Claim[] }
    if (stated.length === 0) {
      for (const index of named) this.#leave(index, REASONS.mixed)
      if (named.length === 0) this.#explain(piece, from)
      return piece
    }
    const both = named.length === 0 ? stated : stated.filter((index) => named.includes(index))
    const [question] = both
    if (question === undefined) {
      for (const index of [...named, ...stated]) this.#leave(index, REASONS.mixed)
      return piece
    }
    const part = filled.find(({ index }) => index === question)?.part
    const typed = part === undefined ? answer.text : partOf(sum.text, part)
    const claim: Claim = { question, typed, by: 'sum', doubt: both.length > 1 ? REASONS.twin : null }
    if (both.length > 1) for (const index of both) this.#leave(index, REASONS.twin)
    return { ...piece, claims: [this.#ended(claim, at + length)] }
  }

  /** "475 = 932 - 457". */
  #summedBefore(at: number): Piece | null {
    const length = this.#match(/^[NH]eC(?=$|[,.sm])/, at)
    const [answer, sign, sum] = this.tokens.slice(at, at + 3)
    if (length === null || !answer || sign?.text !== '=' || !sum) return null
    const before = this.tokens[at - 1]
    const [question] = sum.asked
    if (question === undefined || (before && !/[,.smow]/.test(before.kind))) return null
    const doubt = sum.asked.length > 1 ? REASONS.twin : null
    return { from: at, to: at + length, claims: [{ question, typed: answer.text, by: 'sum', doubt }] }
  }

  /** "Q3 is 86", "3) 86", "question 5: I got 321", "third, 86". */
  #named(at: number, from: number): Piece | null {
    const length =
      this.#match(/^f?[QL][,xm]?(?:eo{1,3}[,so]{0,2})?(?:o?[egd]){0,3}[NH]/, at) ??
      this.#match(/^f?O(?:,|[ed]g?e?)[NH]/, at) ??
      (/\d/.test(this.tokens[at]?.text ?? '') ? this.#match(/^O[NH]/, at) : null)
    if (length === null) return null
    const tokens = this.tokens.slice(at, at + length)
    const label = tokens.find(({ kind }) => /[QLO]/.test(kind))
    const answer = tokens.at(-1)
    if (!label || !answer) return null
    const [question] = label.asked
    if (question === undefined) {
      if (/^[£\d.,]*$/.test(answer.text) && label.kind !== 'O') this.found.beyond.push(label.text)
      return { from: at, to: at + length, claims: [] }
    }
    const claim: Claim = { question, typed: answer.text, by: 'label', doubt: null }
    const together = /[QLO][s,dx]*$/.exec(this.#kinds.slice(from, at))
    if (together) {
      spoil(claim, REASONS.together)
      const other = this.tokens[from + together.index]
      for (const index of other?.asked ?? []) this.#leave(index, REASONS.together)
    }
    return { from: at, to: at + length, claims: [this.#ended(claim, at + length)] }
  }

  /** "4 was 1,204", "for 3 I got 86". */
  #bare(at: number): Piece | null {
    const before = this.tokens[at - 1]
    const isThought = before?.kind === 'g' && /think|reckon|believe/i.test(before.text)
    if (before && !isThought && !/[,.smo]/.test(before.kind) && this.tokens[at]?.kind !== 'f') return null
    const length = this.#match(/^f?Ne,?g?e?[NH]/, at) ?? this.#match(/^fN,?ge?[NH]/, at)
    if (length === null) return null
    const [first, ...others] = this.tokens.slice(at, at + length)
    const label = first?.kind === 'f' ? others[0] : first
    const answer = others.at(-1)
    const [question] = label ? this.#labelled(label) : []
    if (question === undefined || !answer) return null
    const claim: Claim = { question, typed: answer.text, by: 'label', doubt: null }
    return { from: at, to: at + length, claims: [this.#ended(claim, at + length)] }
  }

  /** "475 for Q1", "I got 86 for 3", "475 is the answer to question 1", "475 for 932 - 457". */
  #namedBehind(at: number): Piece | null {
    const length =
      this.#match(/^g?e?[NH](?:e?f|ef?)[QOC](?![,egd]*[NH](?![e]?f[QOC]))/, at) ??
      this.#match(/^ge?[NH]fN(?![,egd]*[NH](?!f))/, at)
    if (length === null) return null
    const tokens = this.tokens.slice(at, at + length)
    const answer = tokens.find(({ kind }) => /[NH]/.test(kind))
    const label = tokens.at(-1)
    if (!answer || !label) return null
    const named = this.#labelled(label)
    const [question] = named
    if (question === undefined) return null
    const by = label.kind === 'C' ? 'sum' : 'label'
    const doubt = named.length > 1 ? REASONS.twin : null
    const after = this.#rest(at + length)
    const claim: Claim = { question, typed: answer.text, by, doubt }
    if (/^s?[QLO]|^[sd,]*[QLO](?![,egd]*[NH])/.test(after)) spoil(claim, REASONS.together)
    return { from: at, to: at + length, claims: [claim] }
  }

  /** The questions that a token names: a bare number its label. */
  #labelled({ kind, text, asked }: Token): readonly number[] {
    if (kind !== 'N') return /[QLOC]/.test(kind) ? asked : []
    const index = this.asked.labels.get(text)
    return index === undefined ? [] : [index]
  }

  #leave(question: number, reason: string): void {
    if (!this.found.left.has(question)) this.found.left.set(question, reason)
  }

  /** The claim, in doubt where what follows it does not let its number stand alone. */
  #ended(claim: Claim, at: number): Claim {
    const rest = this.#rest(at)
    const forward = /^f[QLOC][,x]?[egd]{0,3}[NH]/.test(rest)
    if (/^f[QLOCN]/.test(rest) && !forward) {
      spoil(claim, REASONS.near)
      for (const token of this.tokens.slice(at + 1, at + 2))
        for (const index of this.#labelled(token)) this.#leave(index, REASONS.near)
    }
    if (this.tokens[at - 1]?.kind === 'H' && claim.by === 'label') spoil(claim, REASONS.more)
    const isWord = /^[24]$/.test(claim.typed) && /^[owge]/.test(rest)
    if (/^[NHyT]/.test(rest)) spoil(claim, REASONS.more)
    else if (/^[?kctwz]/.test(rest) || isWord) spoil(claim, REASONS.doubt)
    return claim
  }

  /** A calculation of no question of ours is a check or working where all its numbers stand in the answer before it. */
  #explain(piece: Piece, from: number): void {
    const near = new Set(
      this.tokens.slice(from === 0 ? 0 : from - 4, piece.from).flatMap(({ text }) => numbersIn(text)),
    )
    const own = this.tokens.slice(piece.from, piece.to).flatMap(({ text }) => numbersIn(text))
    if (own.every((number) => near.has(number))) return
    const before = this.found.claims.at(-1)
    if (before && from > 0) spoil(before, REASONS.more)
  }

  /** What stands before, between and behind the pieces: a number or a doubt there makes what it stands beside unsure. */
  #lookBetween(pieces: readonly Piece[]): void {
    const edges = [
      ...pieces.map((piece, index) => ({ from: pieces[index - 1]?.to ?? 0, to: piece.from })),
      { from: pieces.at(-1)?.to ?? 0, to: this.tokens.length },
    ]
    edges.forEach(({ from, to }, index) => {
      const before = pieces[index - 1]?.claims.at(-1)
      const after = pieces[index]?.claims[0]
      this.#lookAt(this.tokens.slice(from, to), before, after)
    })
  }

  #lookAt(tokens: readonly Token[], before: Claim | undefined, after: Claim | undefined): void {
    const own = [before, after].flatMap((claim) => (claim ? [valueOf(claim.typed)] : []))
    const isStray = (token: Token) => /[NHyT]/.test(token.kind) && !own.includes(valueOf(token.text))
    const starts = tokens.flatMap((token, index) =>
      /[QLOC]/.test(token.kind) && token.asked.length > 0 ? [index] : [],
    )
    const parts = [0, ...starts].map((start, index) => tokens.slice(start, starts[index] ?? tokens.length))
    parts.forEach((part, index) => {
      const [ref] = index === 0 ? [] : part
      const isMore = part.some(isStray)
      const isDoubt = part.some(({ kind }) => /[?kct]/.test(kind))
      const isLast = index === parts.length - 1
      const reason = isMore ? REASONS.more : isDoubt ? REASONS.doubt : null
      if (reason === null) return
      for (const question of ref?.asked ?? []) {
        if (isMore) this.#leave(question, REASONS.near)
        else this.found.skipped.add(question)
      }
      if (index === 0 && before) spoil(before, reason)
      const isOnlyCorrection = !isMore && part.every(({ kind }) => !/[?kt]/.test(kind))
      if (isLast && after && !(isOnlyCorrection && index === 0)) spoil(after, reason)
    })
  }
}

/** The first or second number of a calculation, as it was typed. */
function partOf(sum: string, part: 'first' | 'second'): string {
  const numbers = sum.match(/£? ?\d[\d,. ]*(?:\s?p\b)?/g) ?? []
  return (part === 'first' ? numbers[0] : numbers.at(-1))?.trim() ?? ''
}

function numbersIn(text: string): string[] {
  return (text.match(/\d[\d,]*(?:\.\d+)?/g) ?? []).map(valueOf)
}

/** One text for the same number however it is typed. */
export function valueOf(typed: string): string {
  const read = readTyped(typed)
  return read.kind === 'number' ? read.value : typed
}
