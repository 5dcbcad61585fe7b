import type { RevisionDocument } from './revision.ts'
import { sayDeposit, sayDiscount, sayLineTerms, TERMS_BESIDE_LAW } from './terms.ts'

/**
 * What a customer is told of the money of an issued quote beside its figures, a sentence each: the discount with its reason, the deposit, the
 * rates of exchange with their day and source, and that stated terms leave rights by law alone.
 */
export function moneyNotes({ discount, inputs, moneyNotes: rates = [], builds }: RevisionDocument): string[] {
  const { currency } = inputs.install
  const { deposit } = inputs.draft
  const from = inputs.stores.find(({ id }) => id === discount?.storeId)?.name ?? null
  const stated = builds.some(({ cost }) => cost.lines.some((line) => sayLineTerms(line) !== ''))
  return [
    ...(discount ? [`Discount: ${sayDiscount(discount, currency, from)}.`] : []),
    ...(deposit ? [`Deposit when you say yes: ${sayDeposit(deposit, currency)}.`] : []),
    ...rates,
    ...(stated ? [TERMS_BESIDE_LAW] : []),
  ]
}
