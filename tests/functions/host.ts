import type { Bench } from '../../src/bench/bench'
import {
  callDirectly,
  refusedFor,
  type FunctionResult,
  type FunctionsMetadata,
  type RegisteredFunction,
} from '../../src/bench/customFunctions'
import { startBench } from '../../src/bench/node'
import { functionsMetadata } from '../../src/functions/metadata'

const SOURCE = 'src/functions/functions.ts'

/** One function as functions.json describes it. */
export interface DescribedFunction {
  readonly id: string
  readonly name: string
  readonly description?: string
  readonly options?: Readonly<Record<string, boolean>>
  readonly parameters: readonly {
    readonly name: string
    readonly description?: string
    readonly dimensionality?: string
    readonly optional?: boolean
    readonly type: string
  }[]
  readonly result: { readonly dimensionality?: string }
}

/** The custom functions as a host has them: described by functions.json, registered through the real client library. */
export interface FunctionsHost {
  readonly bench: Bench
  readonly functions: readonly DescribedFunction[]
  readonly registered: Readonly<Record<string, RegisteredFunction>>
  /**
   * Calls a function by its id, as far as functions.json lets a host do so; parameters that are left out are passed as null, as hosts pass
   * them.
   */
  call(id: string, ...args: unknown[]): Promise<FunctionResult>
}

/** Loads the client library and the functions. */
export async function loadFunctions(): Promise<FunctionsHost> {
  const bench = await startBench()
  await import('../../src/functions/index')
  const { json, errors } = await functionsMetadata(SOURCE)
  if (errors.length > 0) throw new Error(errors.join('\n'))
  const metadata = JSON.parse(json) as Pick<FunctionsMetadata, 'allowErrorForDataTypeAny'> & {
    functions: DescribedFunction[]
  }
  const { functions } = metadata
  const registered = registeredFunctions()
  return {
    bench,
    functions,
    registered,
    call(id, ...args) {
      const body = registered[id]
      const described = functions.find((one) => one.id === id)
      if (!body || !described) throw new Error(`There is no function ${id}.`)
      const passed = described.parameters.map((_, index) => args[index] ?? null)
      return Promise.resolve(refusedFor(metadata, passed) ?? callDirectly(body, id, passed, 'Sheet1!A1'))
    },
  }
}

function registeredFunctions(): Readonly<Record<string, RegisteredFunction>> {
  const client = CustomFunctions as unknown as {
    _association: { mappings: Record<string, RegisteredFunction> }
  }
  return client._association.mappings
}
