/**
 * The conjunctive model over all skill profiles of one operation, computed exactly.
 *
 * With K skills there are 2^K profiles; a profile is a bit set, bit k standing for skill k, and every array here has one
 * entry for each profile, at that index. A question's demand is a bit set too. A pupil whose profile contains the demand
 * answers right with chance 1 − slip, any other with chance guess (Junker and Sijtsma 2001, from memory).
 *
 * An answer therefore tells profiles apart only by whether they contain its demand: it adds one number to the log weight of
 * every profile that does. Such numbers are gathered at the index of their demand, and one sum over subsets gives every
 * profile its own total; one sum over supersets of the weights gives for every demand the chance that a pupil meets it.
 * Both take K · 2^(K − 1) additions, however many answers there are. Log weights are natural logarithms, up to a constant.
 */

/** Replaces each entry by the sum of the entries at all subsets of its index. In place. */
export function sumOverSubsets(values: Float64Array): void {
  for (let skill = 1; skill < values.length; skill <<= 1)
    for (let held = skill; held < values.length; held = (held + 1) | skill)
      values[held] = at(values, held) + at(values, held ^ skill)
}

/** Replaces each entry by the sum of the entries at all supersets of its index. In place. */
export function sumOverSupersets(values: Float64Array): void {
  for (let skill = 1; skill < values.length; skill <<= 1)
    for (let held = skill; held < values.length; held = (held + 1) | skill)
      values[held ^ skill] = at(values, held ^ skill) + at(values, held)
}

/** Log weights of the 2^skills profiles when each skill is held with chance `prior`, independently. */
export function startingWeights(skills: number, prior: number): Float64Array {
  const weights = new Float64Array(1 << skills)
  for (let skill = 0; skill < skills; skill++) weights[1 << skill] = Math.log(prior / (1 - prior))
  sumOverSubsets(weights)
  return weights
}

/**
 * What one answer adds to the log weight of each profile that contains the question's demand: `right` and `wrong`, each
 * relative to the profiles that do not contain it.
 */
export function answerWeights(
  slip: number,
  guess: number,
): { readonly right: number; readonly wrong: number } {
  return { right: Math.log((1 - slip) / guess), wrong: Math.log(slip / (1 - guess)) }
}

/** Adds evidence, gathered at the indices of the demands, to the log weights. Both arrays change. */
export function addEvidence(logWeights: Float64Array, evidence: Float64Array): void {
  sumOverSubsets(evidence)
  for (let profile = 0; profile < logWeights.length; profile++)
    logWeights[profile] = at(logWeights, profile) + at(evidence, profile)
}

/**
 * The time between two occasions: each skill not held is learnt with chance `learn`, each held forgotten with chance `forget`,
 * independently (learning between occasions: Corbett and Anderson 1995, from memory). In place. A profile e^700 times less
 * likely than the likeliest counts as that unlikely, so that no weight becomes 0 and no later evidence is powerless.
 */
export function letTimePass(logWeights: Float64Array, learn: number, forget: number): void {
  const highest = maximum(logWeights)
  const weights = logWeights
  for (let profile = 0; profile < weights.length; profile++)
    weights[profile] = Math.exp(Math.max(at(weights, profile) - highest, -700))
  for (let skill = 1; skill < weights.length; skill <<= 1)
    for (let held = skill; held < weights.length; held = (held + 1) | skill) {
      const without = at(weights, held ^ skill)
      const having = at(weights, held)
      weights[held ^ skill] = (1 - learn) * without + forget * having
      weights[held] = learn * without + (1 - forget) * having
    }
  for (let profile = 0; profile < weights.length; profile++) weights[profile] = Math.log(at(weights, profile))
}

/** Writes into `chances`, for every demand, the chance that a pupil has all the skills in it. `logWeights` stay as they are. */
export function chancesOfAll(logWeights: Float64Array, chances: Float64Array): void {
  const highest = maximum(logWeights)
  for (let profile = 0; profile < chances.length; profile++)
    chances[profile] = Math.exp(at(logWeights, profile) - highest)
  sumOverSupersets(chances)
  const total = at(chances, 0)
  for (let demand = 0; demand < chances.length; demand++) chances[demand] = at(chances, demand) / total
}

function maximum(values: Float64Array): number {
  let highest = -Infinity
  for (let index = 0; index < values.length; index++)
    if (at(values, index) > highest) highest = at(values, index)
  return highest
}

/** The entry at an index known to lie within the array. */
function at(values: Float64Array, index: number): number {
  return values[index] as number
}
