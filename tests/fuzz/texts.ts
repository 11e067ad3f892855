import type { CellValue } from '../../src/answers/typed'
import type { Chance } from './chance'

/** The longest text that a cell of a spreadsheet holds. */
export const LONGEST_CELL = 32_767

const PIECES = [
  ...'0123456789',
  ...'+-−–—=.,:;?!/*()[]{}"\'£$€%#@&|\\<>_~^`¦',
  ...'abpgmlkxyzABS',
  ' ',
  '\u00a0',
  '\u2009',
  '\u202f',
  '\u3000',
  '\t',
  '\r\n',
  '\n',
  '\u200b',
  '\u200f',
  '\u202e',
  '\ufeff',
  '\u0000',
  '\u0007',
  '\ufe0f',
  '\ud83d',
  '👩🏽‍🏫',
  'ß',
  'İ',
  'ﬁ',
  'ﷺ',
  '٣',
  '۴',
  '३',
  '５',
  '½',
  '²',
  '①',
  'é',
  'e\u0301',
  '✓',
  '✗',
  '□',
  '▢',
  '...',
  '__',
  '[ ]',
] as const

const WORDS = [
  'subtract',
  'take away',
  'take',
  'minus',
  'less',
  'add',
  'plus',
  'sum of',
  'total of',
  'difference between',
  'and',
  'from',
  'to',
  'equals',
  'work out',
  'what is',
  'Q4',
  'Question 12:',
  '1)',
  '(a)',
  'iv)',
  '★',
  '(2 marks)',
  '/ 3',
  'kg',
  'ml',
  'cm',
  'abs',
  'absent',
  'ill',
  'n/a',
  'or',
  'r 1',
  'see me',
  'TRUE',
  '#N/A',
  '1e3',
  '0x1F',
  'Infinity',
  'NaN',
  '__proto__',
  'constructor',
  '=HYPERLINK("x")',
] as const

const SIGNS = [
  '−',
  '-',
  '–',
  '—',
  '+',
  '➕',
  '➖',
  ' − ',
  ' + ',
  ' - ',
  ' minus ',
  ' add ',
  ' take away ',
  ' less ',
]
const BEHIND = ['', '', '', ' =', ' = ?', '=', ' = □', ' = ____', '.', ' = 30', '?', ' (1 mark)', ' equals']

/** A number as somebody may print or type it: grouped, padded, with a point, of any length. */
export function numberText(chance: Chance): string {
  const digits = chance.some(1, chance.onceIn(20) ? 40 : 7, () => chance.whole(0, 9)).join('')
  const grouped = chance.onceIn(3)
    ? digits.replace(/\B(?=(\d{3})+$)/g, chance.of([',', ' ', '\u00a0', '.']))
    : digits
  const decimals = chance.onceIn(4)
    ? chance.of(['.', '.', '.', ',']) + chance.some(0, 4, () => chance.whole(0, 9)).join('')
    : ''
  return (
    chance.of(['', '', '', '', '£', '£ ', '0', '(', '=']) +
    grouped +
    decimals +
    chance.of(['', '', '', '', 'p', ' kg', 'm', ')'])
  )
}

/** A text of pieces that mean something to some reader. */
function rubble(chance: Chance, most: number): string {
  return chance
    .some(0, most, () => (chance.onceIn(4) ? chance.of(WORDS) : chance.of(PIECES)))
    .join(chance.onceIn(3) ? ' ' : '')
}

/** A text with one place changed: something put in, taken out, doubled or turned round. */
function spoiled(chance: Chance, text: string): string {
  const at = chance.whole(0, text.length)
  const [before, after] = [text.slice(0, at), text.slice(at)]
  return chance.of([
    () => before + chance.of(PIECES) + after,
    () => before + after.slice(1),
    () => before + before + after,
    () => after + before,
    () => text.toUpperCase(),
    () => text.normalize('NFD'),
  ])()
}

/** A piece again and again, up to the longest that a cell holds. */
function endless(chance: Chance): string {
  const unit = rubble(chance, 3) || '1'
  const text = unit.repeat(Math.ceil(chance.whole(1, LONGEST_CELL) / unit.length)).slice(0, LONGEST_CELL)
  return chance.of(['', '(', '=', 'Q4 ', '1 + ']) + text.slice(5) + chance.of(['', ')', '= ', '!'])
}

/** How many texts there are for each one that fills a cell. */
const TEXTS_FOR_ONE_ENDLESS = 2_000

/** A text for a question, now and then one indeed. */
export function questionText(chance: Chance): string {
  if (chance.onceIn(TEXTS_FOR_ONE_ENDLESS)) return endless(chance)
  if (chance.onceIn(4)) return rubble(chance, 12)
  const operand = () => (chance.onceIn(8) ? chance.of(['□', '?', '[ ]', '__', '...']) : numberText(chance))
  const label = chance.onceIn(4) ? chance.of(['1) ', 'Q4 ', '12. ', 'a) ', 'Work out ', '(b) ', '\n']) : ''
  const text = label + operand() + chance.of(SIGNS) + operand() + chance.of(BEHIND)
  return chance.onceIn(3) ? spoiled(chance, text) : text
}

/** Something typed for an answer: a text, a number, TRUE or FALSE, or nothing. */
export function typedValue(chance: Chance): CellValue {
  if (chance.onceIn(TEXTS_FOR_ONE_ENDLESS)) return endless(chance)
  return chance.of<() => CellValue>([
    () => numberText(chance),
    () => spoiled(chance, numberText(chance)),
    () => rubble(chance, 6),
    () => chance.whole(-100_000, 100_000),
    () => chance.whole(-1_000_000, 1_000_000) / chance.of([10, 100, 1000, 7]),
    () => chance.of([0, -0, 1, 1e15, 2 ** 53, 1e300, 5e-324, -1e21, 45_000]),
    () => chance.of([true, false, null, '', ' ', '-', 'abs', 'a', 'n/a', '✓', 'x', 'y']),
  ])()
}

const NAMES = [
  'Amina K',
  'Zoë O’Neill',
  'محمد علي',
  '李小龙',
  'นภา ใจดี',
  'Ṣọlá Adé',
  'Nguye\u0302\u0303n An',
  'שרה כהן',
  'Ananya अनन्या',
  '=1+1',
  '+44 7700',
  '-Max',
  '@home',
  '\tTab',
  "O'Brien; DROP",
  '<b>Bo</b>',
  '4B-07',
  'Max',
  'Total',
  'Answers',
  'Ada B',
  'Ben C',
  'Ada B',
] as const

/** A name, a code, or something else that stands where names do. */
export function nameText(chance: Chance): string {
  return chance.onceIn(10)
    ? rubble(chance, 8)
    : chance.of(NAMES) + (chance.onceIn(2) ? ` ${chance.of([...'ABCDEFGH'])}` : '')
}
