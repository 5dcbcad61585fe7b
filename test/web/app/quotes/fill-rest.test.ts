import { describe, expect, it } from 'vitest'
import { SLOT_OF, type Slot } from '../../../../core/catalog/kinds.ts'
import type { Product } from '../../../../core/catalog/product.ts'
import type { Store } from '../../../../core/catalog/store.ts'
import type { PriceView } from '../../../../core/pricing/price-view.ts'
import { assembleBuild } from '../../../../core/quote/assemble.ts'
import type { BuildLine } from '../../../../core/quote/draft.ts'
import type { Need } from '../../../../core/quote/need.ts'
import type { QuoteInputs } from '../../../../core/quote/revision.ts'
import { editDraft } from '../../../../web/app/quotes/draft-edit.ts'
import { bestFirst, candidateOf, farFrom, saysPhrase } from '../../../../web/app/quotes/candidates.ts'
import { fillRest } from '../../../../web/app/quotes/fill-rest.ts'
import { unanswered } from '../../../../web/app/quotes/next-slot.ts'
import { slotOfCheck } from '../../../../web/app/quotes/slot-findings.ts'
import { sampleDraft, sampleView } from './sample-draft.ts'

/** A small shelf of own invention: of each kind something too small or without what it needs, cheap, and something that does, dearer. */
const shared = { maker: null, gtin: null, oversize: false, note: null, archived: false, version: 1, parts: [] }
const tank = (id: string, lengthMm: number): Product => ({
  ...shared, id, kind: 'tank', name: `Quietglass ${id}`, spec: { lengthMm, widthMm: 400, heightMm: 400, glassMm: 8, style: 'rimmed' },
}) // prettier-ignore
const SHELF: Product[] = [
  tank('t60', 600), tank('t90', 900), tank('t120', 1200),
  { ...shared, id: 'heat-10', kind: 'heater', name: 'Torvane 10 W', spec: { powerW: 10, adjustable: true } },
  { ...shared, id: 'heat-100', kind: 'heater', name: 'Torvane 100 W', spec: { powerW: 100, adjustable: true } },
  { ...shared, id: 'heat-150', kind: 'heater', name: 'Torvane 150 W', spec: { powerW: 150, adjustable: true } },
  { ...shared, id: 'filter-s', kind: 'filter', name: 'Pellick 60', spec: { type: 'internal', ratedFlowLph: 60, powerW: 3 } },
  { ...shared, id: 'filter-l', kind: 'filter', name: 'Pellick 900', spec: { type: 'internal', ratedFlowLph: 900, powerW: 8, mediaVolumeL: 1.5 } },
  { ...shared, id: 'power-1', kind: 'power', name: 'Corbelle 1', spec: { outlets: 1, protective: true, ratedCurrentA: 15 } },
  { ...shared, id: 'power-6', kind: 'power', name: 'Corbelle 6', spec: { outlets: 6, protective: true, ratedCurrentA: 15 } },
  { ...shared, id: 'meter', kind: 'thermometer', name: 'Torvane Watch', spec: {} },
] as Product[] // prettier-ignore
const store: Store = {
  id: 's', name: 'Saltcote', kind: 'local', town: null, country: 'US', subdivision: null, timeZone: 'America/New_York', taxBasisPoints: 600, pricesIncludeTax: false,
  deliveryTaxed: false, delivery: { kind: 'pickup_only' }, returnDays: 30, note: null, archived: false, version: 1,
} // prettier-ignore
const priceOf = (productId: string, priceMinor: number): PriceView => ({
  productId, storeId: 's',
  regular: { priceMinor, seenOn: '2026-10-01', age: 'current', from: 'shelf', sightingIds: ['x'] },
  today: { priceMinor, condition: 'shelf', seenOn: '2026-10-01', holdsUntil: null, lastDayStated: false, age: 'current', reporters: 2, sightingIds: ['x'] },
  best: { priceMinor, seenOn: '2026-10-01', sightingId: 'x' },
}) // prettier-ignore
const prices = SHELF.filter((product) => product.id !== 'meter').map((product, index) => priceOf(product.id, 1000 + 100 * index))

const view = sampleView(1, sampleDraft)
const inputsWith = (productId: string): QuoteInputs => ({
  ...view,
  products: SHELF.filter((product) => product.id === productId),
  stores: [store],
  prices: prices.filter((price) => price.productId === productId),
  draft: {
    ...sampleDraft,
    need: { ...sampleDraft.need, exact: { coldestRoomC: 18, warmestRoomC: 23 } },
    builds: [{ id: 'a', name: 'A', why: '', lines: [{ id: 'l', answer: 'buy', productId, quantity: 1, storeId: null, note: '' }] }],
  },
})
const offer = (slot: Slot) => {
  const products = SHELF.filter((product) => product.kind !== 'kit' && SLOT_OF[product.kind] === slot)
  return Promise.resolve({ products, prices: prices.filter((price) => products.some((product) => product.id === price.productId)) })
}
let made = 0
const newLineId = (): string => `n${(made += 1)}`

describe('filling the rest of a build', () => {
  it('puts what fits into each open slot, each seeing what came before, and leaves what nothing fits', async () => {
    const before = inputsWith('t90')
    const { inputs, filled, left } = await fillRest(before, 'a', offer, newLineId)
    const after = assembleBuild(inputs, 0)
    expect(filled).toEqual(expect.arrayContaining(['filter', 'heat', 'protect_circuit']))
    // No price of the thermometer was seen, and nothing else on this shelf reads a temperature or carries a tank.
    expect(left).toEqual(expect.arrayContaining(['read_temperature', 'carry_tank']))
    // Lid, light and bed are no more on it: they are looked for as well, and said to be missing.
    expect([...unanswered(after), 'cover', 'light', 'substrate'].toSorted()).toEqual(left.toSorted())
    const bought = inputs.draft.builds[0]?.lines.flatMap((line) => (line.answer === 'buy' ? [line.productId] : [])) ?? []
    expect(bought).not.toContain('heat-10')
    // One outlet would do for the strip alone; heater and filter are plugged in by then.
    expect(bought).toContain('power-6')
    const judged = after.report.findings.filter((finding) => filled.some((slot) => slot === slotOfCheck(finding.check)))
    expect(judged.length).toBeGreaterThan(0)
    expect(judged.filter(({ verdict }) => verdict !== 'fits' && verdict !== 'marginal').map((finding) => finding.title)).toEqual([])
    expect(after.cost.today.complete).toBe(true)
  })
  it('is taken back whole by the lines it began with', async () => {
    const before = inputsWith('t90')
    const { inputs } = await fillRest(before, 'a', offer, newLineId)
    const lines = before.draft.builds[0]?.lines ?? []
    expect(editDraft(inputs.draft, { do: 'set_lines', buildId: 'a', lines })).toEqual(before.draft)
  })
})

describe('the order of what may be chosen', () => {
  const need = { lengthMm: 900, commonSizeId: null }
  it('is by how near a tank is to the asked length', () => {
    const order = SHELF.filter((product) => product.kind === 'tank').toSorted((a, b) => farFrom(need, a) - farFrom(need, b))
    expect(order[0]?.id).toBe('t90')
    expect(farFrom({ lengthMm: 900, commonSizeId: null }, tank('x', 600))).toBe(300)
    expect(farFrom({ lengthMm: null, commonSizeId: null }, tank('x', 600))).toBe(0)
  })
  it('is by what it adds to the total among those that fit alike', () => {
    const inputs = inputsWith('t90')
    const build = assembleBuild(inputs, 0)
    const meters = [{ ...SHELF.find((one) => one.id === 'meter'), id: 'm2' } as Product, { ...SHELF.find((one) => one.id === 'meter'), id: 'm1' } as Product] // prettier-ignore
    const fetched = { products: meters, prices: [priceOf('m1', 500), priceOf('m2', 900)] }
    const tried = meters.map((product) =>
      candidateOf(product, { inputs, build, slot: 'read_temperature', quantity: 1, replaces: [], fetched }),
    )
    expect(tried.toSorted(bestFirst).map((one) => one.product.id)).toEqual(['m1', 'm2'])
  })
  it('has first what is named as it was typed', () => {
    expect(saysPhrase(tank('Shallow 90', 900), 'shallow 90')).toBe(true)
    expect(saysPhrase(tank('Shallow 90', 900), '')).toBe(false)
  })
})

it('passes over what fits its own slot and leaves another that nothing then fits', async () => {
  const before = inputsWith('t90')
  const rimless = before.products.map((product) => ({ ...product, spec: { ...product.spec, style: 'rimless' } }) as Product)
  const stand = (id: string, top: 'full' | 'perimeter'): Product =>
    ({ ...shared, id, kind: 'stand', name: id, spec: { topLengthMm: 900, topWidthMm: 400, heightMm: 700, ratedLoadKg: 400, top, surface: 'metal' } }) // prettier-ignore
  const stands = [stand('open', 'perimeter'), stand('whole', 'full')]
  const mat = { ...shared, id: 'mat', kind: 'mat', name: 'mat', spec: { lengthMm: 900, widthMm: 400 } } as Product
  const shelves: Partial<Record<Slot, { products: Product[]; prices: PriceView[] }>> = {
    carry_tank: { products: stands, prices: [priceOf('open', 5000), priceOf('whole', 9000)] },
    bed_glass: { products: [mat], prices: [priceOf('mat', 2000)] },
  }
  const offered = (slot: Slot) => Promise.resolve(shelves[slot] ?? { products: [], prices: [] })
  const { inputs } = await fillRest({ ...before, products: rimless }, 'a', offered, newLineId)
  // Flat glass on an open frame is no bed, with or without a mat: the dearer stand is the one that works.
  expect(inputs.draft.builds[0]?.lines.flatMap((line) => (line.answer === 'buy' ? [line.productId] : []))).toEqual(['t90', 'whole', 'mat'])
})

interface Wish {
  need?: Partial<Need>
  plants?: 'none' | 'low'
  lines?: BuildLine[]
  products?: Product[]
}

describe('what goes before the price', () => {
  const light = (id: string, lengthMm: number): Product => ({
    ...shared,
    id,
    kind: 'light',
    name: id,
    spec: { lengthMm, widthMm: 110, powerW: 30, luminousFluxLm: 3000, spectrum: 'white' },
  })
  const lid = { ...shared, id: 'lid', kind: 'lid', name: 'lid', spec: { lengthMm: 900, widthMm: 400, cover: 'glass' } } as Product
  const heater = (powerW: number): Product => ({
    ...shared,
    id: `h${powerW}`,
    kind: 'heater',
    name: `Torvane ${powerW} W`,
    spec: { powerW, adjustable: true, externalController: true },
  })
  const filter = (id: string, type: 'return_pump' | 'hang_on'): Product => ({
    ...shared,
    id,
    kind: 'filter',
    name: id,
    spec: { type, ratedFlowLph: 900, powerW: 8, mediaVolumeL: 1.5 },
  })
  const shelf = (products: Product[]) => ({ products, prices: products.map((product, index) => priceOf(product.id, 1000 * (index + 1))) })
  const fill = async (shelves: Partial<Record<Slot, ReturnType<typeof shelf>>>, coldestRoomC: number, wish: Wish = {}) => {
    const before = inputsWith('t90')
    const need = { ...before.draft.need, ...wish.need, exact: { coldestRoomC, warmestRoomC: 23, plants: wish.plants ?? 'low' } }
    const builds = before.draft.builds.map((build) => ({ ...build, lines: [...build.lines, ...(wish.lines ?? [])] }))
    const more = wish.products ?? []
    const prices = [...before.prices, ...more.map(({ id }) => priceOf(id, 3000))]
    const asked = { ...before, prices, products: [...before.products, ...more], draft: { ...before.draft, need, builds } }
    const { inputs } = await fillRest(asked, 'a', (slot) => Promise.resolve(shelves[slot] ?? shelf([])), newLineId)
    return inputs.draft.builds[0]?.lines.flatMap((line) => (line.answer === 'buy' ? [`${line.quantity} ${line.productId}`] : [])) ?? []
  }

  it('is a light that spans the tank, though a shorter one would do and costs less', async () => {
    expect(await fill({ light: shelf([light('l700', 700), light('l900', 900), light('l880', 880)]) }, 18)).toEqual(['1 t90', '1 l900'])
    expect(await fill({ light: shelf([light('l700', 700)]) }, 18)).toEqual(['1 t90', '1 l700'])
  })
  it('is a lid over fresh water, and over the sea where an open tank takes more heaters than two', async () => {
    const shelves = { heat: shelf([heater(75)]), cover: shelf([lid]) }
    const need = { livestockId: 'marine-fish' }
    expect(await fill(shelves, 21)).toEqual(['1 t90', '1 lid', '2 h75'])
    expect(await fill(shelves, 18, { need })).toEqual(['1 t90', '1 lid', '2 h75'])
    expect((await fill({ heat: shelves.heat }, 18)).at(-1)).toMatch(/^[3-9] h75$/)
  })
  it('is lid, light and bed of fresh water though nobody asked for plants, and what is not needed is left alone', async () => {
    const gravel = { ...shared, id: 'gravel', kind: 'substrate', name: 'gravel', spec: { type: 'gravel', packVolumeL: 20 } } as Product
    const shelves = { cover: shelf([lid]), light: shelf([light('l900', 900)]), substrate: shelf([gravel]) }
    expect(await fill(shelves, 18, { plants: 'none' })).toEqual(['1 t90', '1 lid', '1 l900', '1 gravel'])
    const lines = [{ id: 'n', answer: 'not_needed', slot: 'cover', reason: 'it stays open' } as const]
    expect(await fill(shelves, 18, { plants: 'none', lines })).toEqual(['1 t90', '1 l900', '1 gravel'])
  })
  it('is what states the figures that the checklist reads, though what states none costs less', async () => {
    const source = (id: string, spec: object): Product => ({ ...shared, id, kind: 'ammonia_source', name: id, spec })
    const told = { form: 'ammonium_chloride', strength: 1, packMassG: 50 }
    expect(await fill({ feed_cycle: shelf([source('bare', { form: 'ammonia_solution' }), source('told', told)]) }, 18)).toEqual([
      '1 t90',
      '1 told',
    ])
    expect(await fill({ feed_cycle: shelf([source('bare', {})]) }, 18)).toEqual(['1 t90', '1 bare'])
  })
  it('is heaters of the power that the slot asks for, before stronger ones that a controller makes fit', async () => {
    const plain = (powerW: number): Product => ({ ...heater(powerW), id: `p${powerW}`, spec: { powerW, adjustable: true } }) as Product
    // 90 to 135 W each in a room of 18 °C: one of 100 W that sticks on is marginal, one of 400 W with a controller is not.
    const bought = await fill({ heat: shelf([heater(400), plain(100)]) }, 18)
    expect(bought).toEqual(['1 t90', '2 p100'])
  })
  it('is the sump that a return pump stands in', async () => {
    const pump = filter('return', 'return_pump')
    const sump = { ...shared, id: 'sump', kind: 'sump', name: 'sump', spec: { totalVolumeL: 120, heightMm: 400 } } as Product
    const lines = [{ id: 'p', answer: 'buy', productId: 'return', quantity: 1, storeId: null, note: '' } as const]
    expect(await fill({ sump: shelf([sump]) }, 18, { lines, products: [pump] })).toEqual(['1 t90', '1 return', '1 sump'])
    expect(await fill({ sump: shelf([sump]) }, 18)).toEqual(['1 t90'])
  })
  it('is no return pump where no sump stands', async () => {
    expect(await fill({ filter: shelf([filter('return', 'return_pump'), filter('back', 'hang_on')]) }, 18)).toEqual(['1 t90', '1 back'])
  })
})
