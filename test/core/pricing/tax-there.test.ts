import { expect, it } from 'vitest'
import { taxThere } from '../../../core/pricing/tax-there.ts'

const at = (taxBasisPoints: number, pricesIncludeTax: boolean, reduced?: number) => ({
  store: {
    taxBasisPoints,
    pricesIncludeTax,
    ...(reduced !== undefined && { otherRates: [{ name: 'Reduced', basisPoints: reduced, kinds: [], productIds: [] }] }),
  },
  rateIndex: reduced === undefined ? 0 : 1,
})

it.each([
  ['same', at(600, false), at(600, false)],
  ['same', at(600, true), at(900, true)],
  ['within', at(600, true), at(600, false)],
  ['before', at(0, false), at(600, true)],
  ['none', at(0, false), at(600, false)],
  ['less', at(500, false), at(600, false)],
  ['more', at(887.5, false), at(600, false)],
  ['less', at(2000, false, 500), at(600, false)],
  ['none', at(2000, false, 0), at(600, false)],
])('says "%s" of the tax at %o beside %o', (said, there, here) => {
  expect(taxThere(there, here)).toBe(said)
})
