import { sayMoney } from '../../../core/money.ts'
import type { Tier } from '../../../core/pricing/tiers.ts'

type Missing = Extract<Tier, { complete: false }>['missing'][number]

const WHY: Record<Missing['why'], string> = {
  no_price: 'has no price',
  cannot_be_delivered: 'cannot be delivered',
  archived: 'is no longer in the catalog',
  no_rate: 'is priced in a currency without a rate',
}

/** Why a tier has no total. @example sayMissing([{ lineId: 'l', name: 'Torvane 150 W', why: 'no_price' }]) // 'no total: Torvane 150 W has no price' */
export function sayMissing(missing: readonly Missing[]): string {
  const [first, ...rest] = missing
  if (!first) return 'no total'
  const more = rest.length === 0 ? '' : `, and ${rest.length} more`
  return `no total: ${first.name} ${WHY[first.why]}${more}`
}

/** How a total stands to the budget. @example sayBudget(110703, 115000, 'USD') // { words: '$42.97 under budget', over: false } */
export function sayBudget(totalMinor: number, budgetMinor: number, currency: string): { words: string; over: boolean } {
  const left = budgetMinor - totalMinor
  if (left === 0) return { words: 'on budget', over: false }
  return { words: `${sayMoney(Math.abs(left), currency)} ${left > 0 ? 'under' : 'over'} budget`, over: left < 0 }
}

/** What a change does to a build's total today: "adds $61.45", "saves $12.00", "same total"; empty where either has no total. */
export function sayDifference(before: Tier, after: Tier, currency: string): string {
  if (!after.complete) return ''
  if (!before.complete) return `total ${sayMoney(after.totalMinor, currency)}`
  const difference = after.totalMinor - before.totalMinor
  if (difference === 0) return 'same total'
  return difference > 0 ? `adds ${sayMoney(difference, currency)}` : `saves ${sayMoney(-difference, currency)}`
}
