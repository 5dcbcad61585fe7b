/** Amounts are whole minor units: nearer than half of one is the same amount. */
const SAME = 0.5

/**
 * Where an outcome falls among draws of a forecast, between 0 and 1: the randomised probability integral transform. Draws equal to the outcome share
 * its place by `chance`, a uniform draw. Where outcome and draws come from one distribution it is uniform, whatever the distribution and the number of draws.
 *
 * Source: Czado, Gneiting & Held, Biometrics 65 (2009), for the randomised transform; the count of m + 1 from exchangeability.
 *
 * @example randomisedTransform([1, 2, 2, 3], 2, 0.5) // 0.5
 */
export function randomisedTransform(draws: ArrayLike<number>, outcome: number, chance: number): number {
  let below = 0
  let same = 0
  for (let index = 0; index < draws.length; index += 1) {
    const draw = draws[index] as number
    if (draw < outcome - SAME) below += 1
    else if (draw <= outcome + SAME) same += 1
  }
  return (below + chance * (same + 1)) / (draws.length + 1)
}
