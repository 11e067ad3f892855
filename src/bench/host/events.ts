import type { HostObject } from './hostObject'

/** The numbers the client knows sheet events by. */
export const EVENT = {
  changed: 10,
  activated: 11,
  deactivated: 12,
  added: 13,
  selectionChanged: 14,
  deleted: 15,
} as const

/** The target that stands for every sheet. */
export const ANY_SHEET = 'Workbook'

/** What the client calls an event of that number when it registers for it. */
const WIRE_NAME: Readonly<Record<keyof typeof EVENT, string>> = {
  changed: 'DataChanged',
  activated: 'Activated',
  deactivated: 'Deactivated',
  added: 'Added',
  selectionChanged: 'SelectionChanged',
  deleted: 'Deleted',
}

/** Who listens to what: a target (a sheet's id or ANY_SHEET) and the number of an event. */
export class Registrations {
  readonly #wanted = new Set<string>()

  on(target: string, event: number): void {
    this.#wanted.add(`${target}|${event}`)
  }
  off(target: string, event: number): void {
    this.#wanted.delete(`${target}|${event}`)
  }
  /** The targets on which an event in a sheet is to be told. */
  targets(sheetId: string, event: number): string[] {
    return [sheetId, ANY_SHEET].filter((target) => this.#wanted.has(`${target}|${event}`))
  }
}

/** Gives a class the members by which the client registers for the named events. */
export function offerEvents<T extends HostObject>(
  prototype: T,
  names: readonly (keyof typeof EVENT)[],
  registrations: (object: T) => Registrations,
  target: (object: T) => string,
): void {
  const define = (key: string, value: (this: T) => void) =>
    Object.defineProperty(prototype, key, { value, configurable: true })
  for (const name of names) {
    define(`_register${WIRE_NAME[name]}Event`, function () {
      registrations(this).on(target(this), EVENT[name])
    })
    define(`_unregister${WIRE_NAME[name]}Event`, function () {
      registrations(this).off(target(this), EVENT[name])
    })
  }
}
