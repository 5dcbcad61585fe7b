/** A size that something is sold in: what one holds and what it costs. */
export interface Pack {
  id: string
  /** In the unit of the need. */
  holds: number
  /** Of one pack, in minor units. */
  priceMinor: number
}

export interface PackMix {
  packs: Array<{ id: string; count: number }>
  holds: number
  priceMinor: number
  /** False where the search stopped at its limit: then it is a good mix and perhaps not the best. */
  exact: boolean
}

export type PackAim = 'least_cost' | 'least_waste'

/** Packs of one thing come in a handful of sizes; this many steps search any of them out, and a shelf of odd ones stops here in some milliseconds. */
const MOST_STEPS = 50_000
/** What sums of decimals lose as doubles. */
const SLACK = 1e-9

/**
 * Packs of several sizes that together hold at least what is needed, for the least cost or with the least left over. Ties: the other of the two, then fewer packs,
 * then the order in which they were given.
 *
 * Units:  as the caller's; need and contents in one unit, prices in minor units.
 * Range:  a need above 0; packs that hold nothing are passed over. Null where nothing holds anything or nothing is needed.
 * Source: branch and bound over the counts, cheapest by content first; the bound is what the rest would cost at the best price by content.
 *
 * @example mixPacks(20, [{ id: '5', holds: 5, priceMinor: 700 }, { id: '15', holds: 15, priceMinor: 1800 }])?.packs // [{ id: '15', count: 1 }, { id: '5', count: 1 }]
 */
export function mixPacks(need: number, offered: readonly Pack[], aim: PackAim = 'least_cost'): PackMix | null {
  const packs = offered.filter(({ holds }) => holds > 0).toSorted((a, b) => a.priceMinor / a.holds - b.priceMinor / b.holds)
  if (packs.length === 0 || !(need > 0)) return null
  const counts = packs.map(() => 0)
  let best: { counts: number[]; key: readonly number[]; holds: number; priceMinor: number } | null = null
  let steps = 0
  const keyOf = (holds: number, priceMinor: number, pieces: number) =>
    aim === 'least_cost' ? [priceMinor, holds, pieces] : [holds, priceMinor, pieces]
  const take = (at: number, holds: number, priceMinor: number, pieces: number): void => {
    steps += 1
    if (holds >= need - SLACK) {
      const key = keyOf(holds, priceMinor, pieces)
      if (best === null || isLess(key, best.key)) best = { counts: [...counts], key, holds, priceMinor }
      return
    }
    const pack = packs[at]
    if (pack === undefined || steps > MOST_STEPS) return
    const left = need - holds
    const bound = keyOf(need, priceMinor + (left * pack.priceMinor) / pack.holds, 0)
    if (best !== null && (bound[0] ?? 0) > (best.key[0] ?? 0) + SLACK) return
    for (let count = Math.ceil((left - SLACK) / pack.holds); count >= 0; count -= 1) {
      counts[at] = count
      take(at + 1, holds + count * pack.holds, priceMinor + count * pack.priceMinor, pieces + count)
    }
    counts[at] = 0
  }
  take(0, 0, 0, 0)
  return best === null ? null : mixOf(packs, best, steps <= MOST_STEPS)
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, index) => Math.abs(value - (b[index] ?? 0)) > SLACK)
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0)
}

const mixOf = (packs: readonly Pack[], best: { counts: number[]; holds: number; priceMinor: number }, exact: boolean): PackMix => ({
  packs: packs.flatMap(({ id }, index) => ((best.counts[index] ?? 0) > 0 ? [{ id, count: best.counts[index] ?? 0 }] : [])),
  holds: best.holds,
  priceMinor: best.priceMinor,
  exact,
})
