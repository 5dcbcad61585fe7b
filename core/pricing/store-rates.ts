import type { Kind } from '../catalog/kinds.ts'
import type { Store } from '../catalog/store.ts'

/** What decides which rate of tax a product takes. */
export interface TaxedGoods {
  productId: string
  /** Absent: only a rate that names the product itself is taken. */
  kind?: Kind | undefined
}

type Rates = Pick<Store, 'taxBasisPoints' | 'taxName' | 'otherRates'>

/** A store's rates in hundredths of a per cent with their names: the usual one first, then the others in their order. */
export const ratesOf = ({ taxBasisPoints, taxName, otherRates = [] }: Rates): Array<{ name: string | null; basisPoints: number }> => [
  { name: taxName ?? null, basisPoints: taxBasisPoints },
  ...otherRates.map(({ name, basisPoints }) => ({ name, basisPoints })),
]

/** How many rates a store has, the usual one counted. */
export const rateCount = ({ otherRates }: Pick<Store, 'otherRates'>): number => 1 + (otherRates?.length ?? 0)

/**
 * Place in `ratesOf` of the rate that a product takes: one that names the product, else the first that names its kind, else 0, the usual one.
 *
 * @example rateIndexOf({ otherRates: [{ name: 'Reduced', basisPoints: 700, kinds: ['substrate'], productIds: [] }] }, { productId: 'p', kind: 'substrate' }) // 1
 */
export function rateIndexOf({ otherRates = [] }: Pick<Store, 'otherRates'>, { productId, kind }: TaxedGoods): number {
  const named = otherRates.findIndex((rate) => rate.productIds.includes(productId))
  if (named >= 0) return named + 1
  return kind === undefined ? 0 : otherRates.findIndex((rate) => rate.kinds.includes(kind)) + 1
}

/** Place in `ratesOf` of the rate that delivery takes where it is taxed; a name that no rate has is the usual one. */
export const deliveryRateIndex = ({ otherRates = [], deliveryRate = null }: Pick<Store, 'otherRates' | 'deliveryRate'>): number =>
  deliveryRate === null ? 0 : otherRates.findIndex(({ name }) => name === deliveryRate) + 1
