import { sampleCorrelation, sampleSkewness } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import { randomOf } from '../random.ts'
import { uniformDistance } from '../statistics/kolmogorov-smirnov.ts'
import { drawMarket } from './market.ts'
import { drawParameters, LENGTH_FAMILIES, type KindTruth } from './parameters.ts'
import { drawReports } from './reports.ts'
import { drawLength } from './sale.ts'
import { drawWindows, openShops } from './shops.ts'

const NEIGHBOURS = 400
const parametersOf = Array.from({ length: NEIGHBOURS }, (_, index) => drawParameters(randomOf(`hash/${index}/parameters`)))
/** Share of days on sale in the first 120 of each market: what its outcomes hang on. */
const onSale = parametersOf.map((truth, index) => {
  const { paths } = openShops(truth, drawWindows(truth, [0], randomOf(`hash/${index}/windows`)), 120, randomOf(`hash/${index}/shops`))
  return paths.flat().reduce((sum, { saleEnds }) => sum + saleEnds.filter((end) => end >= 0).length, 0) / (120 * paths.flat().length)
})

describe('markets next to each other', () => {
  it.each([
    ['sales a year', parametersOf.map(({ kinds }) => Math.log((kinds[0] as KindTruth).salesPerYear))],
    ['depth', parametersOf.map(({ kinds }) => (kinds[0] as KindTruth).depth)],
    ['how reports depend on sales', parametersOf.map(({ reporting }) => Math.log(reporting.saleRatio))],
    ['length of the record', parametersOf.map(({ historyDays }) => historyDays)],
    ['day of the year', parametersOf.map(({ asOfDayOfYear }) => asOfDayOfYear)],
    ['days on sale that came', onSale],
  ])('have nothing in common: %s', (_, values) => {
    // Of independent values the correlation has a standard error of 1/√n.
    for (const lag of [1, 2])
      expect(Math.abs(sampleCorrelation(values.slice(lag), values.slice(0, -lag)))).toBeLessThan(3.3 / Math.sqrt(NEIGHBOURS))
  })

  it.each([
    [
      'sales a year over 0.7 to 6, in log',
      parametersOf.map(({ kinds }) => Math.log((kinds[0] as KindTruth).salesPerYear / 0.7) / Math.log(6 / 0.7)),
    ],
    ['ratio of reports over 1 to 100, in log', parametersOf.map(({ reporting }) => Math.log(reporting.saleRatio) / Math.log(100))],
    ['day of the record over the whole year', parametersOf.map(({ asOfDayOfYear }) => (asOfDayOfYear + 0.5) / 365)],
  ])('are spread evenly: %s', (_, values) => {
    // 1.63 ÷ √n is passed once in a hundred times. Kolmogorov's distribution.
    expect(uniformDistance(values)).toBeLessThan(1.63 / Math.sqrt(NEIGHBOURS))
  })

  it('come out the same from the same seed, and another from another', () => {
    const [first, again, other] = [drawMarket('hash', 5), drawMarket('hash', 5), drawMarket('hasi', 5)]
    expect(again).toEqual(first)
    expect(other.truth.kinds[0]?.salesPerYear).not.toBe(first.truth.kinds[0]?.salesPerYear)
  })
})

describe('lengths of sales', () => {
  it.each(LENGTH_FAMILIES)('have the mean that was asked for: %s', (lengthFamily) => {
    const kind: KindTruth = { ...(parametersOf[0]?.kinds[0] as KindTruth), lengthFamily, meanLengthDays: 8 }
    const random = randomOf(lengthFamily)
    const lengths = Array.from({ length: 4000 }, () => drawLength(kind, random))
    expect(lengths.reduce((sum, days) => sum + days, 0) / 4000).toBeGreaterThan(7.3)
    expect(lengths.reduce((sum, days) => sum + days, 0) / 4000).toBeLessThan(8.8)
    expect(Math.min(...lengths)).toBeGreaterThanOrEqual(1)
  })

  it('are not of one form', () => {
    const skews = (['geometric', 'even'] as const).map((lengthFamily) => {
      const random = randomOf(lengthFamily)
      const kind: KindTruth = { ...(parametersOf[0]?.kinds[0] as KindTruth), lengthFamily, meanLengthDays: 8 }
      return sampleSkewness(Array.from({ length: 4000 }, () => drawLength(kind, random)))
    })
    // 2 for an exponential, 0 for a flat distribution.
    expect(skews[0]).toBeGreaterThan(1.5)
    expect(Math.abs(skews[1] as number)).toBeLessThan(0.2)
  })
})

describe('a market', () => {
  const market = drawMarket('hash', 1)
  const { truth, shops, record, ahead } = market

  it('asks less on sale than its regular price, and the regular price on other days', () => {
    for (const { regular, price, onSale } of ahead.flat())
      price.forEach((minor, day) => expect(onSale[day] === 1 ? minor < (regular[day] as number) : minor === regular[day]).toBe(true))
  })

  it('goes on from its last day: a sale that runs is there on the first day ahead, unless it was its last', () => {
    const last = shops.days - 1
    shops.paths.forEach((ofProduct, product) =>
      ofProduct.forEach((path, store) => {
        if ((path.saleEnds[last] as number) > last) expect(ahead[product]?.[store]?.onSale[1]).toBe(1)
      }),
    )
  })

  it('tells nothing of days to come, in ascending ids', () => {
    const { sightings, asOf } = record
    expect(sightings.every(({ seenOn }) => seenOn <= asOf)).toBe(true)
    expect(sightings.map(({ id }) => id)).toEqual(sightings.map(({ id }) => id).toSorted())
    expect(new Set(sightings.map(({ id }) => id)).size).toBe(sightings.length)
  })

  it('names every window to come and no overlapping ones of one store and sale time', () => {
    const groups = Map.groupBy(record.windows, ({ saleTimeId, storeId }) => `${saleTimeId}/${storeId}`)
    for (const windows of groups.values()) {
      const sorted = windows.toSorted((a, b) => (a.first < b.first ? -1 : 1))
      sorted.slice(1).forEach(({ first }, index) => expect(first > (sorted[index]?.last ?? '')).toBe(true))
    }
    expect(record.windows.some(({ first }) => first > record.asOf)).toBe(true)
  })

  it('holds back most slipped decimals and few honest reports', () => {
    const all = Array.from({ length: 4 }, (_, index) => drawMarket('doubt', index))
    const counted = all.flatMap(({ record }) => record.sightings)
    expect(counted.filter(isAccepted).length / counted.length).toBeGreaterThan(0.85)
    expect(counted.filter(({ doubt }) => doubt?.code === 'slipped_decimal').length).toBeGreaterThan(0)
  })

  it('is reported as many times likelier on sale days as its members make it', () => {
    const plain = {
      ...truth,
      reporting: { ...truth.reporting, saleRatio: 20, duplicates: 0, gapsPerYear: 0, carelessShare: 0, persistentlyCareless: 0 },
    }
    plain.products = truth.products.map((product) => ({ ...product, reportsRegular: 0.02, reportsOnSale: 0.4 }))
    const reports = drawReports(plain, shops, { from: 60, to: shops.days - 1 }, randomOf('reports')).filter(({ right }) => right)
    const days = { sale: 0, regular: 0 }
    shops.paths.flat().forEach(({ saleEnds }) => saleEnds.subarray(60).forEach((end) => (days[end < 0 ? 'regular' : 'sale'] += 1)))
    const onSaleDays = reports.filter(({ product, store, day }) => (shops.paths[product]?.[store]?.saleEnds[day] as number) >= 0).length
    const ratio = onSaleDays / days.sale / ((reports.length - onSaleDays) / days.regular)
    // Poisson counts: the standard error of the ratio's logarithm.
    const error = Math.sqrt(1 / onSaleDays + 1 / (reports.length - onSaleDays))
    expect(Math.abs(Math.log(ratio / 20))).toBeLessThan(3.3 * error)
  })
})
