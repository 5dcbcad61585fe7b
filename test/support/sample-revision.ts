import type { Kind } from '../../core/catalog/kinds.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { SpecOf } from '../../core/catalog/spec.ts'
import type { Store } from '../../core/catalog/store.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { Build, BuildLine } from '../../core/quote/draft.ts'
import { emptyNeed } from '../../core/quote/empty-draft.ts'
import { gearOf } from '../../core/quote/gear.ts'
import { revisionDocument } from '../../core/quote/revision-document.ts'
import type { QuoteInputs, RevisionDocument } from '../../core/quote/revision.ts'
import { startupPlan } from '../../core/startup/startup-plan.ts'
import { METRIC, US } from '../../core/units/say.ts'
import { sampleReport } from './sample-report.ts'

const AS_OF = '2026-10-20'
const SEEN = '2026-10-14'

interface Row {
  product: Product
  priceMinor: number
  saleMinor: number | null
  storeId: string
}

function row<K extends Kind>(
  id: string,
  kind: K,
  name: string,
  spec: SpecOf[K],
  priceMinor: number,
  more: { saleMinor?: number; storeId?: string; parts?: Product['parts'] } = {},
): Row {
  const product = {
    id,
    kind,
    name,
    maker: null,
    gtin: null,
    oversize: kind === 'tank' || kind === 'stand',
    note: null,
    spec,
    parts: more.parts ?? [],
    archived: false,
    version: 1,
  }
  return { product: product as Product, priceMinor, saleMinor: more.saleMinor ?? null, storeId: more.storeId ?? 'kettle-lane' }
}

/** Goods with invented names, each seen once at one store. */
const CATALOG: Row[] = [
  row('tank-90', 'tank', 'Wendlemere 90, rimmed', { lengthMm: 914, widthMm: 457, heightMm: 457, glassMm: 8, style: 'rimmed' }, 18_999, {
    saleMinor: 16_499,
  }),
  row('tank-clear', 'tank', 'Wendlemere Clear 90', { lengthMm: 900, widthMm: 450, heightMm: 450, glassMm: 10, style: 'rimless' }, 34_999),
  row('tank-120', 'tank', 'Wendlemere 120, rimmed', { lengthMm: 1219, widthMm: 457, heightMm: 533, glassMm: 10, style: 'rimmed' }, 27_999),
  row('kit-tank', 'tank', 'Start tank 80', { lengthMm: 800, widthMm: 350, heightMm: 400, glassMm: 6, style: 'rimmed' }, 12_000),
  row('kit-filter', 'filter', 'hang-on filter, 700 L/h', { type: 'hang_on', ratedFlowLph: 700, powerW: 8 }, 4_000),
  row('kit-lid', 'lid', 'hinged lid with light', { cover: 'plastic' }, 4_000),
  row('kit-80', 'kit', 'Wendlemere Start 80 kit', {}, 27_999, {
    saleMinor: 24_999,
    parts: [
      { productId: 'kit-tank', quantity: 1 },
      { productId: 'kit-filter', quantity: 1 },
      { productId: 'kit-lid', quantity: 1 },
    ],
  }),
  row('lid', 'lid', 'Wendlemere lid 36 × 18', { cover: 'glass' }, 5_499),
  row('filter', 'filter', 'Pellick C-1200 canister', { type: 'canister', ratedFlowLph: 1200, powerW: 18, cordMm: 1800 }, 14_999, {
    saleMinor: 11_999,
    storeId: 'upriver',
  }),
  row('heater', 'heater', 'Torvane 75 W', { powerW: 75, cordMm: 1830 }, 2_699, { storeId: 'saltcote' }),
  row('light', 'light', 'Halden Row 36, 2,600 lm', { luminousFluxLm: 2600, powerW: 35 }, 11_999),
  row('thermometer', 'thermometer', 'Torvane thermometer', { type: 'glass' }, 949),
  row('stand', 'stand', 'Thornby Frame 36 × 18', { heightMm: 762 }, 24_565),
  row('mat', 'mat', 'Thornby mat 36 × 18', {}, 1_450),
  row('gravel', 'substrate', 'Millrace gravel, 20 lb', { type: 'gravel', packMassKg: 9.07 }, 1_749),
  row('conditioner', 'conditioner', 'Stillwell 500 mL', { packVolumeMl: 500, doseMlPerL: 0.1, bindsAmmonia: true }, 1_199),
  row('ammonia', 'ammonia_source', 'Stillwell ammonium chloride', { form: 'ammonium_chloride', strength: 1, packMassG: 50 }, 899, {
    storeId: 'upriver',
  }),
  row(
    'test-kit',
    'test_kit',
    'Lockridge five-test kit',
    { measuresAmmonia: true, measuresNitrite: true, measuresKh: true, lowestAmmoniaMgL: 0.25 },
    3_899,
    { saleMinor: 3_399 },
  ),
  row('strip', 'power', 'Corbelle protected strip', { outlets: 6, protective: true }, 4_250),
]

const store = (id: string, name: string, more: Partial<Store>): Store => ({
  id, name, kind: 'local', town: 'Tarnwick', country: 'US', subdivision: 'US-OH', timeZone: 'America/New_York', taxBasisPoints: 600, pricesIncludeTax: false, deliveryTaxed: false, delivery: { kind: 'pickup_only' }, returnDays: 30, note: null, archived: false, version: 1, ...more,
}) // prettier-ignore

const STORES: Store[] = [
  store('kettle-lane', 'Kettle Lane', { delivery: { kind: 'flat', feeMinor: 3_500, oversizeMinor: 0 } }),
  store('saltcote', 'Saltcote', {}),
  store('upriver', 'Upriver', {
    kind: 'online',
    delivery: { kind: 'free_over', feeMinor: 695, freeOverMinor: 5_000, oversizeMinor: 2_500 },
  }),
]

const viewOf = ({ product, priceMinor, saleMinor, storeId }: Row): PriceView => ({
  productId: product.id,
  storeId,
  regular: { priceMinor, seenOn: SEEN, age: 'current', from: 'shelf', sightingIds: [`s-${product.id}`] },
  today:
    saleMinor === null
      ? {
          priceMinor,
          condition: 'shelf',
          seenOn: SEEN,
          holdsUntil: null,
          lastDayStated: false,
          age: 'current',
          reporters: 2,
          sightingIds: [`s-${product.id}`],
        }
      : {
          priceMinor: saleMinor,
          condition: 'sale',
          seenOn: '2026-10-18',
          holdsUntil: '2026-10-31',
          lastDayStated: true,
          age: 'current',
          reporters: 1,
          sightingIds: [`t-${product.id}`],
        },
  best: { priceMinor: Math.round((saleMinor ?? priceMinor) * 0.9), seenOn: '2026-03-02', sightingId: `b-${product.id}` },
})

const buy = (id: string, productId: string, quantity = 1): BuildLine => ({
  id,
  answer: 'buy',
  productId,
  quantity,
  storeId: null,
  note: '',
})
const EVERY = ['light', 'thermometer', 'stand', 'conditioner', 'ammonia', 'test-kit', 'strip']

function builds(): Build[] {
  const rest = (letter: string) => [
    ...EVERY.map((id) => buy(`${letter}-${id}`, id)),
    buy(`${letter}-heater`, 'heater', 2),
    buy(`${letter}-gravel`, 'gravel', 4),
  ]
  return [
    {
      id: 'a',
      name: 'Clear edges',
      why: 'The clearest view, on the length you asked for.',
      lines: [buy('a-tank', 'tank-clear'), buy('a-lid', 'lid'), buy('a-filter', 'filter'), buy('a-mat', 'mat'), ...rest('a')],
    },
    {
      id: 'b',
      name: 'One box',
      why: 'The least money; shorter, and less depth for planting.',
      lines: [buy('b-kit', 'kit-80'), ...rest('b').filter((line) => line.answer !== 'buy' || line.productId !== 'light')],
    },
    {
      id: 'c',
      name: 'Plain and sturdy',
      why: 'The same water in a rimmed tank, cheaper to replace.',
      lines: [buy('c-tank', 'tank-90'), buy('c-lid', 'lid'), buy('c-filter', 'filter'), ...rest('c')],
    },
    {
      id: 'd',
      name: 'Long and deep',
      why: 'The most water, so the steadiest.',
      lines: [
        buy('d-tank', 'tank-120'),
        { id: 'd-lid', answer: 'not_needed', slot: 'cover', reason: 'the group does not jump' },
        { id: 'd-filter', answer: 'owned', slot: 'filter', productId: 'filter', description: '', quantity: 1, spec: null },
        ...rest('d'),
      ],
    },
  ]
}

export interface SampleOptions {
  builds?: 1 | 2 | 3 | 4
  units?: 'metric' | 'us'
  mode?: 'club' | 'store'
  /** Names as long as the validators let through. */
  longNames?: boolean
  /** The heater has no price anywhere, so no build has a total. */
  incomplete?: boolean
  /** Put in place of the title, a build's name and a product's name. */
  hostile?: string
}

/** Inputs of a quote with invented names, ready for `revisionDocument`. */
export function sampleInputs(options: SampleOptions = {}): QuoteInputs {
  const drawn = builds().slice(0, options.builds ?? 3)
  const first = drawn[0]
  if (first && options.hostile !== undefined) Object.assign(first, { name: options.hostile, why: options.hostile })
  if (options.longNames === true)
    for (const build of drawn)
      Object.assign(build, {
        name: `${build.name} with everything that was talked about at the counter`,
        why: `${build.why} It was put together with room for later changes, and every part may be had at two stores at least.`,
      })
  const products = CATALOG.map(({ product }) => ({
    ...product,
    name:
      options.hostile !== undefined && product.id === 'filter'
        ? options.hostile
        : options.longNames === true
          ? `${product.name}, second series with the longer cord and both adapters`
          : product.name,
  })) as Product[]
  return {
    draft: {
      title: options.hostile ?? `${['One tank', 'Two tanks', 'Three tanks', 'Four tanks'][drawn.length - 1] ?? 'Tanks'} of about 90 cm`,
      need: {
        ...emptyNeed(),
        lengthMm: 914,
        place: 'living room, north wall',
        budgetMinor: 115_000,
        byDate: '2026-11-14',
        exact: { coldestRoomC: 18, warmestRoomC: 24, disinfectant: 'chloramine', plants: 'low' },
      },
      builds: drawn,
      suggestion: { buildId: 'a', reason: 'It has the length you asked for and the least that can go wrong in a cool room.' },
      standsUntil: '2026-10-31',
      note: '',
    },
    products,
    stores: STORES,
    prices: CATALOG.filter(({ product }) => !(options.incomplete === true && product.id === 'heater')).map(viewOf),
    install: {
      name: 'Tarnwick Aquarium Club', mode: options.mode ?? 'club', currency: 'USD', country: 'US', timeZone: 'America/New_York', units: options.units === 'metric' ? METRIC : US, contact: 'the club, 555-0100', paper: 'a4', energyPriceMinor: 17, circuitVoltageV: 120, circuitCurrentA: 15,
    }, // prettier-ignore
    asOf: AS_OF,
  }
}

const WATER_L = [162, 92, 168, 238]

/** An issued document whose money comes from the rules and whose sizing is the hand-made sample, so that it stays as it is. */
export function sampleRevision(options: SampleOptions = {}): RevisionDocument {
  const inputs = sampleInputs(options)
  const made = revisionDocument(inputs, {
    number: '2026-0147',
    revision: 1,
    issuedOn: AS_OF,
    standsUntil: '2026-10-31',
    advisor: 'Bram Ockley',
  })
  const products = new Map(inputs.products.map((product) => [product.id, product]))
  return {
    ...made,
    builds: made.builds.map((build, index) => {
      const report = sampleReport(index, WATER_L[index] ?? 100)
      const draft = inputs.draft.builds[index]
      const gear = draft ? gearOf(draft, products) : null
      return {
        ...build,
        report,
        plan: gear ? startupPlan({ gear, conditions: made.conditions, report, install: inputs.install }) : build.plan,
      }
    }),
  }
}
