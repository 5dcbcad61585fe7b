import { sayMoney } from '../money.ts'
import type { Discount } from '../pricing/discount.ts'
import type { AssembledBuild } from './revision.ts'

type Priced = Pick<AssembledBuild, 'letter' | 'cost'>

/** A build whose goods are worth less than the discount that is offered on them. */
export interface Held {
  letter: AssembledBuild['letter']
  /** What it gets instead; 0 where it buys nothing that the discount is for. */
  minor: number
}

/**
 * The builds that get less than the discount says, since nothing is taken off but goods.
 *
 * Units: minor units of the install's currency. A build without goods, or without a total, is left out: nothing is known of what it will hold.
 *
 * @example heldDiscounts({ kind: 'amount', amountMinor: 50000, storeId: null, reason: '' }, builds) // [{ letter: 'A', minor: 19399 }] for goods of 193.99
 */
export function heldDiscounts(discount: Discount | null, builds: readonly Priced[]): Held[] {
  if (discount === null) return []
  return builds.flatMap(({ letter, cost }): Held[] => {
    if (!cost.today.complete || cost.lines.length === 0) return []
    const minor = cost.receipts
      .filter(({ storeId }) => discount.storeId === null || storeId === discount.storeId)
      .reduce((sum, { goodsMinor }) => sum + goodsMinor, 0)
    const wanted = discount.kind === 'amount' ? discount.amountMinor : discount.basisPoints
    return wanted > 0 && minor < (discount.kind === 'amount' ? wanted : 1) ? [{ letter, minor }] : []
  })
}

/**
 * The same as a sentence for who types the discount; empty where every build gets it whole.
 *
 * @example sayHeld([{ letter: 'A', minor: 19399 }, { letter: 'B', minor: 0 }], 'USD')
 * // 'More than the goods it is for: held at $193.99 in build A. Build B buys no goods that it is for.'
 */
export function sayHeld(held: readonly Held[], currency: string): string {
  const some = held.filter(({ minor }) => minor > 0).map(({ letter, minor }) => `${sayMoney(minor, currency)} in build ${letter}`)
  const none = held.filter(({ minor }) => minor === 0).map(({ letter }) => letter)
  const buys = none.length === 1 ? `Build ${none[0] ?? ''} buys` : `Builds ${none.join(', ')} buy`
  return [
    ...(some.length > 0 ? [`More than the goods it is for: held at ${some.join(', ')}.`] : []),
    ...(none.length > 0 ? [`${buys} no goods that it is for.`] : []),
  ].join(' ')
}

/**
 * The same beside the build that it is about.
 *
 * @example sayHeldHere({ letter: 'A', minor: 19399 }, 'USD') // 'discount held at its goods, $193.99'
 */
export const sayHeldHere = ({ minor }: Held, currency: string): string =>
  minor === 0 ? 'no discount here' : `discount held at its goods, ${sayMoney(minor, currency)}`
