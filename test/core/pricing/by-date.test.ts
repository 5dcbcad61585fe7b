import { describe, expect, it } from 'vitest'
import { byDateOf, outlookLines, sayByDate, sayWhole } from '../../../core/pricing/by-date.ts'
import type { LineCost, Tier } from '../../../core/pricing/tiers.ts'

const today: Tier = { complete: true, goodsMinor: 100_000, deliveryMinor: 2_000, taxMinor: 6_000, totalMinor: 108_000 }
const outlook = {
  until: '2026-12-20',
  learnedOn: '2026-11-26',
  lines: [{ advice: 'wait' }, { advice: 'buy_now' }, { advice: 'wait' }] as const,
  total: { payTodayMinor: 106_000, expectedPaidMinor: 101_000, paid10Minor: 96_000, paid90Minor: 106_000 },
}

describe('the tier by a date', () => {
  it('is today less what the advice is expected to save, delivery as it is today', () => {
    expect(byDateOf({ today }, outlook, null)).toEqual({
      until: '2026-12-20', learnedOn: '2026-11-26', expectedMinor: 103_000, low10Minor: 98_000, high90Minor: 108_000, waits: 2,
    }) // prettier-ignore
  })
  it('takes the same share of what is saved where the discount is a share of the goods', () => {
    const discounted: Tier = { ...today, discountMinor: 10_000, totalMinor: 97_400 }
    // A tenth off the goods leaves nine tenths of the 5,000 that are saved.
    const share = { kind: 'share', basisPoints: 1000, storeId: null, reason: 'club' } as const
    expect(byDateOf({ today: discounted }, outlook, share)?.expectedMinor).toBe(97_400 - 4_500)
    expect(
      byDateOf({ today: discounted }, outlook, { kind: 'amount', amountMinor: 10_000, storeId: null, reason: 'club' })?.expectedMinor,
    ).toBe(97_400 - 5_000)
  })
  it('is none where today has no total, a line has no outlook or nothing was learnt', () => {
    expect(byDateOf({ today: { complete: false, missing: [] } }, outlook, null)).toBeNull()
    expect(byDateOf({ today }, { ...outlook, total: null }, null)).toBeNull()
    expect(byDateOf({ today }, { ...outlook, learnedOn: null }, null)).toBeNull()
  })
  it('asks about bought lines where today buys them', () => {
    const line = (storeId: string | null): LineCost => ({ productId: 'p', quantity: 2, storeId }) as LineCost
    expect(outlookLines({ lines: [line('s'), line(null)] })).toEqual([{ productId: 'p', quantity: 2, storeId: 's' }])
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
