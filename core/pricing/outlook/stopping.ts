/** A sale price that may be offered on a day, and how likely it is given that there is a sale. */
export interface Offer {
  price: number
  weight: number
}

/** What may happen on one day of waiting, as money of any unit. */
export interface StoppingDay {
  /** Price without a sale. */
  regular: number
  /** Chance of a sale on this day, 0 to 1. */
  chance: number
  /** Weights add up to 1; may be empty where the chance is 0. */
  offers: readonly Offer[]
}

export interface Stopping {
  /** Expected price, waiting cost of the days after the first included, for one who starts waiting on day 1. */
  value: number
  /** Expected cost of waiting from today: `value` and one day's waiting. */
  waiting: number
  /** Price at or under which one buys, day 1 first; on the last day the regular price. */
  buyAt: Float64Array
}

/**
 * Wait or buy: finite-horizon optimal stopping for the least price, without recall (design rule 6).
 * `cont_t = V_{t+1} + c`, on the last day the regular price; `V_t = h_t E[min(P_t, cont_t)] + (1 − h_t) min(R_t, cont_t)`.
 *
 * Units:  any money; one entry a day, the last one is the day by which it must be bought. Errors: RangeError for no day at all.
 * Source: Moser, Math. Gazette 40 (1956); Gilbert & Mosteller, JASA 61 (1966), with a price for waiting.
 *
 * @example stopping([{ regular: 200, chance: 0.5, offers: [{ price: 100, weight: 1 }] }], 0).value // 150
 */
export function stopping(days: readonly StoppingDay[], waitingCostPerDay: number): Stopping {
  if (days.length === 0) throw new RangeError('Stopping needs at least one day')
  const buyAt = new Float64Array(days.length)
  let value = 0
  for (let index = days.length - 1; index >= 0; index -= 1) {
    const day = days[index] as StoppingDay
    const cont = index === days.length - 1 ? day.regular : value + waitingCostPerDay
    buyAt[index] = cont
    let onSale = 0
    for (const { price, weight } of day.offers) onSale += weight * Math.min(price, cont)
    value = day.chance * onSale + (1 - day.chance) * Math.min(day.regular, cont)
  }
  return { value, waiting: value + waitingCostPerDay, buyAt }
}

/** Chance of at least one sale in the days given. @example chanceOfSale([{ regular: 1, chance: 0.5, offers: [] }]) // 0.5 */
export const chanceOfSale = (days: readonly StoppingDay[]): number => 1 - days.reduce((none, { chance }) => none * (1 - chance), 1)
