import {
  addLinedUpLeft,
  addLinedUpRight,
  carriesWrongDigit,
  dropsCarried,
  losesLastTen,
  writesWholeTotal,
} from './addition'
import type { AdditionEntry } from './entry'
import { subtracts } from './operation'

/** The systematic faults of written addition. To add one, add an entry (and its habit where none fits). */
export const ADDITION_FAULTS = [
  {
    id: 'drops-carried-ten',
    operation: 'add',
    moment: 'column total',
    habit: dropsCarried,
    sentence: 'Writes the ones of each column total and carries nothing.',
    example: {
      question: '467 + 258',
      answer: '615',
      working: 'Ones: 15, write 5. Tens: 11, write 1. Hundreds: 6. Neither ten was carried.',
    },
    help: 'Make both numbers with counters: ten in one column are exchanged for one in the next, which must be added there.',
    hint: 'Check the {column}: did you add the one that was carried?',
  },
  {
    id: 'loses-last-ten',
    operation: 'add',
    moment: 'column total',
    habit: losesLastTen,
    sentence: 'Carries rightly, but does not write the ten that comes out of the last column.',
    example: {
      question: '789 + 642',
      answer: '431',
      working: 'Ones: 11. Tens: 13. Hundreds: 14, write 4; the ten hundreds are not written.',
    },
    help: 'Estimate first, and ask how many digits the answer must have.',
    hint: 'Check the {column}: was one more carried there?',
  },
  {
    id: 'writes-whole-total',
    operation: 'add',
    moment: 'column total',
    habit: writesWholeTotal,
    sentence: 'Writes each column total in full, side by side.',
    example: {
      question: '467 + 258',
      answer: '61115',
      working: 'Ones: 15. Tens: 11. Hundreds: 6. Written side by side: 6 11 15.',
    },
    help: 'Draw a box for each column that holds one digit only; a total of 10 or more sends a ten to the next box.',
    hint: 'Check the {column}: each column holds one digit. Carry the ten.',
  },
  {
    id: 'carries-wrong-digit',
    operation: 'add',
    moment: 'column total',
    habit: carriesWrongDigit,
    sentence: 'Writes the ten of a column total and carries the ones.',
    example: {
      question: '467 + 258',
      answer: '1211',
      working: 'Ones: 15, write 1, carry 5. Tens: 16, write 1, carry 6. Hundreds: 12.',
    },
    help: 'Split the total of each column before writing, and ask which column each part belongs to.',
    hint: 'Check the {column}: write the ones of a total, and carry the ten.',
  },
  {
    id: 'lines-up-left',
    operation: 'add',
    moment: 'lining up',
    habit: addLinedUpLeft,
    sentence: 'Writes the shorter number under the left-hand digits of the longer one.',
    example: {
      question: '3856 + 479',
      answer: '8646',
      working: 'The 4 of 479 stands under the 3 thousands, as if it were 3856 + 4790.',
    },
    help: 'Head the columns and write the ones digits first, under each other.',
    hint: 'Are the ones under the ones? Set it out again, starting with the ones.',
  },
  {
    id: 'lines-up-right',
    operation: 'add',
    moment: 'lining up',
    habit: addLinedUpRight,
    sentence: 'Writes the last digits of decimals under each other, whatever their place.',
    example: {
      question: '4.25 + 1.3',
      answer: '4.38',
      working:
        'The 3 tenths stand under the 5 hundredths and the 1 under the tenths, as if it were 4.25 + 0.13.',
    },
    help: 'Write the points under each other before any digit, and fill an empty place with 0.',
    hint: 'Are the decimal points under each other? Set it out again.',
  },
  {
    id: 'wrong-operation',
    operation: 'add',
    moment: 'operation',
    habit: subtracts,
    sentence: 'Subtracts instead of adding.',
    example: { question: '467 + 258', answer: '209', working: '467 − 258 is 209.' },
    help: 'Circle the sign first, and say whether the answer will be more or less than the top number.',
    hint: 'Look at the sign: is it add or take away?',
  },
] as const satisfies readonly AdditionEntry[]
