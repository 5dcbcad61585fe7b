import type { Discount } from '../pricing/discount.ts'
import type { RevisionDocument } from './revision.ts'
import { sayDeposit, sayDiscount, sayLineTerms, TERMS_BESIDE_LAW } from './terms.ts'

/**
 * What a customer is told of the money of an issued quote beside its figures, a sentence each: the discount that was given with its reason, the
 * deposit, the rates of exchange with their day and source.
 */
export function moneyNotes({
  builds,
  discount,
  inputs,
  moneyNotes: rates = [],
}: Pick<RevisionDocument, 'builds' | 'discount' | 'inputs' | 'moneyNotes'>): string[] {
  const { currency } = inputs.install
  const { deposit } = inputs.draft
  const from = inputs.stores.find(({ id }) => id === discount?.storeId)?.name ?? null
  return [
    ...(discount ? sayGiven(discount, builds, currency, from).map((words) => `Discount: ${words}.`) : []),
    ...(deposit ? [`Deposit when you say yes: ${sayDeposit(deposit, currency)}.`] : []),
    ...rates,
  ]
}

/**
 * The discount as the builds got it: nothing where none got any, and an amount that is more than a build's goods as what that build got. Where
 * no build has a total it is told as it was offered.
 */
function sayGiven(discount: Discount, builds: RevisionDocument['builds'], currency: string, from: string | null): string[] {
  const known = builds.flatMap(({ letter, cost: { today } }) => (today.complete ? [{ letter, minor: today.discountMinor ?? 0 }] : []))
  const given = known.filter(({ minor }) => minor > 0)
  if (known.length > 0 && known.length === builds.length && given.length === 0) return []
  if (discount.kind === 'share' || given.every(({ minor }) => minor === discount.amountMinor))
    return [sayDiscount(discount, currency, from)]
  const amounts = Map.groupBy(given, ({ minor }) => minor)
  return [...amounts].map(([amountMinor, of]) => {
    const where = amounts.size > 1 ? `${of.map(({ letter }) => letter).join(', ')}: ` : ''
    return where + sayDiscount({ ...discount, amountMinor }, currency, from)
  })
}

/** What stands under lines that state return days or a warranty; empty where none does. */
export const termsNote = (lines: ReadonlyArray<Parameters<typeof sayLineTerms>[0]>): string =>
  lines.some((line) => sayLineTerms(line) !== '') ? TERMS_BESIDE_LAW : ''
