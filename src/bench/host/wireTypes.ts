/** How the client finds an object: by what, from which parent. */
export const PathKind = {
  Global: 1,
  New: 2,
  Method: 3,
  Property: 4,
  Indexer: 5,
  Reference: 6,
  Null: 7,
} as const

/** What the client asks for. */
export const ActionKind = {
  Instantiate: 1,
  Query: 2,
  Method: 3,
  SetProperty: 4,
  Trace: 5,
  RecursiveQuery: 6,
  QueryAsJson: 7,
  EnsureUnchanged: 8,
  Update: 9,
} as const

/** Arguments; objects among them come as ids of paths, in the same nesting as the values. */
export interface ArgumentInfo {
  readonly Arguments?: readonly unknown[]
  readonly ReferencedObjectPathIds?: readonly unknown[]
}

export interface PathInfo {
  readonly Id: number
  readonly ObjectPathType: number
  readonly Name: string
  readonly ParentObjectPathId?: number
  readonly ArgumentInfo?: ArgumentInfo
}

/** Which properties to bring (`Select`), which children to bring whole (`Expand`), and which items of a collection. */
export interface Query {
  readonly Select?: readonly string[]
  readonly Expand?: readonly string[]
  readonly Top?: number
  readonly Skip?: number
}

export interface Action {
  readonly Id: number
  readonly ActionType: number
  readonly Name: string
  readonly ObjectPathId: number
  readonly ArgumentInfo?: ArgumentInfo
  readonly QueryInfo?: Query
  readonly ObjectState?: Readonly<Record<string, unknown>>
}

/** One request of the client. */
export interface RequestBody {
  readonly Actions: readonly Action[]
  readonly ObjectPaths: Readonly<Record<string, PathInfo>>
}

export interface WireError {
  readonly Code: string
  readonly Message: string
  readonly Location: string
  readonly ActionIndex: number
  readonly HttpStatusCode: number
}

/** The host's reply: a result for each action done, and the error that stopped the rest. */
export interface ResponseBody {
  readonly Results: readonly { readonly ActionId: number; readonly Value: unknown }[]
  readonly Error?: WireError
}

/** `Values` → `values`, `_KeepReference` → `_keepReference`. */
export const camelCase = (name: string): string =>
  name.startsWith('_') ? `_${camelCase(name.slice(1))}` : name.charAt(0).toLowerCase() + name.slice(1)

/** `values` → `Values`. */
export const pascalCase = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1)
