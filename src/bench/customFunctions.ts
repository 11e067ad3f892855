import { isErrorValue } from './grid/cellText'
import type { CellValue } from './grid/grid'
import type { InvocationResult } from './host/excel/customFunctionsService'

/** What a custom function gave: one value, or a matrix that spills. An error is its value, with the message if any. */
export interface FunctionResult {
  readonly value: CellValue | CellValue[][]
  readonly message?: string
}

/** A function as the add-in registered it. */
export type RegisteredFunction = (...args: unknown[]) => unknown

/** What functions.json says of the functions; the parts that the bench uses. */
export interface FunctionsMetadata {
  /** Whether functions are called where an error value is among what is passed to them. */
  readonly allowErrorForDataTypeAny?: boolean
  readonly functions: readonly {
    readonly id: string
    readonly name: string
    readonly description?: string
    readonly parameters?: readonly {
      readonly name: string
      readonly dimensionality?: 'scalar' | 'matrix'
      readonly optional?: boolean
    }[]
  }[]
}

/** Error values by the code in which the client returns them. */
const ERROR_OF_CODE: Readonly<Record<number, string>> = {
  1: '#N/A',
  5: '#DIV/0!',
  6: '#NUM!',
  7: '#VALUE!',
  8: '#NULL!',
  10: '#NAME?',
}

/** A value as a cell holds it; nothing at all shows as 0, as in Excel. */
function cellValue(value: unknown): CellValue {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value
  if (value === null || value === undefined) return 0
  const { basicValue, code } = value as { basicValue?: CellValue; code?: CellValue }
  return basicValue ?? code ?? '#VALUE!'
}

const cellValues = (value: unknown): CellValue | CellValue[][] =>
  Array.isArray(value)
    ? value.map((line: unknown) => (Array.isArray(line) ? line : [line]).map(cellValue))
    : cellValue(value)

/** The error that Excel shows instead of calling a function, where one is passed to it that its metadata does not allow; null for none. */
export function refusedFor(
  { allowErrorForDataTypeAny }: Pick<FunctionsMetadata, 'allowErrorForDataTypeAny'>,
  args: readonly unknown[],
): FunctionResult | null {
  if (allowErrorForDataTypeAny === true) return null
  const error = args
    .flat(2)
    .map(errorIn)
    .find((value) => value !== null)
  return error === undefined ? null : { value: error }
}

/** The error value that is passed for a cell, as a text or as the object that Excel makes of it; null for any other cell. */
function errorIn(passed: unknown): string | null {
  const isObject = typeof passed === 'object' && passed !== null && 'basicValue' in passed
  const value = isObject ? passed.basicValue : passed
  return typeof value === 'string' && isErrorValue(value) ? value : null
}

/** Reads what the client returned for one call. */
export function readInvocation([, succeeded, result, code]: InvocationResult): FunctionResult {
  if (succeeded) return { value: cellValues(result) }
  const value = ERROR_OF_CODE[typeof code === 'number' ? code : 0] ?? '#VALUE!'
  return typeof result === 'string' && result !== '' ? { value, message: result } : { value }
}

/** Calls a registered function straight away, as the client would on an invocation. Errors become error values. */
export async function callDirectly(
  registered: RegisteredFunction,
  id: string,
  args: readonly unknown[],
  address: string,
): Promise<FunctionResult> {
  try {
    return { value: cellValues(await registered(...args, { address, functionName: id })) }
  } catch (error) {
    const { code, message } = error as { code?: unknown; message?: unknown }
    const value = typeof code === 'string' && code.startsWith('#') ? code : '#VALUE!'
    return typeof message === 'string' && message !== '' ? { value, message } : { value }
  }
}
