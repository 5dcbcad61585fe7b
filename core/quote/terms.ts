import type { Discount } from '../pricing/discount.ts'
import { sayMoney, taxOn } from '../money.ts'

/** What is paid when the customer says yes: an amount, or a share of today's total in hundredths of a per cent. */
export type Deposit = { kind: 'amount'; amountMinor: number } | { kind: 'share'; basisPoints: number }

/**
 * The deposit on a total, never more than it; a share is rounded half away from zero.
 *
 * Units: minor units. Range: totals 0 and above. @example depositOn({ kind: 'share', basisPoints: 2500 }, 110703) // 27676
 */
export function depositOn(deposit: Deposit, totalMinor: number): number {
  return Math.min(totalMinor, deposit.kind === 'amount' ? deposit.amountMinor : taxOn(totalMinor, deposit.basisPoints))
}

/** Whole years as years, anything else as months. @example sayWarranty(24) // '2 years' */
export function sayWarranty(months: number): string {
  const years = months / 12
  if (Number.isInteger(years)) return years === 1 ? '1 year' : `${years} years`
  return months === 1 ? '1 month' : `${months} months`
}

/**
 * Return days and warranty of a line in words; empty where neither is stated.
 *
 * @example sayLineTerms({ returnDays: 30, warrantyMonths: 24 }) // 'return within 30 days, warranty 2 years'
 */
export function sayLineTerms({
  returnDays,
  warrantyMonths,
}: {
  returnDays?: number | null | undefined
  warrantyMonths?: number | null | undefined
}): string {
  const returns =
    returnDays == null ? '' : returnDays === 0 ? 'no returns' : `return within ${returnDays} ${returnDays === 1 ? 'day' : 'days'}`
  const warranty = warrantyMonths == null ? '' : warrantyMonths === 0 ? 'no warranty' : `warranty ${sayWarranty(warrantyMonths)}`
  return [returns, warranty].filter((words) => words !== '').join(', ')
}

/** A share in per cent, as fine as it is kept. @example sayShare(1250) // '12.5 %' */
export const sayShare = (basisPoints: number): string => `${Number((basisPoints / 100).toFixed(4))} %`

/**
 * A discount with its reason, as screen and paper tell it. `storeName` is the store it comes from; null: every store.
 *
 * @example sayDiscount({ kind: 'share', basisPoints: 1000, storeId: null, reason: 'club evening' }, 'USD', null) // '10 % off the goods: club evening'
 */
export function sayDiscount(discount: Discount, currency: string, storeName: string | null): string {
  const much = discount.kind === 'share' ? sayShare(discount.basisPoints) : sayMoney(discount.amountMinor, currency)
  const reason = discount.reason.trim()
  return `${much} off the goods${storeName === null ? '' : ` of ${storeName}`}${reason === '' ? '' : `: ${reason}`}`
}

/** @example sayDeposit({ kind: 'share', basisPoints: 2500 }, 'USD') // '25 % of today’s total' */
export const sayDeposit = (deposit: Deposit, currency: string): string =>
  deposit.kind === 'share' ? `${sayShare(deposit.basisPoints)} of today’s total` : sayMoney(deposit.amountMinor, currency)

/** Said wherever return days or a warranty are printed: neither takes anything from what the law gives. Common practice. */
export const TERMS_BESIDE_LAW = 'Return days and warranty are what the store states, beside the rights that the law gives.'
