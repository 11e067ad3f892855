import type { CellValue } from '../../src/answers/typed'
import { findMarksheets } from '../../src/marksheet/layout/find'
import type { Chance } from './chance'
import { dressed, LIKE_LABELS, type Cell, type Sum } from './dressing'

/**
 * Sheets with several classes on them, made knowing whose answer every cell is. Nothing of the reader's is used: what a name, a heading
 * or an answer looks like is written down here again, as schools keep such sheets (common practice, no source).
 */
export interface KnownClasses {
  readonly values: readonly (readonly CellValue[])[]
  /** Whose answer stands in a cell, by "row,column" from 0; no other cell is anybody's. */
  readonly owners: ReadonlyMap<string, string>
  /** How the classes were laid out, for the report. */
  readonly how: string
}

type Cells = Cell[][]

const FIRST = [
  'Ada',
  'Ben',
  'Cai',
  'Dee',
  'Eve',
  'Flo',
  'Gil',
  'Hal',
  'Ivy',
  'Jem',
  'Kit',
  'Lin',
  'Moe',
  'Nia',
  'Oli',
  'Pia',
  'Ros',
  'Sol',
  'Tom',
  'Una',
  'Viv',
  'Wes',
  'Yan',
  'Zoe',
]
const INITIALS = 'BCDFGHJKLMNPRSTVW'
const CORNERS = ['Name', 'Pupil', 'Wrens', 'Mrs Day', '4B', 'Class 4', 'Re-test', '']
const KINDS = ['down', 'across', 'pairs'] as const
type Kind = (typeof KINDS)[number]

/** A subtraction or an addition with its right answer, by plain arithmetic on whole numbers. */
function question(chance: Chance): Sum & { readonly text: string } {
  const [one, other] = [chance.whole(120, 999), chance.whole(11, 119)]
  const sign = chance.onceIn(3) ? '+' : '−'
  const answer = sign === '+' ? one + other : one - other
  return { one, sign, other, answer, text: `${one} ${sign} ${other}` }
}

/** What a child typed: mostly right, else a number close by, at times nothing or a word. */
function typed(chance: Chance, answer: number): CellValue {
  if (chance.onceIn(15)) return null
  if (chance.onceIn(40)) return 'abs'
  return chance.onceIn(4) ? answer + chance.of([-110, -100, -10, -1, 1, 10, 100]) : answer
}

function block(chance: Chance, kind: Kind, names: readonly string[]): Cells {
  const count = chance.whole(2, 6)
  const questions = Array.from({ length: count }, () => question(chance))
  const corner = chance.of(CORNERS)
  if (kind !== 'pairs') {
    const children = names.map((of) => ({
      name: of,
      answers: questions.map(({ answer }) => ({ answer: typed(chance, answer), of })),
    }))
    const down = dressed(chance, corner, kind === 'across', questions, children)
    return kind === 'down' ? down : turned(down)
  }
  const isSpread = chance.onceIn(6)
  const heads = questions.flatMap((_, index) => [
    `Question ${index + 1}`,
    ...(isSpread ? ['', '', ''] : []),
    `Answer ${index + 1}`,
  ])
  return [
    [corner, ...heads],
    ...names.map((name) => [
      name,
      ...Array.from({ length: count }, () => question(chance)).flatMap(
        ({ text, one, sign, other, answer }) => [
          ...(isSpread ? [one, sign, other, '='] : [text]),
          { answer: typed(chance, answer), of: name },
        ],
      ),
    ]),
  ]
}

function turned(rows: Cells): Cells {
  const width = Math.max(...rows.map(({ length }) => length))
  return Array.from({ length: width }, (_, column) => rows.map((row) => row[column] ?? null))
}

/** One to three classes of any layouts, side by side or below each other. */
export function knownClasses(chance: Chance): KnownClasses {
  const plain = FIRST.map((first) => `${first} ${chance.of([...INITIALS])}`)
  const pool = plain.map((name, index) => (chance.onceIn(30) ? (LIKE_LABELS[index] ?? name) : name))
  const blocks = chance.some(1, 3, () => {
    const kind = chance.of(KINDS)
    return { kind, cells: block(chance, kind, pool.splice(0, chance.whole(3, 7))) }
  })
  const isBeside = chance.onceIn(2)
  const placed: Cells = []
  const how: string[] = []
  let [row, column] = [chance.whole(0, 2), 0]
  if (row > 0 && chance.onceIn(2)) placed[0] = ['Column methods, week 3']
  for (const { kind, cells } of blocks) {
    const lower = isBeside ? chance.whole(0, 3) : 0
    how.push(kind)
    cells.forEach((line, r) => {
      line.forEach((cell, c) => {
        const target = (placed[row + lower + r] ??= [])
        target[column + c] = cell
      })
    })
    const gap = chance.whole(isBeside ? 0 : 1, 2)
    if (isBeside) column += Math.max(...cells.map(({ length }) => length)) + gap
    else row += cells.length + gap
  }
  return flattened(placed, `${how.join(isBeside ? ' beside ' : ' over ')}`)
}

function flattened(placed: Cells, how: string): KnownClasses {
  const owners = new Map<string, string>()
  const width = Math.max(...Array.from(placed, (line?: Cells[number]) => line?.length ?? 0))
  const values = Array.from(placed, (line, row) =>
    Array.from({ length: width }, (_, column): CellValue => {
      const cell = line?.[column] ?? null
      if (cell === null || typeof cell !== 'object') return cell
      owners.set(`${row},${column}`, cell.of)
      return cell.answer
    }),
  )
  return { values, owners, how }
}

/** How a sheet was read: answers given to their own child, and a sentence for each that went to another, or to a child there is not. */
export function readClasses({ values, owners }: KnownClasses): {
  readonly right: number
  readonly wrong: string[]
} {
  const names = new Set(owners.values())
  const wrong: string[] = []
  let right = 0
  for (const { pupils } of findMarksheets({ name: 'Classes', values })) {
    for (const { name, answers } of pupils) {
      if (!names.has(name)) wrong.push(`There is no child called ${name}.`)
      for (const { row, column } of answers) {
        const owner = owners.get(`${row},${column}`)
        const value = values[row]?.[column] ?? null
        if (owner === name) right++
        else if (owner !== undefined || value !== null)
          wrong.push(`${name} gets ${String(value)}, which is ${owner ?? 'nobody'}'s.`)
      }
    }
  }
  return { right, wrong }
}
