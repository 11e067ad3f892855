import type { Kind } from '../items/kind'

/** A sentence to judge as always, sometimes or never true, and what a good answer says. */
export interface Claim {
  readonly says: string
  readonly answer: string
}

const SUBTRACTING: readonly Claim[] = [
  {
    says: 'The answer to a subtraction is smaller than the number that you started with.',
    answer: 'Sometimes. Mostly it is, but not when you subtract 0: 52 − 0 = 52.',
  },
  {
    says: 'The answer to a subtraction has fewer digits than the number that you started with.',
    answer: 'Sometimes. 845 − 832 = 13 has fewer digits, 845 − 232 = 613 has as many.',
  },
  {
    says: 'If you add 1 to both numbers in a subtraction, the answer stays the same.',
    answer: 'Always. The two numbers stay equally far apart: 52 − 30 = 22 and 53 − 31 = 22.',
  },
]

const EXCHANGING: readonly Claim[] = [
  {
    says: 'If the top number has a 0 in it, the subtraction needs an exchange.',
    answer: 'Sometimes. 403 − 128 needs one, 403 − 102 does not.',
  },
  {
    says: 'If the last digit on top is smaller than the last digit below it, that column needs an exchange.',
    answer: 'Always. There is not enough in that column to subtract from.',
  },
  {
    says: 'If every digit on top is larger than the digit below it, the subtraction needs an exchange.',
    answer: 'Never. There is enough in every column: 876 − 543 = 333.',
  },
]

const NEXT_TO_EACH_OTHER: readonly Claim[] = [
  {
    says: 'A column that has given 1 away needs an exchange itself.',
    answer: 'Sometimes. In 932 − 468 the tens need one, in 952 − 438 they do not.',
  },
]

const THROUGH_ZERO: readonly Claim[] = [
  {
    says: 'A 0 that an exchange goes through ends up as 9.',
    answer: 'Always. It receives 10 and gives 1 of them away, so 9 are left.',
  },
  {
    says: 'If the top number has a 0 in the tens, the exchange for the ones begins in the hundreds.',
    answer:
      'Sometimes. 504 − 238 begins there; 2,004 − 1,238 begins in the thousands, as the hundreds are 0 too.',
  },
]

const ADDING: readonly Claim[] = [
  {
    says: 'If you swap the two numbers in an addition, the answer changes.',
    answer: 'Never. 46 + 30 and 30 + 46 are both 76.',
  },
  {
    says: 'The answer to an addition is larger than both numbers.',
    answer: 'Sometimes. Mostly it is, but not when you add 0: 46 + 0 = 46.',
  },
  {
    says: 'Two odd numbers add up to an even number.',
    answer: 'Always. Each has one left over from its pairs, and these two make a pair: 13 + 25 = 38.',
  },
]

const CARRYING: readonly Claim[] = [
  {
    says: 'When you add two numbers, you can carry 2 into the next column.',
    answer: 'Never. The most that a column can make is 9 + 9 + 1 = 19, so at most 1 is carried.',
  },
  {
    says: 'Two three-digit numbers add up to a four-digit number.',
    answer: 'Sometimes. 600 + 500 = 1,100 has four digits, 200 + 300 = 500 has three.',
  },
  {
    says: 'If two digits in a column make 9, the column needs no carry.',
    answer: 'Sometimes. It needs one if 1 was carried into it: in 156 + 247 the tens make 4 + 5 + 1 = 10.',
  },
]

/** The sentences that suit a kind: of its operation, and of what it exchanges or carries. */
export function claimsFor({ operation, type }: Kind): readonly Claim[] {
  if (operation === 'add') return type === 'no carry' ? ADDING : [...ADDING, ...CARRYING]
  if (type === 'no exchange') return SUBTRACTING
  if (type.startsWith('through')) return THROUGH_ZERO
  return type.startsWith('two exchanges, next') ? NEXT_TO_EACH_OTHER : [...SUBTRACTING, ...EXCHANGING]
}
