import { FAULTS, type Fault, type FaultId } from '../../../src/answers/faults'

/** What the catalogue says of a fault; null for none. */
export function faultOf(id: FaultId | null): Fault | null {
  return FAULTS.find((fault) => fault.id === id) ?? null
}
