import { HostError, inCellEditMode } from './errors'
import type { RequestBody } from './wireTypes'
import { ActionKind, PathKind } from './wireTypes'

/** A fault to come. */
export interface Fault {
  /** Which sync from now on fails, 1 being the next; syncs that only let go of kept objects do not count. */
  readonly sync?: number
  /** The error code the add-in gets, such as `GeneralException`. */
  readonly code: string
  readonly message?: string
  /** How many calls and property writes of that sync are done before the fault; loads do not count. Default 0. */
  readonly after?: number
  /** Everything of that sync is done, and only its answer is lost. */
  readonly lost?: boolean
}

/** What a request has to call: `before` each of its actions, and `end` after the last; both throw when a fault's time has come. */
interface Watch {
  before(type: number, name: string | undefined): void
  end(): void
}

const nothing = () => undefined
const UNDISTURBED: Watch = { before: nothing, end: nothing }

const isHousekeeping = (name: string | undefined) => name === '_KeepReference' || name === '_RemoveReference'

/** Requests that the client sends of its own accord: to let go of kept objects, and to its own services. */
const isClientsOwn = ({ Actions, ObjectPaths }: RequestBody): boolean =>
  Object.values(ObjectPaths).some((path) => path.ObjectPathType === PathKind.New) ||
  (Actions.some(({ Name }) => Name === '_RemoveReference') &&
    Actions.every(
      ({ ActionType, Name }) => ActionType === ActionKind.Instantiate || Name === '_RemoveReference',
    ))

/** Whether an action changes something, as far as the wire tells. */
const isStep = (type: number, name: string | undefined): boolean =>
  type === ActionKind.SetProperty ||
  type === ActionKind.Update ||
  (type === ActionKind.Method && !isHousekeeping(name) && name !== '_ValidateArraySize')

/** The faults that a test has asked for. */
export class Faults {
  /** While true every request fails as it does when the user is typing in a cell. */
  editing = false
  readonly #planned: { syncsLeft: number; fault: Fault }[] = []

  plan(fault: Fault): void {
    this.#planned.push({ syncsLeft: fault.sync ?? 1, fault })
  }

  /** Starts a request. */
  begin(body: RequestBody): Watch {
    if (isClientsOwn(body)) return UNDISTURBED
    if (this.editing)
      return {
        before: () => {
          throw inCellEditMode()
        },
        end: nothing,
      }
    for (const planned of this.#planned) planned.syncsLeft--
    const due = this.#planned.findIndex((planned) => planned.syncsLeft <= 0)
    const fault = due < 0 ? undefined : this.#planned.splice(due, 1)[0]?.fault
    if (!fault) return UNDISTURBED
    const { code, message = 'There was an internal error while processing the request.', after = 0 } = fault
    const fail = () => {
      throw new HostError(code, message, 500)
    }
    if (fault.lost === true) return { before: nothing, end: fail }
    let done = 0
    return {
      before: (type, name) => {
        if (done >= after) fail()
        if (isStep(type, name)) done++
      },
      end: nothing,
    }
  }
}
