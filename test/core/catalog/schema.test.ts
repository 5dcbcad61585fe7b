import { describe, expect, it } from 'vitest'
import type * as z from 'zod'
import { ProductInput, StoreInput } from '../../../core/catalog/schema.ts'

const faults = (schema: z.ZodType, body: unknown) => {
  const read = schema.safeParse(body)
  return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
}
const tank = { kind: 'tank', name: 'Halden 90', spec: { lengthMm: 900, widthMm: 450, heightMm: 450 } }
const store = {
  name: 'Saltcote',
  kind: 'local',
  country: 'US',
  timeZone: 'America/New_York',
  taxBasisPoints: 600,
  pricesIncludeTax: false,
  deliveryTaxed: false,
  delivery: { kind: 'free_over', feeMinor: 990, freeOverMinor: 7500, oversizeMinor: 0 },
}

describe('a product', () => {
  it('is taken with what is known; the rest is not guessed', () => {
    expect(ProductInput.parse(tank)).toEqual({ ...tank, maker: null, gtin: null, oversize: false, note: null, parts: [], archived: false })
  })

  it('of 5 mm is refused with limit and fix', () => {
    expect(faults(ProductInput, { ...tank, spec: { ...tank.spec, lengthMm: 5 } })).toEqual([
      'spec.lengthMm: Length is 5 mm. For a tank it is between 100 and 4000 mm. Was it in inches?',
    ])
  })

  it('of 40 000 W is refused with limit and fix', () => {
    expect(faults(ProductInput, { kind: 'heater', name: 'Torvane', spec: { powerW: 40_000 } })).toEqual([
      'spec.powerW: Power is 40000 W. For a heater it is between 5 and 1000 W. Check the figure and its unit.',
    ])
  })

  it.each([
    [{ ...tank, spec: { lengthMm: 900, widthMm: 450 } }, 'spec.heightMm: Height is missing. It is needed here.'],
    [{ ...tank, spec: { ...tank.spec, watts: 5 } }, 'spec: Spec has no field "watts". Check the spelling, or leave it out.'],
    [{ ...tank, version: 3 }, ': Product has no field "version". Check the spelling, or leave it out.'],
    [{ ...tank, name: '   ' }, 'name: Name is empty. Fill it in.'],
    [{ ...tank, name: 'x'.repeat(121) }, 'name: Name has 121 characters. At most 120 fit.'],
    [{ ...tank, name: 'a\u0000b' }, 'name: Name has a control character or half of a character. Type it again without it.'],
    [{ ...tank, name: 'a\ud800' }, 'name: Name has a control character or half of a character. Type it again without it.'],
    [{ ...tank, spec: { ...tank.spec, heightMm: '450' } }, 'spec.heightMm: Height is a plain number of mm, without letters.'],
    [
      { ...tank, parts: [{ productId: '0198c0de-1111-7222-8333-444455556666', quantity: 1 }] },
      'parts: Only a kit has parts. Leave them out, or choose the kind kit.',
    ],
    [
      { kind: 'kit', name: 'Set', spec: {}, parts: [{ productId: 'x', quantity: 0 }] },
      'parts.0.productId: Part is not an id of ours, like 0198c0de-….',
    ],
  ])('%# is refused in words', (body, message) => {
    expect(faults(ProductInput, body)).toContain(message)
  })

  it.each([
    [{ shape: 'cylinder' }, 'spec.widthMm: A cylinder or a quarter round is as deep as it is long.'],
    [{ shape: 'bow_front', bowMm: 460 }, 'spec.bowMm: Bow is at most 405 mm for this length and depth'],
    [{ shape: 'corner_cut', endMm: 450 }, 'spec.endMm: Depth of the ends is at most 405 mm for this length and depth'],
  ])('of an impossible shape is told the field and the fix: %o', (shape, message) => {
    expect(faults(ProductInput, { ...tank, spec: { ...tank.spec, ...shape } })).toEqual([expect.stringContaining(message)])
    expect(faults(ProductInput, { ...tank, spec: { ...tank.spec, widthMm: 900, shape: shape.shape } })).toEqual([])
  })

  it('of an unknown kind is told the kinds', () => {
    expect(faults(ProductInput, { ...tank, kind: 'toaster' })[0]).toMatch(/^kind: Kind is one of: tank, kit,/)
  })

  it('does not let a body reach an object’s prototype', () => {
    expect(
      faults(
        ProductInput,
        JSON.parse('{"kind":"tank","name":"x","spec":{"lengthMm":900,"widthMm":450,"heightMm":450,"__proto__":{"polluted":1}}}'),
      ),
    ).not.toEqual([])
    expect(({} as { polluted?: number }).polluted).toBeUndefined()
  })

  it('keeps a barcode without its spaces, and refuses a wrong one', () => {
    expect(ProductInput.parse({ ...tank, gtin: '6 291041-500213' }).gtin).toBe('6291041500213')
    expect(faults(ProductInput, { ...tank, gtin: '6291041500214' })[0]).toContain('the last one checks the others')
  })
})

describe('a store', () => {
  it('is taken', () => {
    expect(StoreInput.parse(store)).toEqual({ ...store, town: null, subdivision: null, returnDays: null, note: null, archived: false })
  })

  it.each([
    [{ ...store, taxBasisPoints: 6000 }, 'taxBasisPoints: Tax is at most 3000 (30 %). It is in hundredths of a per cent: 600 for 6 %.'],
    [
      { ...store, taxBasisPoints: 887.505 },
      'taxBasisPoints: Tax has at most 4 decimals as a per cent, 2 in hundredths of it: 887.5 for 8.875 %.',
    ],
    [{ ...store, taxBasisPoints: '600' }, 'taxBasisPoints: Tax is a number of hundredths of a per cent: 600 for 6 %, 887.5 for 8.875 %.'],
    [{ ...store, country: 'usa' }, 'country: Country is two capital letters, like US or DE.'],
    [{ ...store, timeZone: 'Mars/Olympus' }, 'timeZone: Time zone is not known. Write it like Europe/Berlin or America/New_York.'],
    [{ ...store, delivery: { kind: 'drone' } }, 'delivery.kind: Delivery is one of: pickup_only, flat, free_over.'],
    [{ ...store, delivery: { kind: 'flat', feeMinor: -1, oversizeMinor: 0 } }, 'delivery.feeMinor: Delivery fee is -1. It is not below 0.'],
    [
      { ...store, delivery: { kind: 'flat', feeMinor: 9.9, oversizeMinor: 0 } },
      'delivery.feeMinor: Delivery fee is a whole number of minor units: 15900 for 159.00.',
    ],
  ])('%# is refused in words', (body, message) => {
    expect(faults(StoreInput, body)).toContain(message)
  })
})
