import { itemNotFound } from './errors'

/**
 * Base of the host's classes. What a class defines on its prototype, under the public API's names, is what the client
 * can reach; private state belongs in # fields or own properties, which the client cannot reach.
 */
export abstract class HostObject {
  /** The public API's name of the class, for error messages (class names do not survive minifying). */
  static readonly className: string = 'Object'
  /** The properties a bare `load()` brings. */
  static readonly scalars: readonly string[] = []

  /** The value of `Id` that the client needs to find this object again; undefined where the class has none. */
  get wireId(): string | undefined {
    return undefined
  }
}

/** Base of the collections: `all` is every item, the rest follows from `getItem`. */
export abstract class HostCollection<T extends HostObject> extends HostObject {
  abstract all(): readonly T[]

  /** The item with this key, or undefined. */
  protected abstract find(key: unknown): T | undefined

  getItem(key: unknown): T {
    const item = this.find(key)
    if (!item) throw itemNotFound()
    return item
  }
  getItemOrNullObject(key: unknown): T | null {
    return this.find(key) ?? null
  }
  getItemAt(index: number): T {
    const item = this.all()[index]
    if (!item) throw itemNotFound()
    return item
  }
  getCount(): number {
    return this.all().length
  }
}

const INTERNAL = new Set(['constructor', 'wireId', 'all', 'find'])

/** The public name of an object's class. */
export const classOf = (object: HostObject): string => (object.constructor as typeof HostObject).className

/** Looks a member up between the object's class and the base; own properties do not count. */
export function findMember(object: HostObject, key: string): PropertyDescriptor | undefined {
  if (INTERNAL.has(key)) return undefined
  for (
    let level: unknown = Object.getPrototypeOf(object);
    level && level !== HostObject.prototype;
    level = Object.getPrototypeOf(level)
  ) {
    const descriptor = Object.getOwnPropertyDescriptor(level, key)
    if (descriptor) return descriptor
  }
  return undefined
}
