import { describe, expect, it } from 'vitest'
import { FAULTS, type FaultId } from '../../src/answers/faults'
import { workOut } from '../../src/arithmetic/columns'
import { valueText } from '../../src/arithmetic/numeral'
import { asked } from '../support/asked'

const SUBTRACTION: readonly FaultId[] = [
  'takes-smaller-from-larger',
  'zero-when-short',
  'no-reduction',
  'zero-gives-digit',
  'zero-gives-zero',
  'skips-over-zero',
  'nine-for-free',
  'zero-left-as-ten',
  'take-zero-gives-zero',
  'lines-up-left',
  'drops-unpaired-digits',
  'wrong-operation',
]
const ADDITION: readonly FaultId[] = [
  'drops-carried-ten',
  'writes-whole-total',
  'carries-wrong-digit',
  'lines-up-left',
  'wrong-operation',
]

/** Question, right answer, then the answer of each fault in the order above; '·' = the right answer. */
const SUBTRACTION_ANSWERS = `
  932 − 457   | 475  | 525 | 500 | 585 | · | · | · | · | · | · | · | · | 1389
  305 − 128   | 177  | 223 | 200 | 287 | · | · | 87 | 277 | 187 | · | · | · | 433
  4003 − 1567 | 2436 | 3564 | 3000 | 3546 | · | · | 546 | 2536 | 2546 | · | · | · | 5570
  5040 − 2308 | 2732 | 3348 | 3040 | 3742 | 3348 | 3040 | · | · | · | 2702 | · | · | 7348
  6105 − 2350 | 3755 | 4255 | 4005 | 4855 | 3855 | 3805 | · | · | · | 3750 | · | · | 8455
  8000 − 2999 | 5001 | 6999 | 6000 | 6111 | 6999 | 6000 | 3111 | 5101 | 5111 | · | · | · | 10999
  7214 − 86   | 7128 | 7272 | 7200 | 7238 | · | · | · | · | · | · | 1414 | 28 | 7300
  503 − 46    | 457  | 543 | 500 | 567 | · | · | 367 | 557 | 467 | · | 43 | 57 | 549`
const ADDITION_ANSWERS = `
  789 + 642  | 1431 | 321 | 131211 | 1611 | · | 147
  467 + 258  | 725  | 615 | 61115 | 1211 | · | 209
  3856 + 479 | 4335 | 3225 | 3121215 | 12111 | 8646 | 3377`

function rows(table: string, ids: readonly FaultId[]): [string, FaultId | 'right', string][] {
  return table
    .trim()
    .split('\n')
    .flatMap((row) => {
      const [text = '', right = '', ...answers] = row.split('|').map((cell) => cell.trim())
      expect(answers).toHaveLength(ids.length)
      return [
        [text, 'right', right] as [string, 'right', string],
        ...answers.map((answer, index): [string, FaultId | 'right', string] => [
          text,
          ids[index] ?? 'right',
          answer === '·' ? right : answer,
        ]),
      ]
    })
}

function answer(text: string, id: FaultId | 'right'): string | null | undefined {
  const { calculation } = asked(text)
  if (id === 'right') return valueText(workOut(calculation).answer)
  return FAULTS.find((fault) => fault.id === id && fault.operation === calculation.operation)?.apply(
    calculation,
  )
}

describe('the answers that systematic faults give', () => {
  it.each([...rows(SUBTRACTION_ANSWERS, SUBTRACTION), ...rows(ADDITION_ANSWERS, ADDITION)])(
    '%s, %s: %s (computed by an independent reference)',
    (text, id, expected) => {
      expect(answer(text, id)).toBe(expected)
    },
  )

  it('writes a column in two figures (computed by an independent reference)', () => {
    expect(answer('301 − 6', 'zero-left-as-ten')).toBe('2105')
  })

  it.each([
    ['1304 − 1237', 'skips-over-zero', '1977'],
    ['7067 − 1983', 'skips-over-zero', '4184'],
    ['3035 − 1728', 'zero-gives-digit', '2707'],
    ['9046 − 4984', 'zero-left-as-ten', '4162'],
    ['6121 − 52', 'lines-up-left', '921'],
    ['6121 − 52', 'drops-unpaired-digits', '69'],
    ['1742 − 1058', 'take-zero-gives-zero', '84'],
  ] as const)('%s, %s: %s (computed by an independent reference)', (text, id, expected) => {
    expect(answer(text, id)).toBe(expected)
  })
})
