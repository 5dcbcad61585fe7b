import { describe, expect, it } from 'vitest'
import type { Discount } from '../../../core/pricing/discount.ts'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { heldDiscounts, sayHeld, sayHeldHere } from '../../../core/quote/discount-room.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'
import { viewOf } from '../pricing/a-market.ts'
import { aStore } from '../pricing/a-sighting.ts'
import { buy, sampleInputs, sampleTank } from './sample-inputs.ts'

/** A tank at 100.00 in Saltcote, as many a build as it says; Upriver sells nothing. */
function heldOf(discount: Discount | null, counts: number[], priced = true) {
  const inputs = sampleInputs([sampleTank])
  const builds = counts.map((count) => ({ id: `build-${count}`, name: '', why: '', lines: count === 0 ? [] : [buy(sampleTank, count)] }))
  const quote: QuoteInputs = {
    ...inputs,
    stores: [aStore({ id: 'saltcote', name: 'Saltcote' }), aStore({ id: 'upriver', name: 'Upriver' })],
    prices: priced ? [viewOf(sampleTank.id, 'saltcote', 10_000, '2026-10-30')] : [],
    draft: { ...inputs.draft, builds, discount },
  }
  const assembled = builds.map((_, index) => assembleBuild(quote, index))
  const held = heldDiscounts(discount, assembled)
  // What is held is what the receipts gave.
  for (const { letter, minor } of held) {
    const { today } = assembled.find((build) => build.letter === letter)!.cost
    expect(today.complete && (today.discountMinor ?? 0)).toBe(minor)
  }
  return held
}
const amount = (amountMinor: number, storeId: string | null = null): Discount => ({ kind: 'amount', amountMinor, storeId, reason: '' })
const share = (basisPoints: number, storeId: string | null = null): Discount => ({ kind: 'share', basisPoints, storeId, reason: '' })

describe('a discount that is more than the goods it is for', () => {
  it('is held at the goods of each build that has too few, and told with the build', () => {
    const held = heldOf(amount(15_000), [1, 2])
    expect(held).toEqual([{ letter: 'A', minor: 10_000 }])
    expect(sayHeld(held, 'USD')).toBe('More than the goods it is for: held at $100.00 in build A.')
    expect(held.map((one) => sayHeldHere(one, 'USD'))).toEqual(['discount held at its goods, $100.00'])
    expect(heldOf(amount(10_000), [1, 2])).toEqual([])
    expect(heldOf(amount(10_001), [1])).toEqual([{ letter: 'A', minor: 10_000 }])
  })
  it('takes nothing off where a build buys nothing at the store that gives it, an amount or a share', () => {
    for (const discount of [amount(100, 'upriver'), share(1000, 'upriver')]) {
      const held = heldOf(discount, [1, 2])
      expect(held).toEqual([{ letter: 'A', minor: 0 }, { letter: 'B', minor: 0 }]) // prettier-ignore
      expect(sayHeld(held, 'USD')).toBe('Builds A, B buy no goods that it is for.')
    }
    expect(sayHeldHere({ letter: 'B', minor: 0 }, 'USD')).toBe('no discount here')
    expect(sayHeld([{ letter: 'A', minor: 500 }, { letter: 'B', minor: 0 }], 'USD')).toBe('More than the goods it is for: held at $5.00 in build A. Build B buys no goods that it is for.') // prettier-ignore
  })
  it('is no matter for a share of the whole, for none, for an empty build and for one without a price', () => {
    expect(heldOf(share(10_000), [1])).toEqual([])
    expect(heldOf(null, [1])).toEqual([])
    expect(heldOf(amount(0), [1])).toEqual([])
    expect(heldOf(amount(99_999), [0])).toEqual([])
    expect(heldOf(amount(99_999), [1], false)).toEqual([])
    expect(sayHeld([], 'USD')).toBe('')
  })
})
