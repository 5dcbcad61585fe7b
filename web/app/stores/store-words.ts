import type { Store } from '../../../core/catalog/store.ts'
import { sayMoney } from '../../../core/money.ts'

/** @example sayDelivery({ kind: 'free_over', feeMinor: 995, freeOverMinor: 9900, oversizeMinor: 3500 }, 'USD') // '$9.95, free from $99.00; oversize $35.00 more' */
export function sayDelivery(rule: Store['delivery'], currency: string, home = currency): string {
  const say = (minor: number): string => sayMoney(minor, currency, { home })
  if (rule.kind === 'pickup_only') return 'pickup only'
  const fee = rule.feeMinor === 0 ? 'free' : say(rule.feeMinor)
  const over = rule.kind === 'free_over' && rule.feeMinor > 0 ? `, free from ${say(rule.freeOverMinor)}` : ''
  return `${fee}${over}${rule.oversizeMinor > 0 ? `; oversize ${say(rule.oversizeMinor)} more` : ''}`
}

/** A rate in per cent, as fine as it is kept. @example sayPercent(887.5) // '8.875' */
export const sayPercent = (basisPoints: number): string => String(Number((basisPoints / 100).toFixed(4)))

/** @example sayTax({ taxBasisPoints: 600, pricesIncludeTax: false }) // '6 %, added' */
export function sayTax({
  taxBasisPoints,
  otherRates = [],
  pricesIncludeTax,
}: Pick<Store, 'taxBasisPoints' | 'otherRates' | 'pricesIncludeTax'>): string {
  if (taxBasisPoints === 0 && otherRates.length === 0) return 'none'
  const rates = [taxBasisPoints, ...otherRates.map(({ basisPoints }) => basisPoints)].map((rate) => `${sayPercent(rate)} %`)
  return `${rates.join(' and ')}, ${pricesIncludeTax ? 'in the price' : 'added'}`
}
