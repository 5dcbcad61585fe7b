import { fc, test as property } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { KINDS } from '../../../core/catalog/kinds.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import { parseSpecFilter, spellSpecFilter, withTest, type SpecTest } from '../../../core/catalog/spec-filter.ts'

const read = (kind: Parameters<typeof parseSpecFilter>[0], text: string) => parseSpecFilter(kind, text)

describe('a filter by what is stated', () => {
  it('has ranges, words and yes or no', () => {
    expect(read('heater', 'powerW:100..,adjustable:yes')).toEqual({
      ok: true,
      value: [
        { key: 'powerW', least: 100, most: null },
        { key: 'adjustable', is: true },
      ],
    })
    expect(read('tank', 'lengthMm:800..1000, style:rimless')).toEqual({
      ok: true,
      value: [
        { key: 'lengthMm', least: 800, most: 1000 },
        { key: 'style', is: 'rimless' },
      ],
    })
    expect(read(undefined, '')).toEqual({ ok: true, value: [] })
  })

  it.each([
    [undefined, 'powerW:1..', 'no_kind', /Say the kind/],
    ['heater', 'lumens:1..', 'unknown_field', /"lumens" is nothing that a heater states. It states: powerW, /],
    ['heater', 'powerW:100', 'not_a_value', /Power is a range, like powerW:5\.\.1000/],
    ['heater', 'powerW:..', 'not_a_value', /one end may be left out/],
    ['heater', 'powerW:1e3..', 'not_a_value', /a range/],
    ['heater', 'powerW:1..2..3', 'not_a_value', /a range/],
    ['heater', 'powerW:100000..', 'out_of_range', /between 5 and 1000 W/],
    ['heater', 'powerW:200..100', 'turned_round', /Swap them/],
    ['heater', 'adjustable:true', 'not_a_value', /yes or no/],
    ['heater', 'adjustable:constructor', 'not_a_value', /yes or no/],
    ['heater', 'adjustable:toString', 'not_a_value', /yes or no/],
    ['filter', 'type:box', 'not_a_value', /is one of: canister, hang_on/],
    ['heater', 'powerW:100..,powerW:..200', 'twice', /Name it once/],
    ['heater', '__proto__:1..', 'unknown_field', /nothing that a heater states/],
  ] as const)('%s "%s" is refused with %s and words that say what to do', (kind, text, code, words) => {
    const refused = read(kind, text)
    expect(refused).toMatchObject({ ok: false, refusal: { code } })
    expect(refused.ok ? '' : refused.refusal.words).toMatch(words)
  })

  const anyTest = fc.constantFrom(...KINDS).chain((kind) =>
    fc.tuple(
      fc.constant(kind),
      fc.subarray([...SPEC_FIELDS[kind]]).chain((fields) =>
        fc.tuple(
          ...fields.map((field): fc.Arbitrary<SpecTest> => {
            if (field.type === 'flag') return fc.boolean().map((is) => ({ key: field.key, is }))
            if (field.type === 'choice') return fc.constantFrom(...field.options.map(({ value }) => ({ key: field.key, is: value })))
            // A share or a gravity has no whole figure between its limits.
            const [least, most] = [Math.ceil(field.min), Math.floor(field.max)]
            const figure = least <= most ? fc.integer({ min: least, max: most }) : fc.constantFrom(field.min, field.max)
            return fc.tuple(figure, figure, fc.constantFrom('both', 'least', 'most')).map(([one, two, which]) => ({
              key: field.key,
              least: which === 'most' ? null : Math.min(one, two),
              most: which === 'least' ? null : Math.max(one, two),
            }))
          }),
        ),
      ),
    ),
  )
  property.prop([anyTest])('is the same after it was spelt and read again, for every kind', ([kind, tests]) => {
    expect(read(kind, spellSpecFilter(tests))).toEqual({ ok: true, value: tests })
  })

  it('is changed a field at a time', () => {
    const tests: SpecTest[] = [{ key: 'powerW', least: 100, most: null }]
    expect(withTest(tests, 'powerW', { key: 'powerW', least: 50, most: 60 })).toEqual([{ key: 'powerW', least: 50, most: 60 }])
    expect(withTest(tests, 'powerW', null)).toEqual([])
  })
})
