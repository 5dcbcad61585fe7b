import { describe, expect, it } from 'vitest'
import { adviceOf, sayAct, sayReturns } from '../../../core/pricing/line-advice.ts'
import type { LineOutlookView } from '../../../core/pricing/outlook-view.ts'
import { aLineCost } from './a-line-cost.ts'

const outlookLine = (fields: Partial<LineOutlookView>): LineOutlookView => ({
  productId: 'heater',
  quantity: 1,
  advice: 'wait',
  title: 'Wait: buy at $89.00 or under',
  words: 'Why. And more.',
  reason: 'Why.',
  noHurryUntil: null,
  onSale: false,
  saleLastDay: null,
  payTodayMinor: 10_600,
  expectedPaidMinor: 9_300,
  paid10Minor: 8_000,
  paid90Minor: 10_600,
  likely: { many: 2, of: 3, paidMinor: 9_540 },
  likelyTagMinor: 9_000,
  chanceOfSale: 0.7,
  priceToBuyAtMinor: 9_434,
  buyAtTagMinor: 8_900,
  tagsAgree: true,
  nextSaleTime: null,
  basis: 'record',
  ...fields,
})
const outlook = (...lines: Array<Partial<LineOutlookView>>) => ({ asOf: '2026-11-26', until: '2026-12-20', lines: lines.map(outlookLine) })

describe('the advice of a build, line by line', () => {
  it('belongs to the line that was asked about, also behind one that no store has', () => {
    const lines = [
      aLineCost({ lineId: 'none', storeId: null }),
      aLineCost({ lineId: 'x' }),
      aLineCost({ lineId: 'y', unitTodayMinor: 7_000 }),
    ]
    const told = adviceOf({ lines }, outlook({}, { advice: 'no_hurry', noHurryUntil: '2026-11-29' }))
    expect(told.map(({ lineId, advice }) => [lineId, advice])).toEqual([
      ['x', 'wait'],
      ['y', 'no_hurry'],
    ])
    expect(told.map((line) => sayAct(line, 'USD', 2026))).toEqual([
      { act: 'Wait', price: '89.00 or under', day: 'by Dec 20 at the latest' },
      { act: 'No hurry', price: '70.00', day: 'until Sun, Nov 29' },
    ])
  })

  it('names today’s price to whoever buys now or when it suits', () => {
    const lines = [aLineCost({}), aLineCost({ lineId: 'b' })]
    const told = adviceOf({ lines }, outlook({ advice: 'buy_now' }, { advice: 'buy_when_convenient' }))
    expect(told.map((line) => sayAct(line, 'USD', 2026))).toEqual([
      { act: 'Buy now', price: '100.00', day: 'today' },
      { act: 'Buy when convenient', price: '100.00', day: 'by Dec 20' },
    ])
  })

  it('has its one sentence of why, and is asked of stores where the price on its tag is beaten', () => {
    const asked: number[] = []
    const [told] = adviceOf({ lines: [aLineCost({})] }, outlook({}), (_, tagMinor) => (asked.push(tagMinor), 'Upriver has it for less.'))
    expect(told).toMatchObject({ reason: 'Why.', elsewhere: 'Upriver has it for less.', likelyTagMinor: 9_000 })
    expect(asked, 'the price to wait for, not today’s').toEqual([8_900])
    expect(adviceOf({ lines: [aLineCost({})] }, outlook({}))[0]).not.toHaveProperty('elsewhere')
  })

  it('names no price where none is known, and none where nothing was learnt', () => {
    const unknown = { payTodayMinor: null, buyAtTagMinor: null, advice: 'buy_when_convenient' } as const
    const [told] = adviceOf({ lines: [aLineCost({})] }, outlook(unknown))
    expect(told && sayAct(told, 'USD', 2026)).toEqual({ act: 'No price known', price: '', day: '' })
    expect(adviceOf({ lines: [aLineCost({})] }, outlook())).toEqual([])
  })
})

describe('a purchase that goes back for some days', () => {
  const ends = (returnDays: number | null, fields: Partial<LineOutlookView> = { advice: 'buy_now' }) =>
    adviceOf({ lines: [aLineCost({ returnDays })] }, outlook(fields))[0]?.returnsEndOn

  // 26 November and 14 days are 10 December; the day of the need is 20 December, 24 days on.
  it('is told where they run out before it is needed, and only there', () => {
    expect([ends(14), ends(23), ends(24), ends(null), ends(0)]).toEqual(['2026-12-10', '2026-12-19', null, null, null])
    expect(ends(14, { advice: 'wait' }), 'nothing is bought today').toBeNull()
  })

  it('says to fill what holds water before, and to try the rest', () => {
    const [line] = adviceOf({ lines: [aLineCost({ returnDays: 14 })] }, outlook({ advice: 'buy_now' }))
    if (!line) throw new Error('no advice')
    expect(sayReturns(line, true)).toBe('Bought today it goes back until Dec 10 only: fill it for its leak test before.')
    expect(sayReturns(line, false)).toContain('try it before')
    expect(sayReturns({ ...line, returnsEndOn: null }, true)).toBe('')
  })
})
