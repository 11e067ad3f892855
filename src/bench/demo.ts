import type { CellValue } from './grid/grid'

/** A sheet of the demo workbook: its cells from A1 on, as values that cells hold ('' is blank). */
export interface DemoSheet {
  readonly name: string
  readonly cells: readonly (readonly CellValue[])[]
}

const QUESTIONS = [
  '874 − 523',
  '932 − 457',
  '652 − 218',
  '741 − 356',
  '508 − 263',
  '605 − 347',
  '4362 − 1725',
  '7214 − 86',
  '5040 − 2308',
  '6105 − 2350',
  '4003 − 1567',
  '8000 − 2999',
]

/** The pupils (all invented) and what they typed, question by question. */
const PUPILS: readonly (readonly CellValue[])[] = [
  ['Amira Patel', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2436, 5001],
  ['Bertie Lowe', 351, 525, 446, 415, 365, 342, 3443, 7272, 3348, 4255, 3564, ''],
  ['Cerys Hughes', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2446, ''],
  ['Daniel Osei', 351, 475, 434, 385, 245, 258, 2637, 7128, 2723, 3755, 2436, ''],
  ['Elsie Marsh', 351, 475, 434, 385, 245, 268, 2637, 7128, 2732, 3755, 2546, 5111],
  ['Farid Rahman', 351, 475, 434, 385, 245, 258, 2637, 7128, '2732 ', 3755, 2436, 5001],
  ['Grace Whitlock', 351, 475, 434, 385, 245, 258, 2637, '7,128', 2732, '3,755', 2436, 5001],
  ['Harvey Dunn', 351, 525, 446, 415, 365, 342, 3443, 7272, 3348, 4255, 3564, 6999],
  ['Imogen Tait', 351, 475, 434, 385, 245, '258 or 268', 2637, 7128, 2732, 3755, 2436, '?'],
  ['Jakub Nowak', 351, 475, 434, 385, 245, 168, 2637, 7128, 2732, 3755, 546, 3111],
  ['Kezia Brown', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, '', ''],
  ['Leo Fairclough', 351, 475, 434, 385, 245, 358, 2637, 7128, 2732, 3755, 2536, 5101],
  ['Maisie Holt', 351, 475, 434, '=385', 245, 258, '2637.', 7128, 2732, 3755, 2436, 5001],
  ['Noor Siddiqui', 351, 475, 434, 385, 245, 268, 2637, 7128, 2732, 3755, 2546, 5111],
  ['Olly Pemberton', 351, 475, 434, 385, 245, 258, 2637, 7128, 2742, '', '', ''],
  ['Poppy Ashdown', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2436, 5001],
  ['Quentin Reeve', 351, 585, 444, 495, 345, 368, 3647, 7238, 3742, 4855, 3546, ''],
  ['Rosa Delgado', 351, 475, '4?4', 385, 245, 258, 2637, 7128, 2732, 3755, 2436, '5 thousand and 1'],
  ['Samuel Adeyemi', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs'],
  ['Tilly Crabtree', 351, 475, 434, 385, 245, 168, 2637, 7128, 2732, 3755, 546, 3111],
  ['Umar Farooq', 351, 475, 434, 385, 245, 248, 2637, 7128, 2732, 3755, 2436, '-'],
  ['Violet Sharpe', 351, 475, 434, 385, 254, 258, 2637, 7128, 2732, 3755, 2436, 5001],
  ['Wilf Garrity', 351, 525, 446, 415, 365, 342, 3443, 7272, 3348, 4255, '', ''],
  ['Xanthe Moss', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 'n/a', 'n/a'],
  ['Yusuf Demir', 351, 475, 434, 385, 245, 358, 2637, 7128, 2732, 3755, 2536, 5101],
  ['Zara Kingsley', 351, 475, 870, 385, 771, 952, 6087, 7300, 7348, 8455, 5570, 10999],
  ['Archie Bell', 351, 585, 444, 495, 345, 368, 3647, 7238, 3742, 4855, 3546, 6111],
  ['Bronwen Pryce', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2436, 5001],
]

/**
 * Kingfisher, a Year 4 class of our own making: 28 pupils, 12 questions of column subtraction, typed answers. Some pupils
 * make the same mistake throughout, one was away, some left blanks, some answers cannot be read.
 */
export const DEMO: DemoSheet = {
  name: 'Kingfisher',
  cells: [
    ['Kingfisher: column subtraction', ...QUESTIONS.map(() => '')],
    ['Type each answer as the pupil wrote it.', ...QUESTIONS.map(() => '')],
    ['Name', ...QUESTIONS],
    ...PUPILS,
  ],
}
