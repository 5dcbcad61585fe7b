import { describe, expect, it } from 'vitest'
import { KINDS } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { ProductInput } from '../../../core/catalog/schema.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { mergeProduct } from '../../../web/app/catalog/merge-product.ts'
import { draftOf, emptyProduct, limitsOf, readDraft } from '../../../web/app/catalog/product-draft.ts'
import { specWords } from '../../../web/app/catalog/spec-words.ts'
import { spellFigure } from '../../../web/app/parts/figure.ts'

const heater: Product = {
  id: '01980000-0000-7000-8000-000000000001', kind: 'heater', name: 'Torvane 150 W', maker: 'Torvane', gtin: null, oversize: false, note: null,
  spec: { powerW: 150, adjustable: true, externalController: false, lengthMm: 301.7 }, parts: [], archived: false, version: 4,
} // prettier-ignore
const noName = (): string => ''

describe('the form of a product', () => {
  it.each(KINDS)('sends what the server accepts for the kind %s, every field at its most', (kind) => {
    const draft = emptyProduct(kind)
    const spec = Object.fromEntries(
      SPEC_FIELDS[kind].map((field) => {
        if (field.type === 'flag') return [field.key, 'no']
        if (field.type === 'choice') return [field.key, field.options[0]?.value ?? '']
        return [field.key, spellFigure(field.max, limitsOf(field), METRIC)]
      }),
    )
    const { body, faults } = readDraft({ ...draft, name: 'Halden thing', spec }, METRIC)
    expect(faults).toEqual({})
    const parsed = ProductInput.safeParse(body)
    expect(parsed.error?.issues ?? []).toEqual([])
  })
  it('leaves out what nobody entered: it stays unknown', () => {
    const { body, faults } = readDraft({ ...emptyProduct('heater'), name: 'Torvane' }, US)
    expect(body.spec).toEqual({})
    expect(faults).toEqual({})
  })
  it('asks for what a tank cannot do without', () => {
    expect(Object.keys(readDraft(emptyProduct('tank'), US).faults).toSorted()).toEqual([
      'name',
      'spec.heightMm',
      'spec.lengthMm',
      'spec.widthMm',
    ])
  })
  it('keeps the stored digits of a figure that was not touched', () => {
    const stored = { product: heater, draft: draftOf(heater, noName, US) }
    const { body } = readDraft({ ...stored.draft, spec: { ...stored.draft.spec, powerW: '200' } }, US, stored)
    expect(body.spec).toEqual({ powerW: 200, adjustable: true, externalController: false, lengthMm: 301.7 })
  })
  it('carries the product’s own warranty in whole months, empty for not stated, and keeps it when nothing is touched', () => {
    const months = (typed: string) => readDraft({ ...emptyProduct('heater'), name: 'Torvane', warrantyMonths: typed }, US)
    expect([months('24').body.warrantyMonths, months('0').body.warrantyMonths, months(' ').body.warrantyMonths]).toEqual([24, 0, null])
    for (const wrong of ['601', '2.5', 'two years', '-1']) expect(months(wrong).faults['warrantyMonths'], wrong).toBeTruthy()
    const product = { ...heater, warrantyMonths: 36 }
    const stored = { product, draft: draftOf(product, noName, US) }
    expect(readDraft(stored.draft, US, stored).body.warrantyMonths).toBe(36)
    const { draft } = mergeProduct(stored.draft, { ...stored.draft, note: 'short' }, { ...stored.draft, warrantyMonths: '12' })
    expect([draft.warrantyMonths, draft.note]).toEqual(['12', 'short'])
  })
  it('takes "no" for an answer and an empty choice for none', () => {
    const stored = draftOf(heater, noName, US)
    expect(stored.spec['externalController']).toBe('no')
    expect(readDraft({ ...stored, spec: { ...stored.spec, externalController: '' } }, US).body.spec).not.toHaveProperty(
      'externalController',
    )
  })
  it('reads a conditioner’s dose and an ammonia source’s strength as their labels print them', () => {
    const dose = readDraft({ ...emptyProduct('conditioner'), name: 'Stillwell', spec: { doseMlPerL: '5 mL per 10 gal' } }, US)
    expect(dose.faults).toEqual({})
    // 5 mL in 37.85411784 L, to the six decimals that are kept.
    expect(dose.body.spec).toEqual({ doseMlPerL: 0.132086 })
    const strength = readDraft({ ...emptyProduct('ammonia_source'), name: 'Stillwell', spec: { strength: '10 %' } }, US)
    expect(strength).toMatchObject({ faults: {}, body: { spec: { strength: 0.1 } } })
  })
  it('sends parts only of a kit', () => {
    const parts = [{ productId: 'x', quantity: 2, name: 'Torvane' }]
    expect(readDraft({ ...emptyProduct('kit'), parts }, US).body.parts).toEqual([{ productId: 'x', quantity: 2 }])
    expect(readDraft({ ...emptyProduct('mat'), parts }, US).body.parts).toEqual([])
  })
  it('says what the maker states in the order of the form', () => {
    expect(specWords(heater, METRIC, {})).toEqual(['power 150 W', 'adjustable: yes', 'external controller: no', 'length 30.2 cm'])
  })
})

describe('two people at one product', () => {
  const base = draftOf(heater, noName, US)
  it('keep both changes where they touched different fields', () => {
    const { draft, clashes } = mergeProduct(base, { ...base, spec: { ...base.spec, powerW: '200' } }, { ...base, maker: 'Torvane Works' })
    expect([draft.spec['powerW'], draft.maker, clashes]).toEqual(['200', 'Torvane Works', []])
  })
  it('keep what was typed here, and say so, where they touched the same field', () => {
    const { draft, clashes } = mergeProduct(
      base,
      { ...base, spec: { ...base.spec, powerW: '200' } },
      { ...base, spec: { ...base.spec, powerW: '175' } },
    )
    expect(draft.spec['powerW']).toBe('200')
    expect(clashes).toEqual([{ label: 'Power', mine: '200', theirs: '175' }])
  })
})
