import { fc, it as prop } from '@fast-check/vitest'
import { describe, expect } from 'vitest'
import { KINDS } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { DeliveryRule, Store } from '../../../core/catalog/store.ts'
import type { Field } from '../../../core/fields.ts'
import { MOST_MINOR } from '../../../core/money.ts'
import { draftOf, limitsOf, readDraft } from '../../../web/app/catalog/product-draft.ts'
import { readKept, readMoney, spellFigure, spellMoney, type FigureLimits } from '../../../web/app/parts/figure.ts'
import { leaveEntry, openEntry, typeEntry } from '../../../web/app/parts/typed-entry.ts'
import { EXACT_FIELDS } from '../../../web/app/quotes/exact-fields.ts'
import { readSize, spellSize } from '../../../web/app/quotes/size-answer.ts'
import { draftOfStore, readStoreDraft } from '../../../web/app/stores/store-draft.ts'
import { anyReader } from '../../support/readers.ts'

const product: Product = {
  id: '01980000-0000-7000-8000-000000000001', kind: 'heater', name: 'Torvane', maker: null, gtin: null, oversize: false, note: null, spec: {}, parts: [], archived: false, version: 1,
} // prettier-ignore
const noName = (): string => ''

/** Any value a field holds: up to its last digit, as an import or another reader may have stored it. */
const anyValue = (field: Field): fc.Arbitrary<number | boolean | string> => {
  if (field.type === 'flag') return fc.boolean()
  if (field.type === 'choice') return fc.constantFrom(...field.options.map((option) => option.value))
  if (field.type === 'whole') return fc.integer({ min: field.min, max: field.max })
  return fc.double({ min: field.min, max: field.max, noNaN: true })
}
const anySpec = (fields: readonly Field[]) =>
  fc.record(Object.fromEntries(fields.map((field) => [field.key, anyValue(field)])), {
    requiredKeys: fields.filter((field) => field.required).map((field) => field.key),
  })

/** A figure's field that is opened, has a key typed and taken back, and is left. */
function retyped(stored: number, limits: FigureLimits, reader: Parameters<typeof readKept>[3]) {
  const spell = (value: number | null): string => spellFigure(value, limits, reader)
  const typed = typeEntry(typeEntry(openEntry(stored, spell), `${spell(stored)}7`), spell(stored))
  return leaveEntry(typed, (text) => readKept(text, stored, limits, reader), spell).reading
}

describe('a form that is opened and saved as it was', () => {
  prop.prop([anyReader, fc.constantFrom(...KINDS).chain((kind) => fc.tuple(fc.constant(kind), anySpec(SPEC_FIELDS[kind])))])(
    'stores the very same figures of a product of any kind',
    (reader, [kind, spec]) => {
      const stored = { ...product, kind, spec } as unknown as Product
      const draft = draftOf(stored, noName, reader)
      const { body, faults } = readDraft(draft, reader, { product: stored, draft })
      expect(faults).toEqual({})
      expect(body.spec).toEqual(spec)
    },
  )

  const figures = [
    ...EXACT_FIELDS.flatMap((field) =>
      field.type === 'quantity' ? [{ label: field.label, unit: field.unit, min: field.least, max: field.most }] : [],
    ),
    ...KINDS.flatMap((kind) => SPEC_FIELDS[kind].flatMap((field) => (field.type === 'number' ? [limitsOf(field)] : []))),
  ]
  prop.prop([
    anyReader,
    fc
      .constantFrom(...figures)
      .chain((limits) => fc.tuple(fc.constant(limits), fc.double({ min: limits.min ?? 0, max: limits.max ?? 1, noNaN: true }))),
  ])('keeps a figure of a need or a spec that was typed over with itself, at its limits too', (reader, [limits, stored]) => {
    expect(retyped(stored, limits, reader)).toEqual({ value: stored, fault: null })
    for (const limit of [limits.min ?? 0, limits.max ?? 1]) expect(retyped(limit, limits, reader)).toEqual({ value: limit, fault: null })
  })

  prop.prop([anyReader, fc.constantFrom(...figures)])('takes the limit that it tells, typed as it is told', (reader, limits) => {
    for (const beyond of [(limits.min ?? 0) - 1e3, (limits.max ?? 1) * 2 + 1e3]) {
      const said = /The (?:least|most) is ([\d.,\u2212-]+)/.exec(
        readKept(spellFigure(beyond, limits, reader), null, limits, reader).fault ?? '',
      )?.[1]
      if (said === undefined) throw new Error(`${limits.label} lets ${beyond} pass`)
      expect(readKept(said.replace(/\.$/, ''), null, limits, reader).fault).toBeNull()
    }
  })

  prop.prop([anyReader, fc.double({ min: 100, max: 4000, noNaN: true })])(
    'keeps a length that was wished for, within a millimetre where it is typed anew',
    (reader, lengthMm) => {
      const read = readSize(spellSize({ lengthMm, commonSizeId: null }, reader).replace(/\u00a0/g, ''), reader)
      expect(Math.abs((read.size?.lengthMm ?? lengthMm) - lengthMm)).toBeLessThanOrEqual(1.35)
    },
  )

  const amount = fc.integer({ min: 0, max: MOST_MINOR })
  const anyDelivery: fc.Arbitrary<DeliveryRule> = fc.oneof(
    fc.constant({ kind: 'pickup_only' } as const),
    fc.record({ kind: fc.constant('flat' as const), feeMinor: amount, oversizeMinor: amount }),
    // What a store can hold: no amount above the largest, and never free from less than the fee.
    fc.tuple(amount, fc.integer({ min: 1, max: MOST_MINOR }), amount).map(([one, other, oversizeMinor]) => ({
      kind: 'free_over' as const,
      feeMinor: Math.min(one, other),
      freeOverMinor: Math.max(one, other),
      oversizeMinor,
    })),
  )
  prop.prop([
    anyReader,
    fc.constantFrom('USD', 'JPY', 'KWD'),
    anyDelivery,
    fc.integer({ min: 0, max: 300_000 }),
    fc.integer({ min: 0, max: 3650 }),
  ])('stores the very same tax, fees and days of a store', (reader, currency, delivery, hundredths, returnDays) => {
    const store = {
        id: product.id, version: 1, name: 'Saltcote', kind: 'local', town: null, country: 'US', subdivision: null, timeZone: 'America/Detroit', taxBasisPoints: hundredths / 100,
        pricesIncludeTax: false, deliveryTaxed: true, delivery, returnDays, note: null, archived: false,
      } as unknown as Store // prettier-ignore
    const { body, faults } = readStoreDraft(draftOfStore(store, currency, reader), currency, reader)
    expect(faults).toEqual({})
    expect([body.taxBasisPoints, body.delivery, body.returnDays]).toEqual([store.taxBasisPoints, delivery, returnDays])
  })

  prop.prop([anyReader, fc.constantFrom('USD', 'JPY', 'KWD'), amount])('stores the very same price', (reader, currency, minor) => {
    expect(readMoney(spellMoney(minor, currency, reader.decimal), currency, 'Price', 0, reader.decimal).value).toBe(minor)
  })
})
