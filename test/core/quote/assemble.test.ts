import { describe, expect, it } from 'vitest'
import type { Product } from '../../../core/catalog/product.ts'
import type { Store } from '../../../core/catalog/store.ts'
import type { Install } from '../../../core/install.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import { emptyDraft, emptyNeed } from '../../../core/quote/empty-draft.ts'
import { gearOf } from '../../../core/quote/gear.ts'
import { issueFaults } from '../../../core/quote/issue-faults.ts'
import { openSlots, sayOpenSlots } from '../../../core/quote/open-slots.ts'
import { revisionDocument } from '../../../core/quote/revision-document.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'
import { QuoteDraftSchema } from '../../../core/quote/schema.ts'
import { METRIC } from '../../../core/units/say.ts'

const install: Install = {
  name: 'Tarnwick Aquarium Club', mode: 'club', currency: 'USD', country: 'US', timeZone: 'America/New_York', units: METRIC, contact: '555-0100', paper: 'a4',
  energyPriceMinor: 17, circuitVoltageV: 120, circuitCurrentA: 15,
} // prettier-ignore

const shared = { maker: null, gtin: null, oversize: false, note: null, archived: false, version: 1, parts: [] }
const tank: Product = {
  ...shared,
  id: 'tank',
  kind: 'tank',
  name: 'Wendlemere 90',
  spec: { lengthMm: 900, widthMm: 450, heightMm: 450, glassMm: 8, style: 'rimless' },
}
const heater: Product = { ...shared, id: 'heater', kind: 'heater', name: 'Torvane 100 W', spec: { powerW: 100 } }
const big: Product = { ...shared, id: 'big', kind: 'heater', name: 'Torvane 300 W', spec: { powerW: 300 } }
const kit: Product = { ...shared, id: 'kit', kind: 'kit', name: 'Wendlemere Start 90', spec: {}, parts: [{ productId: 'tank', quantity: 1 }, { productId: 'big', quantity: 1 }] } // prettier-ignore
const store: Store = {
  id: 'saltcote', name: 'Saltcote', kind: 'local', town: null, country: 'US', subdivision: null, timeZone: 'America/New_York', taxBasisPoints: 600, pricesIncludeTax: false,
  deliveryTaxed: false, delivery: { kind: 'pickup_only' }, returnDays: 30, note: null, archived: false, version: 1,
} // prettier-ignore
const view = (productId: string, priceMinor: number): PriceView => ({
  productId,
  storeId: 'saltcote',
  regular: { priceMinor, seenOn: '2026-10-01', age: 'current', from: 'shelf', sightingIds: ['s'] },
  today: {
    priceMinor,
    condition: 'shelf',
    seenOn: '2026-10-01',
    holdsUntil: null,
    lastDayStated: false,
    age: 'current',
    reporters: 1,
    sightingIds: ['s'],
  },
  best: { priceMinor, seenOn: '2026-10-01', sightingId: 's' },
})
const buy = (id: string, productId: string, quantity = 1): BuildLine => ({
  id,
  answer: 'buy',
  productId,
  quantity,
  storeId: null,
  note: '',
})

function inputsWith(
  lines: BuildLine[],
  prices: PriceView[] = [view('tank', 20000), view('heater', 2000), view('kit', 30000)],
): QuoteInputs {
  const draft = emptyDraft('a')
  draft.builds[0]!.lines = lines
  return { draft, products: [tank, heater, big, kit], stores: [store], prices, install, asOf: '2026-10-20' }
}
const rowsOf = (inputs: QuoteInputs, slot: string) => assembleBuild(inputs, 0).rows.filter((row) => row.slot === slot)

describe('a build put together', () => {
  it('answers every slot, and says what is still missing with its figure', () => {
    const build = assembleBuild(inputsWith([buy('1', 'tank')]), 0)
    expect(new Set(build.rows.map((row) => row.slot)).size).toBe(13)
    const heat = build.rows.find((row) => row.slot === 'heat')!
    expect(heat.answer).toBe('missing')
    expect(heat.needs).toMatch(/^needs 2 heaters of 100 W each$/)
  })

  it('takes a kit apart into the slots it fills', () => {
    const inputs = inputsWith([buy('1', 'kit')])
    expect(rowsOf(inputs, 'hold_water').map((row) => row.answer)).toEqual(['kit', 'in_kit'])
    expect(rowsOf(inputs, 'heat')).toMatchObject([{ answer: 'in_kit', text: 'Torvane 300 W' }])
  })

  it('sets a kit’s part aside where a line of its own fills the slot', () => {
    const inputs = inputsWith([buy('1', 'kit'), buy('2', 'heater', 2)])
    const products = new Map(inputs.products.map((product) => [product.id, product]))
    expect(gearOf(inputs.draft.builds[0]!, products).heaters.map((one) => [one.quantity, one.spec.powerW])).toEqual([[2, 100]])
    expect(rowsOf(inputs, 'heat').map((row) => row.text)).toEqual(['Torvane 300 W, in the kit, not used', '2 × Torvane 100 W'])
  })

  it('keeps a kit’s part beside a line that stands in addition to it', () => {
    const inputs = inputsWith([buy('1', 'kit'), { ...buy('2', 'heater', 2), besideKit: true } as BuildLine])
    const products = new Map(inputs.products.map((product) => [product.id, product]))
    expect(gearOf(inputs.draft.builds[0]!, products).heaters.map((one) => [one.quantity, one.spec.powerW])).toEqual([
      [1, 300],
      [2, 100],
    ])
    expect(rowsOf(inputs, 'heat').map((row) => row.text)).toEqual(['Torvane 300 W', '2 × Torvane 100 W'])
    // 300 W of the kit's heater and two of 100 W.
    expect(assembleBuild(inputs, 0).report.figures.heaterPowerW).toBe(500)
    expect(QuoteDraftSchema.shape.builds.safeParse(inputs.draft.builds).error?.issues.map((issue) => issue.path.join('.'))).not.toContain('0.lines.1.besideKit') // prettier-ignore
  })

  it('says which slots its total does not hold, and nothing of an empty one', () => {
    const build = assembleBuild(inputsWith([buy('1', 'tank'), buy('2', 'heater', 2)]), 0)
    expect(openSlots(build)).toEqual(expect.arrayContaining(['filter', 'carry_tank']))
    expect(openSlots(build)).not.toContain('heat')
    expect(sayOpenSlots(build)).toMatch(/^without .*filter, .*stand, .*: not chosen$/)
    expect(sayOpenSlots(assembleBuild(inputsWith([]), 0))).toBe('')
    expect(openSlots({ rows: build.rows.filter((row) => row.answer !== 'missing') })).toEqual([])
  })

  it('takes what is owned with the spec read off it', () => {
    const inputs = inputsWith([
      buy('1', 'tank'),
      { id: '2', answer: 'owned', slot: 'heat', productId: null, description: 'old heater', quantity: 1, spec: { powerW: 75 } },
    ])
    expect(rowsOf(inputs, 'heat')).toMatchObject([{ answer: 'owned', text: 'old heater' }])
    expect(assembleBuild(inputs, 0).report.figures.heaterPowerW).toBe(75)
  })

  it('adds up its lines with tax once a receipt', () => {
    const build = assembleBuild(inputsWith([buy('1', 'tank'), buy('2', 'heater', 2)]), 0)
    // 200.00 + 2 × 20.00 = 240.00; 6 % of it is 14.40.
    expect(build.cost.today).toMatchObject({ complete: true, goodsMinor: 24000, taxMinor: 1440, totalMinor: 25440 })
  })

  it('never totals a build in which a line has no price', () => {
    const build = assembleBuild(inputsWith([buy('1', 'tank'), buy('2', 'heater')], [view('tank', 20000)]), 0)
    expect(build.cost.today).toMatchObject({ complete: false, missing: [{ lineId: '2', why: 'no_price' }] })
  })

  it('keeps a line whose product is gone in sight', () => {
    expect(rowsOf(inputsWith([buy('1', 'gone')]), 'hold_water')[0]).toMatchObject({
      answer: 'missing',
      text: 'a product that is no longer in the catalog',
    })
  })
})

describe('conditions', () => {
  it('marks every default that nobody stated as assumed', () => {
    const resolved = resolveConditions({ ...emptyNeed(), exact: { coldestRoomC: 15 } }, install)
    expect(resolved.coldestRoomC).toBe(15)
    expect(resolved.assumed).toContain('warmestRoomC')
    expect(resolved.assumed).not.toContain('coldestRoomC')
    expect(resolved.assumed).not.toContain('circuitVoltageV')
  })
})

describe('a revision', () => {
  it('freezes figures that come out again from its own inputs', () => {
    const inputs = inputsWith([buy('1', 'tank'), buy('2', 'heater', 2)])
    const heading = { number: '2026-0001', revision: 1, issuedOn: '2026-10-20', standsUntil: '2026-10-31', advisor: 'Bram Ockley' }
    const document = revisionDocument(inputs, heading)
    expect(revisionDocument(structuredClone(document.inputs), heading)).toEqual(document)
    expect(document.notIncluded).toContain('Filter (not chosen in A)')
    expect(document.cautions).toHaveLength(8)
  })
})

const heading = { number: '2026-0001', revision: 1, issuedOn: '2026-10-20', standsUntil: '2026-10-31', advisor: 'Bram Ockley' }

describe('what a slot requires', () => {
  const product = (spec: Partial<Extract<Product, { kind: 'tank' }>['spec']>): Product => ({ ...tank, spec: { ...tank.spec, ...spec } })
  const rowOf = (inputs: QuoteInputs, slot: string) => rowsOf(inputs, slot)[0]!

  it('beds every tank with a flat bottom, the braced one too', () => {
    const of = (style: 'rimmed' | 'rimless' | 'braced') => {
      const inputs = inputsWith([buy('1', 'tank')])
      return rowOf({ ...inputs, products: [product({ style }), heater, big, kit] }, 'bed_glass')
    }
    expect(of('braced')).toMatchObject({ answer: 'missing', required: true })
    expect(of('rimless')).toMatchObject({ answer: 'missing', required: true })
    expect(of('rimmed')).toMatchObject({ answer: 'not_needed', text: 'rimmed tank: stands on its frame' })
  })

  it('asks for heat wherever the engine does, and only there', () => {
    for (const livestockId of ['goldfish-fancy', 'small-tropical', 'warm-cichlids'])
      for (const coldestRoomC of [15, 18, 24, 28]) {
        const inputs = inputsWith([buy('1', 'tank')])
        inputs.draft.need = { ...inputs.draft.need, livestockId, exact: { coldestRoomC, warmestRoomC: 30 } }
        const holds = assembleBuild(inputs, 0).report.findings.find((finding) => finding.check === 'heater_holds')
        expect(rowOf(inputs, 'heat').answer, `${livestockId} at ${coldestRoomC}`).toBe(holds?.verdict === 'fits' ? 'not_needed' : 'missing')
      }
  })

  it('draws no bed where substrate is not needed', () => {
    const bare = inputsWith([buy('1', 'tank'), { id: '2', answer: 'not_needed', slot: 'substrate', reason: 'bare bottom' }])
    expect(assembleBuild(bare, 0).drawing?.substrateDepthMm).toBe(0)
  })

  it('calls an owned thing that nobody described the customer’s own', () => {
    const inputs = inputsWith([
      { id: '1', answer: 'owned', slot: 'heat', productId: null, description: '', quantity: 1, spec: { powerW: 75 } },
    ])
    expect(gearOf(inputs.draft.builds[0]!, new Map()).heaters[0]?.name).toBe('your own heater')
  })

  it('keeps the tank of a kit that is owned', () => {
    const inputs = inputsWith([
      { id: '1', answer: 'owned', slot: 'hold_water', productId: 'kit', description: '', quantity: 1, spec: null },
    ])
    const products = new Map(inputs.products.map((one) => [one.id, one]))
    expect(gearOf(inputs.draft.builds[0]!, products).tank?.name).toBe('Wendlemere 90')
    expect(rowsOf(inputs, 'hold_water').map((row) => row.answer)).toEqual(['owned', 'owned'])
    expect(revisionDocument({ ...inputs }, heading).included).not.toContain('Tank')
  })
})

describe('what an issue says and asks', () => {
  it('tells what is the customer’s own apart from what is included', () => {
    const inputs = inputsWith([
      buy('1', 'tank'),
      { id: '2', answer: 'owned', slot: 'heat', productId: null, description: 'old heater', quantity: 1, spec: { powerW: 75 } },
    ])
    const document = revisionDocument(inputs, heading)
    expect(document.included).not.toContain('Heater')
    expect(document.notIncluded).toContain('Heater (your own in A)')
  })

  it('names the builds that bring what others leave out', () => {
    const inputs = inputsWith([buy('1', 'tank'), buy('2', 'heater')])
    const [build] = inputs.draft.builds
    const bare = { ...build!, id: 'b', lines: [buy('3', 'tank')] }
    const { included, notIncluded } = revisionDocument({ ...inputs, draft: { ...inputs.draft, builds: [build!, bare] } }, heading)
    expect(included).toEqual(expect.arrayContaining(['Tank', 'Heater (in A)']))
    expect(notIncluded).toContain('Heater (not chosen in B)')
  })

  it('tells a lost product from a slot that nobody filled', () => {
    expect(revisionDocument(inputsWith([buy('1', 'gone')]), heading).notIncluded).toContain('Tank (no longer in the catalog in A)')
  })

  it('wants a reason for a suggestion', () => {
    const inputs = inputsWith([buy('1', 'tank')])
    const draft = { ...inputs.draft, title: 'A tank', standsUntil: '2026-10-31', suggestion: { buildId: 'a', reason: ' ' } }
    expect(issueFaults({ ...inputs, draft }, '2026-10-20').map((fault) => fault.field)).toEqual(['suggestion.reason'])
    expect(issueFaults({ ...inputs, draft: { ...draft, suggestion: { buildId: 'a', reason: 'the steadiest' } } }, '2026-10-20')).toEqual([])
  })
})
