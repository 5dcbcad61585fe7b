import { describe, expect, it } from 'vitest'
import type { Discount } from '../../../core/pricing/discount.ts'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { issueFaults } from '../../../core/quote/issue-faults.ts'
import { moneyNotes } from '../../../core/quote/money-notes.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'
import { aStore } from '../pricing/a-sighting.ts'
import { viewOf } from '../pricing/a-market.ts'
import { buy, sampleInputs, sampleTank } from './sample-inputs.ts'

const shops = [aStore({ id: 'saltcote', name: 'Saltcote' }), aStore({ id: 'upriver', name: 'Upriver' })]

/** A tank at 100.00 in Saltcote, one in build A and two in build B; Upriver sells nothing. */
function quoteWith(discount: Discount): QuoteInputs {
  const inputs = sampleInputs([sampleTank])
  const builds = [1, 2].map((count) => ({ id: `build-${count}`, name: '', why: '', lines: [buy(sampleTank, count)] }))
  return {
    ...inputs,
    stores: shops,
    prices: [viewOf(sampleTank.id, 'saltcote', 10_000, '2026-10-30')],
    draft: { ...inputs.draft, title: 'A tank', standsUntil: '2026-11-20', builds, discount },
  }
}
const amount = (amountMinor: number, storeId: string | null = null): Discount => ({
  kind: 'amount',
  amountMinor,
  storeId,
  reason: 'club evening',
})
const notes = (discount: Discount): string[] => {
  const inputs = quoteWith(discount)
  return moneyNotes({ inputs, discount, builds: inputs.draft.builds.map((_, index) => assembleBuild(inputs, index)) })
}
const faults = (discount: Discount): string[] => issueFaults(quoteWith(discount), '2026-11-01').map(({ field }) => field)

describe('the discount that a customer is told of', () => {
  it('is the one that was offered where every build gets it', () => {
    expect(notes(amount(2_000))).toEqual(['Discount: $20.00 off the goods: club evening.'])
    expect(faults(amount(2_000))).toEqual([])
  })

  it('is no more than the goods of a build', () => {
    expect(notes(amount(15_000))).toEqual([
      'Discount: A: $100.00 off the goods: club evening.',
      'Discount: B: $150.00 off the goods: club evening.',
    ])
  })

  it('is none where no build buys at the store that gives it, and the quote is not issued so', () => {
    expect(notes(amount(2_000, 'upriver'))).toEqual([])
    expect(faults(amount(2_000, 'upriver'))).toEqual(['discount'])
    expect(faults({ kind: 'share', basisPoints: 1000, storeId: 'saltcote', reason: 'club evening' })).toEqual([])
  })
})
