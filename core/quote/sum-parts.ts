import type { Sum } from '../pricing/tiers.ts'
import type { AssembledBuild } from './revision.ts'

/** One figure of a column of sums. */
export interface SumPart {
  part: 'goods' | 'discount' | 'delivery' | 'services' | 'tax' | 'tax_in_prices'
  minor: number
}

/**
 * What a total is made of, as a column that adds up: the parts' sum is `totalMinor`. Tax that printed prices hold already stands in the goods and in the
 * tax, so it is taken off once, with its sign.
 *
 * @example sumParts({ goodsMinor: 61686, deliveryMinor: 0, taxMinor: 3671, taxIncludedMinor: 515, totalMinor: 64842 }).at(-1) // { part: 'tax_in_prices', minor: -515 }
 */
export function sumParts(sum: Sum): SumPart[] {
  const inPrices = sum.taxIncludedMinor ?? 0
  const parts: SumPart[] = [
    { part: 'goods', minor: sum.goodsMinor },
    ...((sum.discountMinor ?? 0) === 0 ? [] : [{ part: 'discount' as const, minor: -(sum.discountMinor ?? 0) }]),
    { part: 'delivery', minor: sum.deliveryMinor },
    ...((sum.servicesMinor ?? 0) === 0 ? [] : [{ part: 'services' as const, minor: sum.servicesMinor ?? 0 }]),
    { part: 'tax', minor: sum.taxMinor },
  ]
  return inPrices === 0 ? parts : [...parts, { part: 'tax_in_prices', minor: -inPrices }]
}

type Priced = Pick<AssembledBuild, 'cost'>

/**
 * The rows that builds side by side need, in the order in which they add up: discount and tax in the prices only where some build has such.
 *
 * @example sumRowsOf(builds).map(({ words }) => words) // ['Goods', 'Delivery', 'Tax, 6 %']
 */
export function sumRowsOf(builds: readonly Priced[]): Array<{ part: SumPart['part']; words: string }> {
  const inPrices = builds.some(({ cost: { today } }) => today.complete && (today.taxIncludedMinor ?? 0) !== 0)
  const discounted = builds.some(({ cost: { today } }) => today.complete && (today.discountMinor ?? 0) !== 0)
  const served = builds.some(({ cost: { today } }) => today.complete && (today.servicesMinor ?? 0) !== 0)
  return [
    { part: 'goods', words: 'Goods' },
    ...(discounted ? [{ part: 'discount' as const, words: 'Discount' }] : []),
    { part: 'delivery', words: 'Delivery' },
    ...(served ? [{ part: 'services' as const, words: 'Our services' }] : []),
    { part: 'tax', words: taxWords(builds) },
    ...(inPrices ? [{ part: 'tax_in_prices' as const, words: 'Tax already in the prices' }] : []),
  ]
}

/** One figure of a build's column; 0 where the build has no such part. */
export const sumPartOf = (sum: Sum, part: SumPart['part']): number => sumParts(sum).find((one) => one.part === part)?.minor ?? 0

/** "Tax, 6 %" where all receipts have one rate; else the word alone, since each store has its own. */
function taxWords(builds: readonly Priced[]): string {
  const rates = new Set(
    builds.flatMap(({ cost }) =>
      cost.receipts.flatMap(({ taxes, taxBasisPoints }) => taxes?.map((tax) => tax.basisPoints) ?? [taxBasisPoints]),
    ),
  )
  const [rate] = rates
  return rates.size === 1 && rate !== undefined ? `Tax, ${rate / 100} %` : 'Tax'
}
