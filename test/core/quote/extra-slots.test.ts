import { describe, expect, it } from 'vitest'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { gearOf } from '../../../core/quote/gear.ts'
import { openSlots } from '../../../core/quote/open-slots.ts'
import { revisionDocument } from '../../../core/quote/revision-document.ts'
import { QuoteDraftSchema } from '../../../core/quote/schema.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { productOf, sampleInputs, sampleTank } from './sample-inputs.ts'

const chiller = productOf('chiller', 'Torvane Cooler', { powerW: 110, coolingW: 200, ratedVolumeL: 150, cordMm: 1800 })
const drift = productOf('circulation_pump', 'Pellick Drift', { powerW: 4 })
const ferment = productOf('co2', 'Lumbry Ferment', { type: 'fermenting' })
const gas = productOf('co2', 'Lumbry Gas', { type: 'pressurised', solenoid: true })
const salt = productOf('salt_mix', 'Stillwell Sea', { packMassKg: 10, gramsPerL: 38 })
const fern = productOf('plant', 'Java fern', { light: 'low' })

const built = (products: Product[], livestockId = 'small-tropical') => assembleBuild(sampleInputs(products, { livestockId }), 0)
const slotsOf = (products: Product[], livestockId?: string) => new Set(built(products, livestockId).rows.map((row) => row.slot))
const gearWith = (products: Product[]) => {
  const inputs = sampleInputs(products)
  return gearOf(inputs.draft.builds[0]!, new Map(products.map((product) => [product.id, product])))
}

describe('what a build may have besides', () => {
  it('has a row only where it is chosen', () => {
    expect(slotsOf([sampleTank]).has('cool')).toBe(false)
    expect(built([sampleTank, chiller]).rows.filter(({ slot }) => slot === 'cool')).toMatchObject([
      { answer: 'buy', text: 'Torvane Cooler' },
    ])
  })
  it('is asked for by salt water: salt and something to measure it with', () => {
    expect(openSlots(built([sampleTank]))).not.toContain('salt')
    expect(openSlots(built([sampleTank], 'marine-fish'))).toEqual(expect.arrayContaining(['salt', 'read_salinity']))
    expect(openSlots(built([sampleTank, salt], 'marine-fish'))).not.toContain('salt')
  })
  it('reaches the checks with what they read, and nothing else of it', () => {
    expect(gearWith([sampleTank, chiller, drift]).appliances).toEqual([
      { kind: 'chiller', name: 'Torvane Cooler', quantity: 1, spec: { powerW: 110, cordMm: 1800, coolingW: 200 } },
      { kind: 'circulation_pump', name: 'Pellick Drift', quantity: 1, spec: { powerW: 4 } },
    ])
  })
  it('counts its sumps: alike ones by number, unlike ones by the mean of their litres, none of which is lost', () => {
    const [small, large, bare] = [{ totalVolumeL: 40, operatingVolumeL: 20 }, { totalVolumeL: 80, operatingVolumeL: 30 }, {}].map(
      (spec, at) => productOf('sump', `Osmere ${at}`, spec),
    ) as [Product, Product, Product]
    const alike = productOf('sump', 'Osmere 40', small.spec)
    expect(gearWith([sampleTank, small, alike]).sump).toMatchObject({ quantity: 2, spec: small.spec })
    expect(gearWith([sampleTank, small, large]).sump).toMatchObject({ quantity: 2, spec: { totalVolumeL: 60, operatingVolumeL: 25 } })
    expect(gearWith([sampleTank, small, bare]).sump).toMatchObject({ quantity: 2, spec: {} })
  })
  it('is plugged in nowhere where it is a fermenting mix, and is where a valve needs power', () => {
    expect(gearWith([sampleTank, ferment]).appliances).toBeUndefined()
    expect(gearWith([sampleTank, gas]).appliances).toMatchObject([{ kind: 'co2' }])
  })
  it('may be owned, with the spec of its own kind', () => {
    const { draft } = sampleInputs([sampleTank])
    const owned = (spec: object) => ({
      ...draft,
      builds: [{ ...draft.builds[0]!, lines: [{ id: 'o', answer: 'owned', slot: 'aerate', productId: null, description: 'my air pump', quantity: 1, spec }] }],
    }) // prettier-ignore
    expect(QuoteDraftSchema.safeParse(owned({ airFlowLph: 100 })).error).toBeUndefined()
    expect(QuoteDraftSchema.safeParse(owned({ luminousFluxLm: 100 })).success).toBe(false)
  })
})

describe('page one', () => {
  const heading = { number: '1', revision: 1, issuedOn: '2026-11-01', standsUntil: '2026-11-15', advisor: 'Bram' }
  it('says that animals, plants and food are not in it, unless they are', () => {
    const plain = revisionDocument(sampleInputs([sampleTank]), heading)
    expect(plain.notIncluded).toContain('Animals, plants and food')
    const planted = revisionDocument(sampleInputs([sampleTank, fern]), heading)
    expect(planted.included).toContain('Plants')
    expect(planted.notIncluded).toContain('Animals and food')
    expect(planted.notIncluded).not.toContain('Animals, plants and food')
  })
})

describe('the first fill with salt water', () => {
  const saltAmount = (products: Product[]) => {
    const build = built(products, 'marine-fish')
    const amount = build.plan.steps.find(({ id }) => id === 'mix-salt')?.amounts.find(({ label }) => label === 'Salt')
    return { said: amount === undefined ? '' : sayPhrase(amount.value, METRIC), litres: build.report.figures.waterVolumeL ?? 0 }
  }
  it('takes the grams for a litre that the label states', () => {
    const { said, litres } = saltAmount([sampleTank, salt])
    expect(said).toBe(`${((litres * 38) / 1000).toFixed(1)} kg of Stillwell Sea, to salinity 35`)
  })
  it('gives the usual range where no mix is chosen', () => {
    expect(saltAmount([sampleTank]).said).toMatch(/^by its label, usually \d+\.\d kg to \d+\.\d kg for this much/)
  })
})
