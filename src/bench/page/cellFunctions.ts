import type { FUniver } from '@univerjs/core/facade'
import type {} from '@univerjs/sheets-formula/facade'
import type { Bench } from '../bench'
import { callDirectly, refusedFor } from '../customFunctions'
import type { FunctionResult, FunctionsMetadata, RegisteredFunction } from '../customFunctions'

/** The namespace under which the add-in's functions are called in cells. */
const NAMESPACE = 'COLUMNWISE'

/** How cells reach the add-in's functions: straight, or through its runtime as Excel does (results every 500 ms). */
export type CallPath = 'direct' | 'runtime'

type FunctionMetadata = FunctionsMetadata['functions'][number]

/** The functions that the add-in has registered in its window, by id in capitals. */
export type Registered = () => Readonly<Record<string, RegisteredFunction>>

/** Excel gives a range for a matrix parameter always, for a scalar one never. */
function shaped(args: readonly unknown[], { parameters = [] }: FunctionMetadata): unknown[] {
  return parameters.map(({ dimensionality }, i) => {
    const given = args[i]
    if (given === undefined) return null
    if (dimensionality === 'matrix') return Array.isArray(given) ? given : [[given]]
    const [first] = Array.isArray(given) ? (given as unknown[]) : [given]
    return Array.isArray(first) ? (first as unknown[])[0] : first
  })
}

/** Makes the functions of functions.json callable in the grid's cells. Errors become error values, never exceptions. */
export function registerCellFunctions(
  api: FUniver,
  bench: Bench,
  metadata: FunctionsMetadata,
  registered: Registered,
  path: () => CallPath,
): void {
  const formula = api.getFormula()
  for (const one of metadata.functions) {
    const call = async (...given: unknown[]): Promise<FunctionResult> => {
      const args = shaped(given, one)
      const refused = refusedFor(metadata, args)
      if (refused) return refused
      if (path() === 'runtime') return bench.callCustomFunction(one.id, args)
      const known = registered()[one.id.toUpperCase()]
      return known ? callDirectly(known, one.id, args, '') : { value: '#NAME?' }
    }
    formula.registerAsyncFunction(
      `${NAMESPACE}.${one.name}`,
      async (...given) => (await call(...(given as unknown[]))).value,
      one.description ?? '',
    )
  }
}
