import type { SubtractionEntry } from './entry'
import { adds } from './operation'
import {
  dropsUnpaired,
  nineForFree,
  noReduction,
  skipsOverZero,
  smallerFromLarger,
  subtractLinedUpLeft,
  subtractLinedUpRight,
  takeZeroGivesZero,
  zeroGivesDigit,
  zeroGivesZero,
  zeroLeftAsTen,
  zeroWhenShort,
} from './subtraction'

/** The systematic faults of written subtraction. To add one, add an entry (and its habit where none fits). */
export const SUBTRACTION_FAULTS = [
  {
    id: 'takes-smaller-from-larger',
    operation: 'subtract',
    moment: 'short column',
    habit: smallerFromLarger,
    sentence: 'Takes the smaller digit from the larger in every column, whichever is on top.',
    example: {
      question: '932 − 457',
      answer: '525',
      working: 'Ones: 7 − 2 is 5. Tens: 5 − 3 is 2. Hundreds: 9 − 4 is 5. Nothing was exchanged.',
    },
    help: 'Make the top number with place value counters and take the bottom number away by hand: where there are not enough, exchange first.',
    hint: 'Check the {column}: did you exchange?',
  },
  {
    id: 'zero-when-short',
    operation: 'subtract',
    moment: 'short column',
    habit: zeroWhenShort,
    sentence: 'Writes 0 wherever the top digit is too small, and exchanges nothing.',
    example: {
      question: '932 − 457',
      answer: '500',
      working: 'Ones: 2 take away 7 “cannot be done”, so 0. Tens: 3 take away 5, so 0. Hundreds: 9 − 4 is 5.',
    },
    help: 'Ask at each column “have I enough?”; when the answer is no, exchange one from the column on the left for ten, with counters, before writing.',
    hint: 'Check the {column}: if there is not enough on top, did you exchange?',
  },
  {
    id: 'no-reduction',
    operation: 'subtract',
    moment: 'lending',
    habit: noReduction,
    sentence: 'Adds ten to a column that is short, but reduces nothing to its left.',
    example: {
      question: '932 − 457',
      answer: '585',
      working:
        'Ones: 12 − 7 is 5, and the 3 tens stay 3. Tens: 13 − 5 is 8, and the 9 hundreds stay 9. Hundreds: 9 − 4 is 5.',
    },
    help: 'Cross out and rewrite the digit on the left first, then write the ten that comes: nothing is received that was not given.',
    hint: 'Check the {column}: when one is exchanged, one fewer is left there.',
  },
  {
    id: 'zero-gives-digit',
    operation: 'subtract',
    moment: 'zero on top',
    habit: zeroGivesDigit,
    sentence: 'Where the top digit is 0, writes the bottom digit, as if taking the 0 away from it.',
    example: {
      question: '5040 − 2308',
      answer: '3348',
      working:
        'Ones: 0 take away 8 is written 8. Tens: 4 − 0 is 4. Hundreds: 0 take away 3 is written 3. Thousands: 5 − 2 is 3.',
    },
    help: 'Practise a 0 in the ones alone with ten frames: no ones there, so a ten must be exchanged.',
    hint: 'Check the {column}: you cannot take from 0 on top. Did you exchange?',
  },
  {
    id: 'zero-gives-zero',
    operation: 'subtract',
    moment: 'zero on top',
    habit: zeroGivesZero,
    sentence: 'Where the top digit is 0, writes 0, whatever is to be taken away.',
    example: {
      question: '5040 − 2308',
      answer: '3040',
      working:
        'Ones: 0 take away 8 is written 0. Tens: 4 − 0 is 4. Hundreds: 0 take away 3 is written 0. Thousands: 5 − 2 is 3.',
    },
    help: 'Practise a 0 in the ones alone on a number line: something was taken away, so the answer cannot end in the same 0.',
    hint: 'Check the {column}: you cannot take from 0 on top. Did you exchange?',
  },
  {
    id: 'skips-over-zero',
    operation: 'subtract',
    moment: 'lending',
    habit: skipsOverZero,
    sentence: 'Passes over a 0 when exchanging: the next digit on the left gives one, and the 0 stays 0.',
    example: {
      question: '305 − 128',
      answer: '87',
      working:
        'Ones: the 3 hundreds become 2 for it, 15 − 8 is 7. Tens: still 0, so the 2 hundreds become 1, 10 − 2 is 8. Hundreds: 1 − 1 is 0.',
    },
    help: 'Exchange one column at a time with counters: the 0 becomes 10, and when one of these goes on to the right 9 stay behind.',
    hint: 'Check the {column}: a 0 on top has to get ten before it can give one away.',
  },
  {
    id: 'nine-for-free',
    operation: 'subtract',
    moment: 'lending',
    habit: nineForFree,
    sentence: 'Turns a 0 into 9 when exchanging, but takes nothing from the digit to its left.',
    example: {
      question: '305 − 128',
      answer: '277',
      working:
        'Ones: 15 − 8 is 7, and the 0 tens become 9. Tens: 9 − 2 is 7. Hundreds: the 3 stays 3, 3 − 1 is 2.',
    },
    help: 'Ask where the 9 came from: say the whole exchange aloud, from the first digit that has something to give, before any is crossed out.',
    hint: 'Check the {column}: the 0 next to it became 9. Who gave the ten? One fewer is left there.',
  },
  {
    id: 'zero-left-as-ten',
    operation: 'subtract',
    moment: 'lending',
    habit: zeroLeftAsTen,
    sentence: 'Exchanges through a 0 but leaves it as 10, not 9.',
    example: {
      question: '305 − 128',
      answer: '187',
      working:
        'The 3 hundreds become 2 and the 0 tens become 10. Ones: 15 − 8 is 7. Tens: 10 − 2 is 8. Hundreds: 2 − 1 is 1.',
    },
    help: 'Exchange in two steps, crossing out in each: the 0 becomes 10, then one of the ten goes on to the right and 9 are left.',
    hint: 'Check the {column}: the 0 got ten and gave one away. How many are left?',
  },
  {
    id: 'take-zero-gives-zero',
    operation: 'subtract',
    moment: 'beneath',
    habit: takeZeroGivesZero,
    sentence: 'Where the bottom digit is 0, writes 0, as if nothing were left.',
    example: {
      question: '846 − 302',
      answer: '504',
      working: 'Ones: 6 − 2 is 4. Tens: 4 take away 0 is written 0. Hundreds: 8 − 3 is 5.',
    },
    help: 'Tell the story of the column with counters: none is taken away. How many are left?',
    hint: 'Check the {column}: when you take 0 away, how many are left?',
  },
  {
    id: 'lines-up-left',
    operation: 'subtract',
    moment: 'lining up',
    habit: subtractLinedUpLeft,
    sentence: 'Writes the shorter number under the left-hand digits of the longer one.',
    example: {
      question: '503 − 46',
      answer: '43',
      working: 'The 4 of 46 stands under the 5 hundreds and the 6 under the tens, as if it were 503 − 460.',
    },
    help: 'Head the columns and write the ones digits first, under each other.',
    hint: 'Are the ones under the ones? Set it out again, starting with the ones.',
  },
  {
    id: 'lines-up-right',
    operation: 'subtract',
    moment: 'lining up',
    habit: subtractLinedUpRight,
    sentence: 'Writes the last digits of decimals under each other, whatever their place.',
    example: {
      question: '7.25 − 1.3',
      answer: '7.12',
      working:
        'The 3 tenths stand under the 5 hundredths and the 1 under the tenths, as if it were 7.25 − 0.13.',
    },
    help: 'Write the points under each other before any digit, and fill an empty place with 0.',
    hint: 'Are the decimal points under each other? Set it out again.',
  },
  {
    id: 'drops-unpaired-digits',
    operation: 'subtract',
    moment: 'beneath',
    habit: dropsUnpaired,
    sentence: 'Leaves out of the answer the columns with nothing beneath them.',
    example: {
      question: '7214 − 86',
      answer: '28',
      working:
        'Ones: 14 − 6 is 8. Tens: 10 − 8 is 2. The hundreds and thousands have nothing beneath and are not brought down.',
    },
    help: 'Write zeros in the empty places of the bottom number, and check the size of the answer with an estimate.',
    hint: 'Check the {column}: a digit with nothing beneath it stays in the answer.',
  },
  {
    id: 'wrong-operation',
    operation: 'subtract',
    moment: 'operation',
    habit: adds,
    sentence: 'Adds instead of subtracting.',
    example: { question: '932 − 457', answer: '1389', working: '932 + 457 is 1389.' },
    help: 'Circle the sign first, and say whether the answer will be more or less than the top number.',
    hint: 'Look at the sign: is it add or take away?',
  },
] as const satisfies readonly SubtractionEntry[]
