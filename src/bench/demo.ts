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
  ['Amira P', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2436, 5001],
  ['Bertie L', 351, 525, 446, 415, 365, 342, 3443, 7272, 3348, 4255, 3564, ''],
  ['Cerys H', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2446, ''],
  ['Daniel O', 351, 475, 434, 385, 245, 258, 2637, 7128, 2723, 3755, 2436, ''],
  ['Elsie M', 351, 475, 434, 385, 245, 268, 2637, 7128, 2732, 3755, 2546, 5111],
  ['Farid R', 351, 475, 434, 385, 245, 258, 2637, 7128, '2732 ', 3755, 2436, 5001],
  ['Grace W', 351, 475, 434, 385, 245, 258, 2637, '7,128', 2732, '3,755', 2436, 5001],
  ['Harvey D', 351, 525, 446, 415, 365, 342, 3443, 7272, 3348, 4255, 3564, 6999],
  ['Imogen T', 351, 475, 434, 385, 245, '258 or 268', 2637, 7128, 2732, 3755, 2436, '?'],
  ['Jakub N', 351, 475, 434, 385, 245, 168, 2637, 7128, 2732, 3755, 546, 3111],
  ['Kezia B', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, '', ''],
  ['Leo F', 351, 475, 434, 385, 245, 358, 2637, 7128, 2732, 3755, 2536, 5101],
  ['Maisie H', 351, 475, 434, '=385', 245, 258, '2637.', 7128, 2732, 3755, 2436, 5001],
  ['Noor S', 351, 475, 434, 385, 245, 268, 2637, 7128, 2732, 3755, 2546, 5111],
  ['Olly P', 351, 475, 434, 385, 245, 258, 2637, 7128, 2742, '', '', ''],
  ['Poppy A', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2436, 5001],
  ['Quentin R', 351, 585, 444, 495, 345, 368, 3647, 7238, 3742, 4855, 3546, ''],
  ['Rosa D', 351, 475, '4?4', 385, 245, 258, 2637, 7128, 2732, 3755, 2436, '5 thousand and 1'],
  ['Samuel A', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs', 'abs'],
  ['Tilly C', 351, 475, 434, 385, 245, 168, 2637, 7128, 2732, 3755, 546, 3111],
  ['Umar F', 351, 475, 434, 385, 245, 248, 2637, 7128, 2732, 3755, 2436, '-'],
  ['Violet S', 351, 475, 434, 385, 254, 258, 2637, 7128, 2732, 3755, 2436, 5001],
  ['Wilf G', 351, 525, 446, 415, 365, 342, 3443, 7272, 3348, 4255, '', ''],
  ['Xanthe M', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 'n/a', 'n/a'],
  ['Yusuf D', 351, 475, 434, 385, 245, 358, 2637, 7128, 2732, 3755, 2536, 5101],
  ['Zara K', 351, 475, 870, 385, 771, 952, 6087, 7300, 7348, 8455, 5570, 10999],
  ['Archie B', 351, 585, 444, 495, 345, 368, 3647, 7238, 3742, 4855, 3546, 6111],
  ['Bronwen P', 351, 475, 434, 385, 245, 258, 2637, 7128, 2732, 3755, 2436, 5001],
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
