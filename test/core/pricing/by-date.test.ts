import { describe, expect, it } from 'vitest'
import { byDateOf, outlookLines, sayByDate, sayWhole } from '../../../core/pricing/by-date.ts'
import type { LineCost, Tier } from '../../../core/pricing/tiers.ts'

const today: Tier = { complete: true, goodsMinor: 100_000, deliveryMinor: 2_000, taxMinor: 6_000, totalMinor: 108_000 }
const outlook = {
  until: '2026-12-20',
  learnedOn: '2026-11-26',
  lines: [
    { advice: 'wait', payTodayMinor: 40_000, expectedPaidMinor: 37_000 },
    { advice: 'buy_now', payTodayMinor: 40_000, expectedPaidMinor: 40_000 },
    { advice: 'wait', payTodayMinor: 26_000, expectedPaidMinor: 24_000 },
  ] as const,
  total: { payTodayMinor: 106_000, expectedPaidMinor: 101_000, paid10Minor: 96_000, paid90Minor: 106_000 },
}
const boughtAt = (storeId: string | null): LineCost => ({ productId: 'p', quantity: 2, storeId }) as LineCost
const lines = ['s', 's', 't'].map(boughtAt)

describe('the tier by a date', () => {
  it('is today less what the advice is expected to save, delivery as it is today', () => {
    expect(byDateOf({ today, lines }, outlook, null)).toEqual({
      until: '2026-12-20', learnedOn: '2026-11-26', expectedMinor: 103_000, low10Minor: 98_000, high90Minor: 108_000, waits: 2,
    }) // prettier-ignore
  })
  it('takes the same share of what is saved where the discount is a share of the goods', () => {
    const discounted: Tier = { ...today, discountMinor: 10_000, totalMinor: 97_400 }
    // A tenth off the goods leaves nine tenths of the 5,000 that are saved.
    const share = { kind: 'share', basisPoints: 1000, storeId: null, reason: 'club' } as const
    expect(byDateOf({ today: discounted, lines }, outlook, share)?.expectedMinor).toBe(97_400 - 4_500)
    expect(
      byDateOf({ today: discounted, lines }, outlook, { kind: 'amount', amountMinor: 10_000, storeId: null, reason: 'club' })
        ?.expectedMinor,
    ).toBe(97_400 - 5_000)
  })
  it('takes a share that one store gives of what is saved there, and of nothing else', () => {
    // 100,000 at A with half off, 100,000 at B: 150,000 today. What B saves is saved whole; half of what A saves.
    const halved: Tier = { complete: true, goodsMinor: 200_000, discountMinor: 50_000, deliveryMinor: 0, taxMinor: 0, totalMinor: 150_000 }
    const share = { kind: 'share', basisPoints: 5000, storeId: 'a', reason: 'club' } as const
    const at = (stores: Array<string | null>) => ({ today: halved, lines: stores.map(boughtAt) })
    const saving = (first: number, second: number) => ({
      ...outlook,
      lines: [first, second].map((minor) => ({ advice: 'wait' as const, payTodayMinor: 100_000, expectedPaidMinor: 100_000 - minor })),
      total: { payTodayMinor: 200_000, expectedPaidMinor: 200_000 - first - second, paid10Minor: 160_000, paid90Minor: 200_000 },
    })
    const told = (expectedMinor: number, low10Minor: number, high90Minor: number) => ({ expectedMinor, low10Minor, high90Minor })
    expect(byDateOf(at(['a', 'b']), saving(0, 20_000), share)).toMatchObject(told(130_000, 110_000, 150_000))
    expect(byDateOf(at(['a', 'b']), saving(20_000, 0), share)).toMatchObject(told(140_000, 130_000, 150_000))
    expect(byDateOf(at(['a', 'b']), saving(10_000, 10_000), share)).toMatchObject(told(135_000, 120_000, 150_000))
    // A line that nobody sells is asked nothing about, and shifts no other.
    expect(byDateOf(at([null, 'a', 'b']), saving(0, 20_000), share)?.expectedMinor).toBe(130_000)
    // One line is expected to save 20,000, the other to cost 10,000 more: the range stays around what is expected.
    expect(byDateOf(at(['a', 'b']), saving(20_000, -10_000), share)).toMatchObject(told(150_000, 130_000, 156_667))
  })
  it('is none where today has no total, a line has no outlook or nothing was learnt', () => {
    expect(byDateOf({ today: { complete: false, missing: [] }, lines }, outlook, null)).toBeNull()
    expect(byDateOf({ today, lines }, { ...outlook, total: null }, null)).toBeNull()
    expect(byDateOf({ today, lines }, { ...outlook, learnedOn: null }, null)).toBeNull()
  })
  it('asks about bought lines where today buys them', () => {
    expect(outlookLines({ lines: [boughtAt('s'), boughtAt(null)] })).toEqual([{ productId: 'p', quantity: 2, storeId: 's' }])
  })
})

describe('in words', () => {
  const byDate = {
    until: '2026-12-20',
    learnedOn: '2026-11-26',
    expectedMinor: 107_841,
    low10Minor: 101_900,
    high90Minor: 110_703,
    waits: 1,
  }
  it('an expected sum is told in whole units with its range', () =>
    expect(sayByDate(byDate, 'USD', 2026)).toEqual({
      label: 'By Dec 20',
      figure: 'about $1,078',
      span: '$1,019 to $1,107',
      range: '$1,019 to $1,107 in 8 of 10 cases',
    }))
  it('where the advice waits with nothing it is today’s own total', () =>
    expect(sayByDate({ ...byDate, waits: 0 }, 'USD', 2026)).toMatchObject({ figure: '$1,078.41', range: 'waiting does not pay' }))
  it('currencies without decimals stay whole', () => expect(sayWhole(1078, 'JPY')).toBe('¥1,078'))
})
