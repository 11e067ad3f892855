/** The right answer to one question and what was typed, both as valueText writes them; null where nothing usable was typed. */
export interface TypedItem {
  readonly answer: string
  readonly value: string | null
}

/**
 * Answers that went wrong on the way into the sheet. `count` of the `tried` answers are concerned.
 * - moved: the right answers, `by` cells further along than they belong (below 0: further back).
 * - out by: right but for one `amount`, what was typed less the right answer, as text ("10", "-0.5").
 */
export type TypingTrouble =
  | { readonly kind: 'moved'; readonly by: number; readonly count: number; readonly tried: number }
  | { readonly kind: 'out by'; readonly amount: string; readonly count: number; readonly tried: number }

const LEAST_IN_RUN = 3
const LEAST_OUT_BY = 4
const NEARLY_ALL = 0.8

/**
 * Whether answers were typed into the wrong cells (at least three different ones in a run, each wrong where it stands, empty
 * cells between not counting) or nearly all are out by one same amount (at least four, and four in five). `items` in the order
 * of the cells. `explained`: the indices of the answers that a named fault gives; where these are all that is concerned, it is
 * the fault and no typing (a ten never reduced leaves every such answer ten too great). Null where there is nothing of the kind.
 */
export function typingTrouble(
  items: readonly TypedItem[],
  explained: readonly number[] = [],
): TypingTrouble | null {
  const tried = items.filter(({ value }) => value !== null).length
  const wrong = items.flatMap(({ answer, value }, index) =>
    value !== null && value !== answer ? [index] : [],
  )
  if (wrong.length < LEAST_IN_RUN) return null
  const byFault = new Set(explained)
  const isOwn = (concerned: readonly number[]) => concerned.some((index) => !byFault.has(index))
  const moved = movedAlong(items, wrong)
  if (moved && isOwn(moved.concerned))
    return { kind: 'moved', by: moved.by, count: moved.concerned.length, tried }
  const out = outByOneAmount(items, wrong, tried)
  return out && isOwn(out.concerned)
    ? { kind: 'out by', amount: out.amount, count: out.concerned.length, tried }
    : null
}

/** The shift that most answers are moved by, of equals the least, where it has a run; with the indices of these answers. */
function movedAlong(
  items: readonly TypedItem[],
  wrong: readonly number[],
): { by: number; concerned: number[] } | null {
  const shifts = new Map<number, number[]>()
  for (const index of wrong)
    for (const [place, { answer }] of items.entries()) {
      if (items[index]?.value !== answer) continue
      const by = index - place
      shifts.set(by, [...(shifts.get(by) ?? []), index])
    }
  return [...shifts]
    .sort(([one], [other]) => Math.abs(one) - Math.abs(other) || other - one)
    .reduce<{ by: number; concerned: number[] } | null>(
      (best, [by, concerned]) =>
        concerned.length > (best?.concerned.length ?? 0) && hasRun(items, new Set(concerned))
          ? { by, concerned }
          : best,
      null,
    )
}

function hasRun(items: readonly TypedItem[], moved: ReadonlySet<number>): boolean {
  let run = new Set<string>()
  return items.some((item, index) => {
    if (item.value === null) return false
    run = moved.has(index) ? run.add(item.value) : new Set()
    return run.size >= LEAST_IN_RUN
  })
}

function outByOneAmount(
  items: readonly TypedItem[],
  wrong: readonly number[],
  tried: number,
): { amount: string; concerned: number[] } | null {
  const least = Math.max(LEAST_OUT_BY, NEARLY_ALL * tried)
  if (wrong.length < least) return null
  const byAmount = new Map<string, number[]>()
  for (const index of wrong) {
    const { answer, value } = items[index] ?? { answer: '', value: null }
    const amount = value === null ? null : difference(value, answer)
    if (amount === null || amount === '0') continue
    byAmount.set(amount, [...(byAmount.get(amount) ?? []), index])
  }
  for (const [amount, concerned] of byAmount) if (concerned.length >= least) return { amount, concerned }
  return null
}

/** A whole number that is exact as a number. */
const WHOLE = /^-?\d{1,15}$/
const NUMBER = /^(-?)(\d+)(?:\.(\d+))?$/

/** One number less another, exactly; null where one is no plain number. */
function difference(one: string, other: string): string | null {
  if (WHOLE.test(one) && WHOLE.test(other)) return String(Number(one) - Number(other))
  const [a, b] = [NUMBER.exec(one), NUMBER.exec(other)]
  if (!a || !b) return null
  const places = Math.max(a[3]?.length ?? 0, b[3]?.length ?? 0)
  const scaled = ([, sign = '', whole = '', decimals = '']: RegExpExecArray) =>
    BigInt(`${whole}${decimals.padEnd(places, '0')}`) * (sign ? -1n : 1n)
  const gap = scaled(a) - scaled(b)
  const digits = String(gap < 0n ? -gap : gap).padStart(places + 1, '0')
  const split = digits.length - places
  const decimals = digits.slice(split).replace(/0+$/, '')
  return `${gap < 0n ? '-' : ''}${digits.slice(0, split)}${decimals ? `.${decimals}` : ''}`
}
