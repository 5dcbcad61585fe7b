import { daysBetween } from '../../../core/dates.ts'
import { regularPrice } from '../../../core/pricing/regular-price.ts'
import { saleSpells } from '../../../core/pricing/sale-spells.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'
import { depthFor } from '../market/sale.ts'
import type { Market } from '../market/market.ts'
import type { KindTruth, ProductTruth } from '../market/parameters.ts'
import { normal, randomOf, type Random } from '../random.ts'
import { DRAWS, type Forecast, type LineForecast } from './forecast.ts'

/** How often sales begin and how deep they are, of one kind. */
interface Frequencies {
  startsPerDay: number
  drawDepth: (random: Random) => number
}

/** The sightings of each product and store, as the record has them. */
export function byPair({ truth, record }: Market): Sighting[][][] {
  const pairs = Map.groupBy(record.sightings, ({ productId, storeId }) => `${productId}/${storeId}`)
  return truth.products.map(({ id }) => truth.storeIds.map((store) => pairs.get(`${id}/${store}`) ?? []))
}

/**
 * The record's own frequencies of a kind: spells of sale that were seen, over the days that the record spans, and the depths that were seen against the
 * regular price then. What was not seen counts as not having been.
 */
export function recordFrequencies(market: Market, pairs: readonly Sighting[][][]): Map<KindTruth, Frequencies> {
  const { record, truth } = market
  return new Map(
    truth.kinds.map((kind) => {
      const ofKind = pairs.filter((_, product) => truth.products[product]?.kind === kind).flat()
      const spells = ofKind.flatMap((sightings) =>
        saleSpells(sightings, record.asOf).map((spell) => ({ spell, regular: regularPrice(sightings, spell.startedOn) })),
      )
      const first = ofKind.flat().reduce((least, { seenOn }) => (seenOn < least ? seenOn : least), record.asOf)
      const depths = spells.flatMap(({ spell, regular }) =>
        regular === undefined || spell.priceMinor >= regular.priceMinor ? [] : [1 - spell.priceMinor / regular.priceMinor],
      )
      return [
        kind,
        {
          startsPerDay: spells.length / Math.max(1, ofKind.length * daysBetween(first, record.asOf)),
          drawDepth: (random) => depths[Math.floor(random() * depths.length)] ?? 0,
        },
      ]
    }),
  )
}

/** Mean of a rate that is spread over products and stores by 0.4 and 0.15 in logs. */
const SPREAD_MEAN = Math.exp((0.4 ** 2 + 0.15 ** 2) / 2)

/** What is true of a kind, sale times spread over the year: how often, and how deep. */
export function kindFrequencies({ truth }: Market): Map<KindTruth, Frequencies> {
  return new Map(
    truth.kinds.map((kind) => {
      const ofKind = truth.products.filter((product) => product.kind === kind)
      const windows = truth.saleTimes.reduce(
        (sum, { runs }) => sum + (runs.reduce((all, chance) => all + chance, 0) / runs.length) * kind.takesPart,
        0,
      )
      const mid: ProductTruth = { ...(ofKind[0] as ProductTruth), depth: kind.depth }
      const spread = Math.hypot(0.3, kind.depthSpread) / kind.depthSpread
      return [
        kind,
        {
          startsPerDay: (kind.salesPerYear * SPREAD_MEAN + windows) / 365,
          drawDepth: (random) => depthFor(mid, 1, spread * normal(random)),
        },
      ]
    }),
  )
}

/** Takes the first sale that begins, of its frequency and depth, off today's regular price; else that price: no forecast of any change. */
export function forecastByFrequencies(
  market: Market,
  pairs: readonly Sighting[][][],
  frequencies: ReadonlyMap<KindTruth, Frequencies>,
  days: number,
  stream: string,
): Forecast {
  const random = randomOf(`${stream}/${market.index}/${days}`)
  const total = new Float64Array(DRAWS)
  const lines = market.lines.map(({ product, stores }): LineForecast => {
    const { startsPerDay, drawDepth } = frequencies.get(market.truth.products[product]?.kind as KindTruth) as Frequencies
    const regulars = stores.map((store) => regularPrice(pairs[product]?.[store] ?? [], market.record.asOf)?.priceMinor ?? Number.NaN)
    const chance = 1 - Math.exp(-startsPerDay * days)
    const draws = Float64Array.from({ length: DRAWS }, () =>
      Math.min(...regulars.map((regular) => (random() < chance ? Math.round(regular * (1 - drawDepth(random))) : regular))),
    )
    draws.forEach((draw, index) => (total[index] = (total[index] as number) + draw))
    return { draws, chanceOfSale: 1 - (1 - chance) ** stores.length }
  })
  return { lines, total }
}
