import { describe, expect, it } from 'vitest'
import { kitsApart, kitSumRows, sayKitApart, type KitApart } from '../../../core/quote/kit-apart.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'
import { sampleInputs } from '../../support/sample-revision.ts'

const inputs = sampleInputs({ builds: 4 })
const withKit = inputs.draft.builds.findIndex(({ lines }) => lines.some((line) => line.answer === 'buy' && line.productId === 'kit-80'))
const kitOf = (change: Partial<QuoteInputs> = {}): KitApart => {
  const [kit] = kitsApart({ ...inputs, ...change }, withKit)
  if (!kit) throw new Error('no kit in the sample')
  return kit
}
const without = (...ids: string[]) => inputs.prices.filter(({ productId }) => !ids.includes(productId))

// By hand, before tax: tank 120, filter 40 and lid 40 are 200 apart; the kit is 249.99 on sale and 279.99 at full price. Tax of the store is 6 %.
describe('a kit against the parts that it replaces', () => {
  it('is held against what they cost apart at the same tier, and not against its own regular price', () => {
    const kit = kitOf()
    expect(kit.priced + kit.unpriced.length + kit.unused.length).toBeGreaterThanOrEqual(3)
    expect(kit.todayMinor).toBeLessThan(0)
    expect(kit.fullMinor).toBeLessThan(kit.todayMinor ?? 0)
    expect((kit.todayMinor ?? 0) - (kit.fullMinor ?? 0), 'its own sale of 30, with tax, is all that differs').toBe(3_180)
  })

  it('tells what each part that it is held against comes to, so that every price can be opened', () => {
    const priceOf = (kit: KitApart) => Object.fromEntries(kit.parts.map(({ productId, todayMinor }) => [productId, todayMinor]))
    const known = priceOf(kitOf())
    expect(known).toMatchObject({ 'kit-tank': 12_000, 'kit-filter': 4_000, 'kit-lid': 4_000 })
    expect(priceOf(kitOf({ prices: without('kit-filter') }))).toEqual({ ...known, 'kit-filter': null })
  })

  it('adds up from what the parts come to, line by line, to the difference that is told', () => {
    const kit = kitOf()
    const { partsMinor = 0, kitMinor = 0, deliveryMinor = 0, taxMinor = 0, othersMinor = 0 } = kit.sums ?? {}
    expect(partsMinor).toBe(kit.parts.reduce((sum, part) => sum + (part.todayMinor ?? 0), 0))
    expect(kitMinor, 'on sale').toBe(24_999)
    // 6 % of the difference, each store's tax rounded to the cent.
    expect(Math.abs(taxMinor - (partsMinor - kitMinor + othersMinor) * 0.06)).toBeLessThanOrEqual(1)
    expect(partsMinor - kitMinor + deliveryMinor + taxMinor + othersMinor).toBe(kit.todayMinor)
    const rows = kitSumRows(kit)
    expect(rows.slice(0, 4).map(({ words }) => words)).toEqual(['Together', 'The kit', 'Difference', 'Tax that differs'])
    expect(rows.at(-1)).toEqual({ words: 'The kit is more by', minor: -(kit.todayMinor ?? 0) })
    expect(kitSumRows({ ...kit, sums: null })).toEqual([])
  })

  it('does not change with a discount, which is no saving of the kit’s', () => {
    const draft = { ...inputs.draft, discount: { kind: 'share' as const, basisPoints: 1000, storeId: null, reason: 'club' } }
    expect(kitOf({ draft })).toEqual(kitOf())
  })

  it('names a part without a price and counts the others alone', () => {
    const all = kitOf()
    const kit = kitOf({ prices: without('kit-filter') })
    expect(kit.unpriced).toHaveLength(all.unpriced.length + 1)
    expect(kit.priced).toBe(all.priced - 1)
    expect(kit.todayMinor).toBeLessThan(all.todayMinor ?? 0)
    expect(sayKitApart(kit, 'USD')).toContain('so what it saves is not known')
    expect(sayKitApart(kitOf({ prices: without('kit-filter', 'kit-tank', 'kit-lid', 'kit-light', 'kit-heater') }), 'USD')).toContain(
      'none of its parts has a price',
    )
  })

  it('counts no part whose place a line of its own takes', () => {
    const build = inputs.draft.builds[withKit]
    if (!build) throw new Error('no build')
    const lines = [
      ...build.lines.filter((line) => line.answer === 'not_needed' || line.productId !== 'filter'),
      { id: 'own-filter', answer: 'buy' as const, productId: 'filter', quantity: 1, storeId: null, note: '' },
    ]
    const builds = inputs.draft.builds.map((one, at) => (at === withKit ? { ...one, lines } : one))
    const kit = kitOf({ draft: { ...inputs.draft, builds } })
    expect(kit.unused).toContain('hang-on filter, 700 L/h')
    expect(sayKitApart(kit, 'USD')).toContain('Not counted, as this build does not use it: hang-on filter')
  })

  it('is empty for a build without one', () => {
    expect(kitsApart(inputs, 0)).toEqual([])
    expect(kitsApart(inputs, 99)).toEqual([])
  })
})

it('is told in words at both tiers', () => {
  const kit = { name: 'Start 80', priced: 3, unpriced: [], unused: [], todayMinor: 4120, fullMinor: 2200 }
  expect(sayKitApart(kit, 'USD')).toBe('Start 80 costs $41.20 less today than its 3 parts bought apart, $22.00 less at full price.')
  expect(sayKitApart({ ...kit, todayMinor: -500, fullMinor: -500 }, 'USD')).toBe(
    'Start 80 costs $5.00 more today than its 3 parts bought apart.',
  )
  expect(sayKitApart({ ...kit, todayMinor: 0 }, 'USD')).toBe(
    'Start 80 costs as much today as its 3 parts bought apart, $22.00 less at full price.',
  )
})
