import { sayDate, type CivilDate } from '../dates.ts'
import { currencyExponent, sayMoney } from '../money.ts'
import type { Discount } from './discount.ts'
import type { OutlookView } from './outlook-view.ts'
import type { Advice } from './outlook/line-outlook.ts'
import type { BuildCost } from './tiers.ts'

/** What a build comes to by a day, following the advice line by line: expected, with the range that 8 of 10 outcomes lie in. Minor units, all that today's total counts. */
export interface ByDate {
  until: CivilDate
  /** Day of the record that this was learnt from. */
  learnedOn: CivilDate
  expectedMinor: number
  low10Minor: number
  high90Minor: number
  /** Lines that the advice waits with. */
  waits: number
}

/** Of an outlook, what the tier takes. */
export interface ExpectedLines {
  until: CivilDate
  learnedOn: CivilDate | null
  /** In the order of `outlookLines`; amounts are null only where there is no total either. */
  lines: ReadonlyArray<{ advice: Advice; payTodayMinor: number | null; expectedPaidMinor: number | null }>
  total: Pick<NonNullable<OutlookView['total']>, 'payTodayMinor' | 'expectedPaidMinor' | 'paid10Minor' | 'paid90Minor'> | null
}

/** What the outlook of a build asks about: its bought lines at the stores where today's total buys them, so that today's delivery holds. */
export const outlookLines = ({ lines }: Pick<BuildCost, 'lines'>): Array<{ productId: string; quantity: number; storeId: string }> =>
  lines.flatMap(({ productId, quantity, storeId }) => (storeId === null ? [] : [{ productId, quantity, storeId }]))

/**
 * The tier *by a date* (design rule 7): today's total less what the advice is expected to save. Stores, delivery and services stay as they are today;
 * a discount that is a share takes the same share of what is saved on the lines that it is given on. Null where today has no total, or nothing
 * is expected of a line.
 *
 * The range is told for all lines together and cannot be split exactly: where the discount is one store's, the whole range is narrowed around
 * the expected sum by the share that the discount leaves of the expected savings.
 *
 * Units: minor units of the install's currency. Range: an outlook of `outlookLines` of the same cost, with tax. Source: own.
 *
 * @example byDateOf(cost, outlook, null)?.expectedMinor // 107800 where today is 110703 and the advice saves 2903 on average
 */
export function byDateOf(
  cost: Pick<BuildCost, 'today' | 'lines'>,
  outlook: ExpectedLines,
  discount: Discount | null | undefined,
): ByDate | null {
  const { today } = cost
  const { total, learnedOn, until, lines } = outlook
  if (!today.complete || total === null || learnedOn === null) return null
  const { takenMinor, left } = discountOnSaved(cost, lines, discount)
  const expected = today.totalMinor + total.expectedPaidMinor - total.payTodayMinor + takenMinor
  const at = (paidMinor: number): number => Math.round(expected + (paidMinor - total.expectedPaidMinor) * left)
  return {
    until,
    learnedOn,
    expectedMinor: Math.round(expected),
    low10Minor: at(total.paid10Minor),
    high90Minor: at(total.paid90Minor),
    waits: lines.filter(({ advice }) => advice === 'wait').length,
  }
}

const WHOLE_BASIS_POINTS = 10_000

/** What a discount that is a share no longer takes off of what is saved, and the share of the savings, whichever way they go, that it leaves. */
function discountOnSaved(
  cost: Pick<BuildCost, 'lines'>,
  lines: ExpectedLines['lines'],
  discount: Discount | null | undefined,
): { takenMinor: number; left: number } {
  if (discount?.kind !== 'share') return { takenMinor: 0, left: 1 }
  const share = Math.min(1, discount.basisPoints / WHOLE_BASIS_POINTS)
  const saved = lines.map(({ payTodayMinor, expectedPaidMinor }) => (payTodayMinor ?? 0) - (expectedPaidMinor ?? 0))
  const onLines = outlookLines(cost).map(({ storeId }) => (discount.storeId === null || storeId === discount.storeId ? share : 0))
  const sum = (of: (savedMinor: number, index: number) => number): number => saved.reduce((all, minor, index) => all + of(minor, index), 0)
  const moved = sum((minor) => Math.abs(minor))
  const taken = sum((minor, index) => Math.abs(minor) * (onLines[index] ?? 0))
  return { takenMinor: sum((minor, index) => minor * (onLines[index] ?? 0)), left: moved === 0 ? 1 : 1 - taken / moved }
}

/** A sum that is expected is told in whole units: it is not exact to the cent. @example sayWhole(107_841, 'USD') // '$1,078' */
export function sayWhole(minor: number, currency: string): string {
  const unit = 10 ** currencyExponent(currency)
  return sayMoney(Math.round(minor / unit) * unit, currency).replace(/\.0+$/, '')
}

export interface ByDateWords {
  /** "By Dec 20" */
  label: string
  /** "about $1,078"; today's total to the cent where the advice waits with nothing. */
  figure: string
  /** "$1,019 to $1,107"; null where the advice waits with nothing. */
  span: string | null
  /** "$1,019 to $1,107 in 8 of 10 cases", or why it is today's total. */
  range: string
}

/** The tier as every screen and paper tells it. @example sayByDate(byDate, 'USD', 2026).figure // 'about $1,078' */
export function sayByDate(
  { until, expectedMinor, low10Minor, high90Minor, waits }: ByDate,
  currency: string,
  thisYear: number,
): ByDateWords {
  const label = `By ${sayDate(until, thisYear)}`
  if (waits === 0) return { label, figure: sayMoney(expectedMinor, currency), span: null, range: 'waiting does not pay' }
  const span = `${sayWhole(low10Minor, currency)} to ${sayWhole(high90Minor, currency)}`
  return { label, figure: `about ${sayWhole(expectedMinor, currency)}`, span, range: `${span} in 8 of 10 cases` }
}
