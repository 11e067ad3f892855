import { notOnBench } from './errors'
import { HostCollection, HostObject, classOf, findMember } from './hostObject'
import type { Query } from './wireTypes'
import { camelCase, pascalCase } from './wireTypes'

/** Reads one member by its wire or public name; fails loudly when the class lacks it. */
export function readMember(object: HostObject, name: string): unknown {
  const key = camelCase(name)
  if (!findMember(object, key)) throw notOnBench(`${classOf(object)}.${key}`)
  return Reflect.get(object, key, object)
}

/** Writes one member; an object given for a child object is laid over it, property by property. */
export function writeMember(object: HostObject, name: string, value: unknown): void {
  const key = camelCase(name)
  const member = findMember(object, key)
  if (!member) throw notOnBench(`${classOf(object)}.${key}`)
  if (member.set) Reflect.set(object, key, value, object)
  else {
    const child = readMember(object, key)
    if (!(child instanceof HostObject) || typeof value !== 'object' || value === null)
      throw notOnBench(`writing ${classOf(object)}.${key}`)
    for (const [part, partValue] of Object.entries(value)) writeMember(child, part, partValue)
  }
}

/** What the client must know of an object besides its properties: its id and the reference it is kept by. */
export type Identify = (object: HostObject) => Record<string, unknown>

/** The answer to a load: the properties in wire names, children nested, items of a collection in `_Items`. */
export function runQuery(object: HostObject, query: Query, identify: Identify): Record<string, unknown> {
  if (object instanceof HostCollection) return queryCollection(object, query, identify)
  const answer = identify(object)
  const nested = new Map<string, string[]>()
  const child = (key: string): string[] => {
    const names = nested.get(key) ?? []
    nested.set(key, names)
    return names
  }
  const { scalars } = object.constructor as typeof HostObject
  const select = query.Select?.length ? query.Select : scalars
  for (const path of select) {
    const [head = '', ...tail] = path.split(/[/.]/)
    if (tail.length > 0) child(camelCase(head)).push(tail.join('/'))
    else if (head === '*') for (const name of scalars) answer[pascalCase(name)] = readMember(object, name)
    else {
      const value = readMember(object, head)
      if (value instanceof HostObject) child(camelCase(head))
      else answer[pascalCase(camelCase(head))] = value
    }
  }
  for (const path of query.Expand ?? []) {
    const [head = '', ...tail] = path.split('/')
    if (tail.length > 0) child(camelCase(head)).push(tail.join('/'))
    else child(camelCase(head))
  }
  for (const [key, names] of nested) {
    const value = readMember(object, key)
    answer[pascalCase(key)] =
      value instanceof HostObject ? runQuery(value, { Select: names }, identify) : null
  }
  return answer
}

/** Names of the collection's own properties are for it, all others are for its items. */
function queryCollection(
  collection: HostCollection<HostObject>,
  query: Query,
  identify: Identify,
): Record<string, unknown> {
  const { Skip: skip = 0, Top: top = Infinity, Expand: expand = [], Select: select = [] } = query
  const { scalars } = collection.constructor as typeof HostObject
  const own = select.filter((name) => scalars.includes(camelCase(name)))
  const forItems: Query = { Select: select.filter((name) => !own.includes(name)), Expand: expand }
  const answer = identify(collection)
  for (const name of select.length > 0 ? own : scalars)
    answer[pascalCase(name)] = readMember(collection, name)
  if (own.length > 0 && own.length === select.length && expand.length === 0) return answer
  const items = collection.all().slice(skip, skip + top)
  return {
    ...answer,
    _Items: items.map((item, index) => ({ ...runQuery(item, forItems, identify), _Index: index })),
  }
}
