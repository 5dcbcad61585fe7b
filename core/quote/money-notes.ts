import type { RevisionDocument } from './revision.ts'
import { sayDeposit, sayDiscount, sayLineTerms, TERMS_BESIDE_LAW } from './terms.ts'

/**
 * What a customer is told of the money of an issued quote beside its figures, a sentence each: the discount with its reason, the deposit, the
 * rates of exchange with their day and source.
 */
export function moneyNotes({ discount, inputs, moneyNotes: rates = [] }: RevisionDocument): string[] {
  const { currency } = inputs.install
  const { deposit } = inputs.draft
  const from = inputs.stores.find(({ id }) => id === discount?.storeId)?.name ?? null
  return [
    ...(discount ? [`Discount: ${sayDiscount(discount, currency, from)}.`] : []),
    ...(deposit ? [`Deposit when you say yes: ${sayDeposit(deposit, currency)}.`] : []),
    ...rates,
  ]
}

/** What stands under lines that state return days or a warranty; empty where none does. */
export const termsNote = (lines: ReadonlyArray<Parameters<typeof sayLineTerms>[0]>): string =>
  lines.some((line) => sayLineTerms(line) !== '') ? TERMS_BESIDE_LAW : ''
