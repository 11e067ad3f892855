import type { ExchangeType } from '../arithmetic/exchange'
import type { Operation } from '../arithmetic/question'

/** The lines of one type between setting out and checking. */
const BY_TYPE: Readonly<Partial<Record<ExchangeType, readonly string[]>>> = {
  'no exchange': ['I subtract the bottom digit from the top digit in every column.'],
  'one exchange, beyond ten thousands': [
    'Where there is not enough to subtract from, I exchange 1 from the column on the left.',
    'I cross out the old digits and write the new ones above them.',
  ],
  'two exchanges, apart': [
    'In every column I ask: is there enough to subtract from?',
    'I exchange only where there is not.',
  ],
  'two exchanges, next to each other': [
    'After an exchange I look at the new digit, not the one that I crossed out.',
    'If there is still not enough in that column, I exchange again.',
  ],
  'three or more exchanges': [
    'In every column I ask: is there enough to subtract from?',
    'I write down every exchange, so that I can look back at it.',
  ],
  'through a zero': [
    'Where the next column has 0, I look further left for a column that has something to give.',
    'I exchange one column at a time, so the 0 becomes 10 and then 9.',
  ],
  'through two or more zeros': [
    'I look left, past the zeros, for the first column that has something to give.',
    'I exchange one column at a time, so every 0 on the way becomes 10 and then 9.',
  ],
  'no carry': ['I add the two digits in every column.'],
  'one carry, beyond ten thousands': [
    'Where a column makes 10 or more, I carry 1 into the column on the left.',
    'I add the 1 that I carried.',
  ],
  'two carries, apart': [
    'In every column I ask: does it make 10 or more?',
    'I carry only where it does, and I add what I carried.',
  ],
  'two carries, next to each other': [
    'I add what I carried before I decide whether the column makes 10 or more.',
    'I can carry out of a column that I carried into.',
  ],
  'three or more carries': [
    'I write every 1 that I carry in the same place, so that I do not lose it.',
    'If the last column makes 10 or more, I write its ten in a new column.',
  ],
}

const MIXED: Readonly<Record<Operation, readonly string[]>> = {
  subtract: [
    'In every column I ask: is there enough to subtract from?',
    'I exchange only where there is not, and I write it down.',
  ],
  add: [
    'In every column I ask: does it make 10 or more?',
    'I carry only where it does, and I add what I carried.',
  ],
}

const CHECK: Readonly<Record<Operation, string>> = {
  subtract:
    'I check by adding: my answer and the number that I subtracted make the number that I started with.',
  add: 'I check by subtracting: when I take one of the numbers from my answer, the other is left.',
}

/** What the deepest grade needs besides. */
export const DEEPER_CRITERIA: readonly string[] = [
  'I decide which calculation finds the missing number.',
  'I find missing digits column by column, from the right.',
  'I explain how I know, with an example.',
]

const ESTIMATE = 'Before I start I estimate: I round both numbers and work it out in my head.'

/**
 * What a pupil does who meets the objective, in order, from the estimate to the check, five or six sentences for the class; a teacher may change the wording.
 * `type` is that of the questions, 'any' where they are mixed; `hasPoint` where they are decimals or money.
 */
export function successCriteria(
  operation: Operation,
  type: ExchangeType | 'any',
  hasPoint = false,
): string[] {
  const setOut = hasPoint
    ? 'I write the numbers under each other with the points lined up.'
    : 'I write the numbers under each other, ones under ones.'
  const middle = type === 'any' ? MIXED[operation] : (BY_TYPE[type] ?? oneColumn(type))
  return [ESTIMATE, setOut, 'I start with the column on the right.', ...middle, CHECK[operation]]
}

/** The lines of a type with one exchange or carry, which its name tells: "one exchange, tens to ones". */
function oneColumn(type: ExchangeType): string[] {
  const [, what, from = '', to = ''] = /^one (exchange|carry), (.+) to (.+)$/.exec(type) ?? []
  if (what === 'exchange')
    return [
      `Where there are not enough ${to}, I exchange 1 ${from.slice(0, -1)} for 10 ${to}.`,
      'I cross out the old digits and write the new ones above them.',
    ]
  return [
    `Where the ${from} make 10 or more, I carry 10 ${from} as 1 ${to.slice(0, -1)}.`,
    `I add the 1 that I carried to the ${to}.`,
  ]
}
