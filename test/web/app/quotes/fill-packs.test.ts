import { describe, expect, it } from 'vitest'
import type { Slot } from '../../../../core/catalog/kinds.ts'
import type { Product } from '../../../../core/catalog/product.ts'
import type { Store } from '../../../../core/catalog/store.ts'
import type { PriceView } from '../../../../core/pricing/price-view.ts'
import { assembleBuild } from '../../../../core/quote/assemble.ts'
import type { QuoteInputs } from '../../../../core/quote/revision.ts'
import { packsOf, shortSlots } from '../../../../web/app/quotes/fill-packs.ts'
import { fillRest } from '../../../../web/app/quotes/fill-rest.ts'
import { productOf, sampleInputs, sampleTank } from '../../../core/quote/sample-inputs.ts'

const shared = { maker: null, gtin: null, oversize: false, note: null, archived: false, version: 1, parts: [] }
const gravel = (id: string, packVolumeL: number, maker = 'Millrace'): Product => ({
  ...shared,
  maker,
  id,
  kind: 'substrate',
  name: `${maker} ${id}`,
  spec: { type: 'gravel', packVolumeL },
})
const salt = (id: string, packMassKg: number): Product => ({
  ...shared,
  maker: 'Stillwell',
  id,
  kind: 'salt_mix',
  name: `Stillwell ${id}`,
  spec: { packMassKg, gramsPerL: 40 },
})
const store: Store = {
  id: 's', name: 'Saltcote', kind: 'local', town: null, country: 'US', subdivision: null, timeZone: 'America/New_York', taxBasisPoints: 0, pricesIncludeTax: false,
  deliveryTaxed: false, delivery: { kind: 'pickup_only' }, returnDays: 30, note: null, archived: false, version: 1,
} // prettier-ignore
const priceOf = (productId: string, priceMinor: number): PriceView => ({
  productId, storeId: 's',
  regular: { priceMinor, seenOn: '2026-10-25', age: 'current', from: 'shelf', sightingIds: ['x'] },
  today: { priceMinor, condition: 'shelf', seenOn: '2026-10-25', holdsUntil: null, lastDayStated: false, age: 'current', reporters: 2, sightingIds: ['x'] },
  best: { priceMinor, seenOn: '2026-10-25', sightingId: 'x' },
}) // prettier-ignore
const bags = [gravel('small', 5), gravel('large', 15), gravel('odd', 19, 'Corbelle')]
const mixes = [salt('salt-1', 1), salt('salt-4', 4)]
const prices = [
  priceOf('salt-1', 600),
  priceOf('salt-4', 2000),
  priceOf('small', 700),
  priceOf('large', 1800),
  priceOf('odd', 9900),
  priceOf(sampleTank.id, 20_000),
]
const shelves: Partial<Record<Slot, Product[]>> = { substrate: bags, salt: mixes }
const offer = (slot: Slot) => Promise.resolve({ products: shelves[slot] ?? [], prices })

const inputsOf = (products: Product[], livestockId: string): QuoteInputs => {
  const inputs = sampleInputs(products, { livestockId, exact: { plants: 'low', substrateDepthMm: 50 } })
  return { ...inputs, stores: [store], prices }
}
const bought = ({ draft }: QuoteInputs) =>
  draft.builds[0]?.lines.flatMap((line) =>
    line.answer === 'buy' && line.productId !== sampleTank.id ? [[line.productId, line.quantity]] : [],
  )
let made = 0
const newLineId = (): string => `n${(made += 1)}`

describe('filling what is bought by the pack', () => {
  it('mixes sizes of one thing to the least cost: 19 L of bed from 5 and 15 L are 25.00, 15 and 15 L are 36.00', async () => {
    const { inputs, filled } = await fillRest(inputsOf([sampleTank], 'small-tropical'), 'a', offer, newLineId)
    expect(filled).toContain('substrate')
    expect(bought(inputs)).toEqual([
      ['large', 1],
      ['small', 1],
    ])
    expect(shortSlots(assembleBuild(inputs, 0))).toEqual([])
  })
  it('adds to packs that do not go far enough, and only what is missing', async () => {
    const before = inputsOf([sampleTank, gravel('large', 15)], 'small-tropical')
    expect(shortSlots(assembleBuild(before, 0))).toEqual(['substrate'])
    const { inputs, filled } = await fillRest(before, 'a', offer, newLineId)
    expect(filled).toContain('substrate')
    expect(bought(inputs)).toEqual([
      ['large', 1],
      ['small', 1],
    ])
  })
  it('never pours another thing onto what is there, however cheap: it is left to the advisor', async () => {
    const sand: Product = productOf('substrate', 'odd', { type: 'sand', packVolumeL: 10 })
    const before = inputsOf([sampleTank, sand], 'small-tropical')
    const { inputs, left } = await fillRest({ ...before, prices: prices.filter((one) => one.productId !== 'odd') }, 'a', offer, newLineId)
    expect(left).toContain('substrate')
    expect(bought(inputs)).toEqual([['odd', 1]])
  })
  it('counts the packs of one product that the slot takes, for all of the bed where they take the place of what is there', () => {
    const inputs = inputsOf([sampleTank, gravel('large', 15)], 'small-tropical')
    const build = assembleBuild(inputs, 0)
    // A bed of 884 mm by 434 mm and 50 mm deep: 19.2 L, of which 15 L are there.
    expect(packsOf(gravel('small', 5), 'substrate', { inputs, build, replaces: [] })).toBe(1)
    expect(packsOf(gravel('small', 5), 'substrate', { inputs, build, replaces: ['line-large'] })).toBe(4)
    expect(packsOf(productOf('substrate', 'mute', {}), 'substrate', { inputs, build, replaces: [] })).toBe(1)
  })
  it('leaves what is enough alone', async () => {
    const { filled } = await fillRest(inputsOf([sampleTank, gravel('odd', 19, 'Corbelle')], 'small-tropical'), 'a', offer, newLineId)
    expect(filled).not.toContain('substrate')
  })
  it('brings salt for the water of a salt-water tank', async () => {
    const { inputs, filled } = await fillRest(inputsOf([sampleTank], 'marine-fish'), 'a', offer, newLineId)
    expect(filled).toContain('salt')
    const build = assembleBuild(inputs, 0)
    const kg = inputs.draft.builds[0]?.lines.reduce((sum, line) => {
      const product = line.answer === 'buy' ? mixes.find(({ id, kind }) => id === line.productId && kind === 'salt_mix') : undefined
      return sum + (product && line.answer === 'buy' ? line.quantity * ((product.spec as { packMassKg?: number }).packMassKg ?? 0) : 0)
    }, 0)
    expect(((kg ?? 0) * 1000) / 40).toBeGreaterThanOrEqual(build.report.figures.waterVolumeL ?? Infinity)
    expect(shortSlots(build)).toEqual([])
  })
})
