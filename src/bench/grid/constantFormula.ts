import type { CellValue } from './grid'

/** Thrown to leave the calculation with an Excel error value. */
class CellError extends Error {
  constructor(readonly value: string) {
    super(value)
  }
}

const TOKEN = /\s*(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+|"(?:[^"]|"")*"|TRUE|FALSE|<>|<=|>=|[-+*/^&=<>()%])/iy

function tokens(text: string): string[] {
  const found: string[] = []
  TOKEN.lastIndex = 0
  while (TOKEN.lastIndex < text.trimEnd().length) {
    const token = TOKEN.exec(text)?.[1]
    if (token === undefined) throw new CellError('#NAME?')
    found.push(token)
  }
  return found
}

const toNumber = (value: CellValue): number => {
  const number = typeof value === 'string' && value.trim() === '' ? NaN : Number(value)
  if (Number.isNaN(number)) throw new CellError('#VALUE!')
  return number
}

const toText = (value: CellValue): string =>
  typeof value === 'boolean' ? String(value).toUpperCase() : String(value)

const finite = (number: number): number => {
  if (!Number.isFinite(number)) throw new CellError('#NUM!')
  return number
}

type Operation = (a: CellValue, b: CellValue) => CellValue

const LEVELS: readonly Readonly<Record<string, Operation>>[] = [
  {
    '=': (a, b) => a === b,
    '<>': (a, b) => a !== b,
    '<': (a, b) => a < b,
    '>': (a, b) => a > b,
    '<=': (a, b) => a <= b,
    '>=': (a, b) => a >= b,
  },
  { '&': (a, b) => toText(a) + toText(b) },
  { '+': (a, b) => toNumber(a) + toNumber(b), '-': (a, b) => toNumber(a) - toNumber(b) },
  {
    '*': (a, b) => toNumber(a) * toNumber(b),
    '/': (a, b) => {
      if (toNumber(b) === 0) throw new CellError('#DIV/0!')
      return toNumber(a) / toNumber(b)
    },
  },
  { '^': (a, b) => finite(toNumber(a) ** toNumber(b)) },
]

/**
 * The value of a formula over constants (`=475`, `=12+5`, `=1/0`): all that a grid without a calculation engine works
 * out. A reference, a name or a function gives `#NAME?`, as an unknown name does in Excel.
 */
export function constantFormula(formula: string): CellValue {
  try {
    const rest = tokens(formula.slice(1))
    const value = level(0, rest)
    return rest.length === 0 ? value : '#NAME?'
  } catch (error) {
    if (error instanceof CellError) return error.value
    throw error
  }
}

function level(depth: number, rest: string[]): CellValue {
  const operations = LEVELS[depth]
  if (!operations) return operand(rest)
  let left = level(depth + 1, rest)
  for (let operation = operations[rest[0] ?? '']; operation; operation = operations[rest[0] ?? '']) {
    rest.shift()
    left = operation(left, level(depth + 1, rest))
  }
  return left
}

function operand(rest: string[]): CellValue {
  const token = rest.shift()
  if (token === undefined || token === ')') throw new CellError('#NAME?')
  if (token === '-') return -toNumber(operand(rest))
  if (token === '+') return operand(rest)
  let value: CellValue
  if (token === '(') {
    value = level(0, rest)
    if (rest.shift() !== ')') throw new CellError('#NAME?')
  } else if (token.startsWith('"')) value = token.slice(1, -1).replace(/""/g, '"')
  else if (/^(?:TRUE|FALSE)$/i.test(token)) value = token.toUpperCase() === 'TRUE'
  else if (/^[\d.]/.test(token)) value = Number(token)
  else throw new CellError('#NAME?')
  while (rest[0] === '%') {
    rest.shift()
    value = toNumber(value) / 100
  }
  return value
}
