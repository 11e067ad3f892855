import type { FaultId } from '../faults'

/** Everything that the diagnosis assumes. Probabilities from 0 to 1. */
export interface DiagnosisSettings {
  /** How common each kind of account is before any answer is seen; only their proportions count. */
  readonly prior: {
    readonly right: number
    readonly careless: number
    readonly unsystematic: number
    readonly fault: number
    readonly pair: number
    /** Of the pupils with a fault, the part who hold it now and then only. */
    readonly nowAndThen: number
  }
  /** How common a fault is beside the others; 1 where none is given. */
  readonly weight: Readonly<Partial<Record<FaultId, number>>>
  /** Chance of a slip in one answer of a pupil who works with ordinary care. */
  readonly slip: number
  /** The same for a careless pupil. */
  readonly carelessSlip: number
  /** The part of the slips in which two digits are swapped; in the others one digit is out by one. */
  readonly swapped: number
  /** Chance that a pupil with a fault works one question as taught. */
  readonly lapse: number
  /** Chance of an answer that the account of the pupil does not provide for. */
  readonly stray: number
  /** The part of such answers that a known fault would give; the others are any number of that length. */
  readonly strayLikeFault: number
  /** Chance that a pupil without any pattern gets an answer right. */
  readonly unsystematicRight: number
  /** The part of the wrong answers of such a pupil that look like a slip. */
  readonly unsystematicSlip: number
  /** A fault is named to the teacher from this probability on. */
  readonly nameFrom: number
  /** A fault that is not named but has this probability is open: more questions would tell. */
  readonly openFrom: number
  /** So many wrong answers must be exactly those of a named fault and of no simpler account. */
  readonly leastExplained: number
  /** The same where the fault is held now and then, and the part of the wrong answers that it must explain. */
  readonly leastNowAndThen: number
  readonly shareNowAndThen: number
}

/**
 * The settings and their reasons; common practice, no source, where none is given. What they lead to is shown by the simulation
 * (tests/evidence/simulate.ts): hardly any pupil with the right method is named a fault, so nameFrom need not be higher.
 */
export const DIAGNOSIS_SETTINGS: DiagnosisSettings = {
  // Most of a class that has been taught the method uses it; about one pupil in four has a fault, few have two.
  prior: { right: 0.5, careless: 0.15, unsystematic: 0.07, fault: 0.25, pair: 0.03, nowAndThen: 0.2 },
  // Taking the smaller digit from the larger is the commonest in the literature (VanLehn 1990, Mind Bugs; from memory).
  weight: { 'takes-smaller-from-larger': 3 },
  slip: 0.05,
  carelessSlip: 0.2,
  swapped: 0.2,
  // Faults come and go from question to question (VanLehn 1990, from memory), but mostly they stay for one sheet.
  lapse: 0.03,
  stray: 0.02,
  strayLikeFault: 0.5,
  unsystematicRight: 0.35,
  unsystematicSlip: 0.25,
  nameFrom: 0.9,
  openFrom: 0.2,
  leastExplained: 2,
  leastNowAndThen: 3,
  shareNowAndThen: 2 / 3,
}
