import { describe, expect, it } from 'vitest'
import { priceViews } from '../../../core/pricing/price-views.ts'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { priceRecordCaption, priceRecordData, priceRecordPlot, type PriceRecordData } from '../../../web/plots/price-record.ts'
import { spread } from '../../../web/plots/spread.ts'
import { monthStarts, priceScale } from '../../../web/plots/price-record-scale.ts'
import { sayDepth } from '../../../web/plots/price-record-store.ts'
import { sampleProducts } from '../pages/sample-quote.ts'

const seen = (id: string, seenOn: string, condition: SightingRow['condition'], priceMinor: number, change: Partial<SightingRow> = {}): SightingRow => ({
  id, productId: 'filter-a', storeId: 's1', condition, priceMinor, printedRegularMinor: null, seenOn, lastDay: null, evidence: 'tag', note: null, reporterId: 'noor', receivedAt: `${seenOn}T12:00:00Z`, doubt: null, withdrawn: false, confirmations: 0, disputes: 0,
  productName: 'Pellick C-1800', storeName: 'Upriver', reporterName: 'Noor Fenwick', own: false, mayVote: true, myVote: null, withdrawnReason: null, ...change,
}) // prettier-ignore

const asOf = '2026-10-20'
const sightings: SightingRow[] = [
  seen('1', '2026-06-01', 'shelf', 20_000),
  seen('2', '2026-07-03', 'sale', 15_000, { lastDay: '2026-07-06' }),
  seen('3', '2026-08-01', 'shelf', 20_000, { reporterId: 'tomas' }),
  seen('4', '2026-10-18', 'sale', 16_000, { lastDay: '2026-10-25' }),
  seen('5', '2026-09-01', 'used', 5000),
  seen('6', '2026-09-02', 'shelf', 2000, { doubt: { code: 'slipped_decimal', words: 'a slipped decimal?' } }),
  seen('7', '2026-09-05', 'shelf', 20_400, { storeId: 's2', storeName: 'Kettle Lane' }),
]
const product = sampleProducts.find(({ id }) => id === 'filter-a')!
const data = (): PriceRecordData => priceRecordData({ product, sightings, views: priceViews(sightings, asOf), asOf }, 'USD')

describe('a store whose last price was found gone', () => {
  const labelsOf = (change: Partial<SightingRow>): string => {
    const last = [...sightings, seen('8', '2026-10-12', 'shelf', 20_900, { storeId: 's3', storeName: 'Saltcote', ...change })]
    return priceRecordPlot(priceRecordData({ product, sightings: last, views: priceViews(last, asOf), asOf }, 'USD'), 1000, 372, {
      id: 'g',
    })
  }
  it('is labelled with that day, not with the day it was seen', () => {
    expect(labelsOf({ goneOn: '2026-10-16' })).toContain('found gone Oct 16')
    expect(labelsOf({ goneOn: null })).not.toContain('found gone')
  })
})

describe('from sightings to lines', () => {
  it('lets sales into the shelf price and lets a running one go on to its last day', () => {
    const upriver = data().stores.find((store) => store.name === 'Upriver')!
    const sales = upriver.runs.filter((run) => run.kind === 'sale')
    expect(sales.map((run) => [run.priceMinor, run.regularMinor])).toEqual([[15_000, 20_000], [16_000, 20_000]]) // prettier-ignore
    expect(sales.map((run) => run.to)).toEqual(['2026-07-07', '2026-10-26'])
  })
  it('stops a shelf price where a sale begins, and takes it up again after one in the middle', () => {
    const upriver = data().stores.find((store) => store.name === 'Upriver')!
    expect(upriver.runs.map(({ from, to, kind }) => [from, to, kind])).toEqual([
      ['2026-06-01', '2026-07-03', 'regular'],
      ['2026-07-03', '2026-07-07', 'sale'],
      ['2026-07-07', '2026-10-18', 'regular'],
      ['2026-10-18', '2026-10-26', 'sale'],
    ])
  })
  it('never has two prices on one day', () => {
    for (const store of data().stores) {
      const edges = store.runs.flatMap((run) => [run.from, run.to])
      expect(edges).toEqual([...edges].sort())
    }
  })
  it('counts neither used goods nor a doubted sighting', () => {
    expect(data().countedSightings).toBe(5)
    expect(data().reporters).toBe(2)
    expect(
      data()
        .stores.flatMap((store) => store.marks)
        .map((mark) => mark.priceMinor),
    ).not.toContain(2000)
  })
})

describe('the plot', () => {
  const svg = priceRecordPlot(data(), 1000, 372, { id: 'p' })
  it('draws a dip from the shelf price down to the sale, to scale', () => {
    const scale = priceScale(data(), { left: 0, right: 100, top: 0, bottom: 100 }, 1000)!
    const [low, high] = [scale.lowMinor, scale.highMinor]
    expect(scale.y(15_000)).toBeCloseTo(100 * (1 - (15_000 - low) / (high - low)), 6)
    expect(svg.match(/class="sale-dip"/g)).toHaveLength(2)
  })
  it('says the depth of a sale in per cent with a true minus', () => {
    expect(sayDepth(15_000, 20_000)).toBe('\u221225 %')
    expect(svg).toContain('>\u221225 %<')
    expect(svg).toContain('>\u221220 %<')
  })
  it('names each store at its line, with its price and until when', () => {
    expect(svg).toContain('>Kettle Lane<')
    expect(svg).toContain('>$160.00 to Oct 25<')
    expect(svg).toContain('today, Oct 20')
  })
  it('marks the last day of a running sale as assumed where none was printed, on a phone too', () => {
    const open = sightings.map((row) => (row.id === '4' ? { ...row, lastDay: null } : row))
    const unstated = priceRecordData({ product, sightings: open, views: priceViews(open, asOf), asOf }, 'USD')
    expect(priceRecordPlot(unstated, 1000, 372, { id: 'p' })).toContain('>last day assumed<')
    expect(priceRecordPlot(unstated, 350, 300, { id: 'p' })).toContain('>assumed<')
    expect(svg).not.toContain('assumed')
  })
  it('fills the markers of sales and leaves those of shelf prices open', () => {
    expect(svg.match(/class="mark-sale"/g)).toHaveLength(3)
    expect(svg.match(/class="mark-shelf"/g)).toHaveLength(4)
  })
  it('says where its scale starts and what it counts', () => {
    expect(priceRecordCaption(data(), 1000)).toBe(
      'The scale starts at $140. 5 counted sightings by 2 members; 2 sales shown. As on each store’s tags: with tax where it is printed in them, before delivery.',
    )
  })
  it('is drawn anew for a phone: half a year, and it says so', () => {
    const phone = priceRecordPlot(data(), 358, 300, { id: 'q' })
    expect(phone).toContain('viewBox="0 0 358 300"')
    expect(priceScale(data(), { left: 0, right: 1, top: 0, bottom: 1 }, 358)!.from >= '2026-04-19').toBe(true)
    expect(priceRecordCaption(data(), 358)).toContain('Six months are shown.')
  })
  it('keeps a store in its manner when another has nothing in the days shown', () => {
    const old = {
      ...data(),
      stores: [
        {
          storeId: 's0',
          name: 'Alder',
          runs: [{ from: '2025-06-01', to: '2025-08-01', priceMinor: 1, kind: 'regular' as const, regularMinor: null, assumed: false }],
          marks: [],
        },
        ...data().stores,
      ],
    }
    expect(priceScale(old, { left: 0, right: 1, top: 0, bottom: 1 }, 358)!.stores.map((store) => store.order)).toEqual([1, 2])
  })
  it('escapes names, is the same twice, and says when there is nothing', () => {
    const hostile = { ...data(), productName: '<script>', stores: data().stores.map((store) => ({ ...store, name: '"><script>' })) }
    expect(priceRecordPlot(hostile, 1000, 372, { id: 'p' })).not.toContain('<script')
    expect(priceRecordPlot(data(), 1000, 372, { id: 'p' })).toBe(svg)
    expect(priceRecordPlot({ ...data(), stores: [] }, 700, 200, { id: 'p' })).toContain('No sighting is counted')
  })
  it('needs no custom property on paper', () => {
    expect(priceRecordPlot(data(), 1000, 372, { id: 'p', paper: true })).not.toContain('var(')
  })
})

describe('laying out', () => {
  it('lists the first days of months across a year', () => {
    expect(monthStarts('2025-11-10', '2026-02-02')).toEqual(['2025-11-01', '2025-12-01', '2026-01-01', '2026-02-01'])
  })
  it('moves names apart, in their order, inside the room', () => {
    const out = spread([50, 52, 51], [20, 20, 20], 0, 100)
    expect(out[2]! - out[0]!).toBeGreaterThanOrEqual(20)
    expect(out[1]! - out[2]!).toBeGreaterThanOrEqual(20)
    expect(Math.max(...out)).toBeLessThanOrEqual(80)
  })
  it('shares the room where it is too small for all', () => {
    const out = spread([90, 90, 90, 90], [40, 40, 40, 40], 0, 100)
    expect(out).toEqual([0, 25, 50, 75])
  })
})

describe('ahead of today', () => {
  const ahead = { until: '2026-12-19', lowMinor: 14_000, expectedMinor: 17_000, highMinor: 20_000 }
  const area = { left: 60, right: 700, top: 30, bottom: 300 }
  it('reaches to the day that is asked about and no further', () => {
    expect(priceScale({ ...data(), ahead }, area, 800)?.until).toBe('2026-12-19')
    expect(priceScale(data(), area, 800)?.until).not.toBe('2026-12-19')
  })
  it('holds the range within its scale and draws band, expected price and day', () => {
    const scale = priceScale({ ...data(), ahead: { ...ahead, lowMinor: 9000 } }, area, 800)!
    expect(scale.lowMinor).toBeLessThanOrEqual(9000)
    const svg = priceRecordPlot({ ...data(), ahead }, 800, 370, { id: 'p' })
    expect(svg.match(/class="ahead"/g)).toHaveLength(1)
    expect(svg).toContain('class="ahead-expected"')
    expect(svg).toContain('by Dec 19')
    expect(priceRecordPlot(data(), 800, 370, { id: 'p' })).not.toContain('ahead')
  })
  it('is told in the caption', () =>
    expect(priceRecordCaption({ ...data(), ahead }, 800)).toContain(
      'Hatched: what is paid by Dec 19 in 8 of 10 cases; dashed: what is expected.',
    ))
})
