import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { SpecOf } from '../../../core/catalog/spec.ts'
import type { Store } from '../../../core/catalog/store.ts'
import type { Install } from '../../../core/install.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import { emptyNeed } from '../../../core/quote/empty-draft.ts'
import { revisionDocument } from '../../../core/quote/revision-document.ts'
import type { QuoteInputs, RevisionDocument } from '../../../core/quote/revision.ts'
import { US } from '../../../core/units/say.ts'

const install: Install = {
  name: 'Tarnwick Aquarium Club', mode: 'club', currency: 'USD', country: 'US', timeZone: 'America/New_York', units: US, contact: 'ask the club, 555-0100', paper: 'letter', energyPriceMinor: 17, circuitVoltageV: 120, circuitCurrentA: 15,
} // prettier-ignore

const store = (id: string, name: string): Store => ({
  id, name, kind: 'local', town: 'Tarnwick', country: 'US', subdivision: null, timeZone: 'America/New_York', taxBasisPoints: 600, pricesIncludeTax: false, deliveryTaxed: false, delivery: { kind: 'flat', feeMinor: 1500, oversizeMinor: 0 }, returnDays: 14, note: null, archived: false, version: 1,
}) // prettier-ignore
const stores = [store('s1', 'Kettle Lane'), store('s2', 'Saltcote'), store('s3', 'Upriver')]

const product = <K extends Kind>(id: string, kind: K, name: string, spec: SpecOf[K], parts: Product['parts'] = []): Product =>
  ({ id, kind, name, maker: null, gtin: null, oversize: false, note: null, spec, parts, archived: false, version: 1 }) as Product

export const sampleProducts: Product[] = [
  product('tank-a', 'tank', 'Wendlemere 75, rimmed', { lengthMm: 1219, widthMm: 457, heightMm: 533, glassMm: 10, bottomMm: 10, style: 'rimmed', emptyMassKg: 61 }),
  product('tank-b', 'tank', 'Wendlemere 55', { lengthMm: 1219, widthMm: 330, heightMm: 533, glassMm: 8, bottomMm: 8, style: 'rimmed', emptyMassKg: 36 }),
  product('tank-c', 'tank', 'Wendlemere Clear 50', { lengthMm: 914, widthMm: 457, heightMm: 457, glassMm: 10, bottomMm: 10, style: 'rimless' }),
  product('filter-a', 'filter', 'Pellick C-1800 canister', { type: 'canister', ratedFlowLph: 1800, powerW: 22, cordMm: 1830 }),
  product('filter-c', 'filter', 'Pellick C-1200 canister', { type: 'canister', ratedFlowLph: 1200, powerW: 16, cordMm: 1830 }),
  product('heater-200', 'heater', 'Torvane 200 W', { powerW: 200, adjustable: true, cordMm: 1830 }),
  product('heater-150', 'heater', 'Torvane 150 W', { powerW: 150, adjustable: true, cordMm: 1830 }),
  product('light-a', 'light', 'Halden Row 48', { lengthMm: 1200, powerW: 32, luminousFluxLm: 3000, cordMm: 1830 }),
  product('stand-a', 'stand', 'Thornby Bench 48 × 18', { topLengthMm: 1240, topWidthMm: 470, heightMm: 711, ratedLoadKg: 450, top: 'full', base: 'end_panels', massKg: 32 }),
  product('stand-b', 'stand', 'Thornby Bench 48 × 13', { topLengthMm: 1240, topWidthMm: 340, heightMm: 711, top: 'full', base: 'end_panels' }),
  product('lid-a', 'lid', 'Wendlemere lid 48 × 18', { lengthMm: 1210, widthMm: 450, cover: 'glass' }),
  product('gravel', 'substrate', 'Millrace gravel, 20 lb', { type: 'gravel', packMassKg: 9.07 }),
  product('conditioner', 'conditioner', 'Stillwell 500 mL', { packVolumeMl: 500, doseMlPerL: 0.1, bindsAmmonia: true }),
  product('ammonia', 'ammonia_source', 'Stillwell ammonium chloride 50 g', { form: 'ammonium_chloride', strength: 1, packMassG: 50 }),
  product('tests', 'test_kit', 'Lockridge five-test kit', { measuresAmmonia: true, measuresNitrite: true, measuresNitrate: true, measuresPh: true, measuresKh: true }),
  product('thermometer', 'thermometer', 'Torvane thermometer', { type: 'digital' }),
  product('strip', 'power', 'Corbelle GFCI strip', { outlets: 6, ratedCurrentA: 15, protective: true }),
  product('kit-b', 'kit', 'Wendlemere Start 55 kit', { labelVolumeL: 208 }, [
    { productId: 'tank-b', quantity: 1 },
    { productId: 'filter-c', quantity: 1 },
    { productId: 'heater-200', quantity: 1 },
    { productId: 'thermometer', quantity: 1 },
  ]),
] // prettier-ignore

const shelf = (productId: string, storeId: string, priceMinor: number): PriceView => ({
  productId,
  storeId,
  regular: { priceMinor, seenOn: '2026-10-03', age: 'current', from: 'shelf', sightingIds: [] },
  today: {
    priceMinor,
    condition: 'shelf',
    seenOn: '2026-10-03',
    holdsUntil: null,
    lastDayStated: false,
    age: 'current',
    reporters: 2,
    sightingIds: [],
  },
  best: { priceMinor: Math.round(priceMinor * 0.85), seenOn: '2026-07-04', sightingId: 'x' },
})
const sale = (productId: string, storeId: string, priceMinor: number, regularMinor: number): PriceView => ({
  ...shelf(productId, storeId, regularMinor),
  today: {
    priceMinor,
    condition: 'sale',
    seenOn: '2026-10-19',
    holdsUntil: '2026-10-25',
    lastDayStated: true,
    age: 'current',
    reporters: 2,
    sightingIds: [],
  },
  best: { priceMinor, seenOn: '2026-10-19', sightingId: 'x' },
})

const prices: PriceView[] = [
  sale('tank-a', 's1', 16499, 21999), sale('kit-b', 's1', 24999, 29999), shelf('tank-c', 's1', 34999), sale('filter-a', 's3', 15199, 18999), shelf('filter-c', 's3', 14999), shelf('heater-150', 's2', 3699),
  shelf('heater-200', 's2', 4199), shelf('light-a', 's1', 13999), shelf('stand-a', 's1', 23999), shelf('stand-b', 's1', 19999), shelf('lid-a', 's1', 5499), shelf('gravel', 's2', 1749), shelf('conditioner', 's2', 1199),
  shelf('ammonia', 's2', 899), shelf('tests', 's2', 3899), shelf('thermometer', 's2', 949),
  shelf('strip', 's2', 4250),
] // prettier-ignore

const buy = (productId: string, quantity = 1): BuildLine => ({
  id: `l-${productId}`,
  answer: 'buy',
  productId,
  quantity,
  storeId: null,
  note: '',
})
const common = [buy('conditioner'), buy('ammonia'), buy('tests'), buy('strip')]

/** Three builds; `withoutPriceOf` names a product nobody has seen a price of. */
export function sampleInputs(change: { withoutPriceOf?: string; title?: string; note?: string } = {}): QuoteInputs {
  return {
    draft: {
      title: change.title ?? 'Three tanks for a planted community',
      need: { ...emptyNeed(), lengthMm: 1219, place: 'living room', budgetMinor: 115_000, byDate: '2026-11-14', exact: { coldestRoomC: 17.8, warmestRoomC: 23.9, plants: 'medium', outletHeightMm: 305, outletDistanceMm: 610 } },
      builds: [
        { id: 'a', name: 'Long and deep', why: 'The most water, so the steadiest. 12 to 20 small fish with room.', lines: [buy('tank-a'), buy('lid-a'), buy('filter-a'), buy('heater-150', 2), buy('light-a'), buy('thermometer'), buy('stand-a'), buy('gravel', 5), ...common] },
        { id: 'b', name: 'One box', why: 'The least money. Same length, less depth for planting.', lines: [buy('kit-b'), buy('light-a'), buy('stand-b'), buy('gravel', 4), ...common] },
        { id: 'c', name: 'Clear edges', why: 'The clearest view; 12 in shorter than you asked.', lines: [buy('tank-c'), buy('filter-c'), buy('heater-150'), buy('light-a'), buy('thermometer'), { id: 'own', answer: 'owned', slot: 'carry_tank', productId: null, description: 'your oak sideboard', quantity: 1, spec: null }, buy('gravel', 4), ...common] },
      ],
      suggestion: { buildId: 'a', reason: 'It meets every wish within the budget.' },
      standsUntil: '2026-10-31',
      note: change.note ?? 'The tank and the filter are on sale this week.',
    },
    products: sampleProducts,
    stores,
    prices: prices.filter((view) => view.productId !== change.withoutPriceOf),
    install,
    asOf: '2026-10-20',
  } // prettier-ignore
}

export const sampleQuote = (change: Parameters<typeof sampleInputs>[0] = {}): RevisionDocument =>
  revisionDocument(sampleInputs(change), {
    number: '2026-0147',
    revision: 1,
    issuedOn: '2026-10-20',
    standsUntil: '2026-10-31',
    advisor: 'Bram Ockley',
  })
