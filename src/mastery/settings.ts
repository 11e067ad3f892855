/** Every rate and threshold by which mastery is judged. Rates and probabilities from 0 to 1. */
export interface MasterySettings {
  /** Chance that a pupil who can still answers a question wrong. */
  readonly slip: number
  /** Chance that a pupil who cannot still answers a question right. */
  readonly guess: number
  /** Chance that a pupil can, before any answer is seen. */
  readonly prior: number
  /** Chance that what a pupil cannot on one occasion has been learnt by the next on which it is answered. */
  readonly learn: number
  /** Share by which what is above a half fades from one occasion to the next. */
  readonly forget: number
  /** Probability from which the status is `secure`. */
  readonly secure: number
  /** Probability up to which the status is `needs support`; `nearly secure` lies between. */
  readonly needsSupport: number
  /** Fewest answered questions for any status but `not enough seen`. A whole number from 1. */
  readonly fewestTried: number
}

/**
 * The settings a new workbook starts with. They are judgements (common practice, no source), chosen so that two right of two
 * is secure, two right of three is nearly secure, and one right of two says nothing yet.
 */
export const DEFAULT_MASTERY: MasterySettings = {
  // A pupil who knows the method still miscopies a digit or misremembers a number fact about once in twelve questions.
  slip: 0.08,
  // A pupil who cannot do a type yet still gets one in five right: by another route (counting on), or where the fault does not show.
  guess: 0.2,
  // Nothing is known of a pupil beforehand: each skill as likely held as not makes every profile equally likely.
  prior: 0.5,
  // Weekly teaching: a skill takes about five weeks on average, so a pupil who has learnt leaves the list in a week or two.
  learn: 0.2,
  // An unused skill lasts about twenty weeks, so old evidence fades but one slip does not undo a term's.
  forget: 0.05,
  // Wrong about one time in seven or less: a teacher can move on and be seldom sorry.
  secure: 0.85,
  // Three to one that the pupil cannot yet: likely enough to look at the working.
  needsSupport: 0.25,
  // One answer is too easily a slip or a guess to put a pupil on a list.
  fewestTried: 2,
}

/** What is wrong with the settings, as a sentence for the person who entered them; null where they make sense. */
export function settingsProblem(settings: MasterySettings): string | null {
  const { slip, guess, prior, learn, forget, secure, needsSupport, fewestTried } = settings
  if (!isInside(slip)) return 'The chance of a slip must lie between 0 and 1, both left out.'
  if (!isInside(guess)) return 'The chance of a right guess must lie between 0 and 1, both left out.'
  if (slip + guess >= 1)
    return 'Slip and guess must add up to less than 1, or a right answer would speak against the pupil.'
  if (!isInside(prior))
    return 'The chance that a pupil has a skill beforehand must lie between 0 and 1, both left out.'
  if (!isRate(learn)) return 'The chance of learning between occasions must be at least 0 and below 1.'
  if (!isRate(forget)) return 'The chance of forgetting between occasions must be at least 0 and below 1.'
  if (learn + forget >= 1)
    return 'Learning and forgetting must add up to less than 1, or having a skill would speak against having it later.'
  if (!isInside(needsSupport))
    return 'The threshold for needs support must lie between 0 and 1, both left out.'
  if (!isInside(secure)) return 'The threshold for secure must lie between 0 and 1, both left out.'
  if (secure <= needsSupport) return 'The threshold for secure must be above that for needs support.'
  if (!Number.isSafeInteger(fewestTried) || fewestTried < 1)
    return 'The fewest questions tried must be a whole number from 1 up.'
  return null
}

function isInside(chance: number): boolean {
  return chance > 0 && chance < 1
}

function isRate(chance: number): boolean {
  return chance >= 0 && chance < 1
}
