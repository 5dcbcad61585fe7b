import { describe, expect, it } from 'vitest'
import { boardRows } from '../../../core/pricing/board.ts'
import { priceViews } from '../../../core/pricing/price-views.ts'
import type { SightingRow } from '../../../core/pricing/record.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'
import { aSighting } from './a-sighting.ts'

const row = (sighting: Sighting): SightingRow => ({
  ...sighting,
  productName: 'Pellick C-1800',
  storeName: 'Upriver',
  reporterName: 'Noor',
  own: false,
  mayVote: true,
  myVote: null,
  withdrawnReason: null,
})
const asOf = '2026-10-20'
const board = (...sightings: Sighting[]) => boardRows(sightings.map(row), priceViews(sightings, asOf), () => 'filter', asOf)

describe('the board', () => {
  const shelf = aSighting({ priceMinor: 20_000, seenOn: '2026-09-22' })

  it('has one row a product and store, the newest accepted sighting, newest first', () => {
    const sale = aSighting({ condition: 'sale', priceMinor: 15_000, seenOn: '2026-10-16' })
    const doubted = aSighting({ condition: 'sale', priceMinor: 500, seenOn: '2026-10-19', doubt: { code: 'too_deep', words: '' } })
    const elsewhere = aSighting({ storeId: 'saltcote', priceMinor: 19_500, seenOn: '2026-10-18' })
    expect(board(shelf, doubted, sale, elsewhere).map(({ sighting }) => sighting.id)).toEqual([elsewhere.id, sale.id])
  })

  it('counts the members behind the price as the product’s page does, whichever of their sightings stands for them', () => {
    const four = ['a', 'b', 'c', 'd'].map((reporterId) => aSighting({ reporterId, priceMinor: 20_000, seenOn: '2026-10-16' }))
    expect(board(...four)).toMatchObject([{ members: 4 }])
    expect(board(...four, aSighting({ condition: 'used', priceMinor: 9000, seenOn: '2026-10-19', confirmations: 1 }))).toMatchObject([
      { members: 2 },
    ])
  })

  it('says how far a price is under the regular price there', () => {
    expect(board(shelf, aSighting({ condition: 'sale', priceMinor: 15_000, seenOn: '2026-10-16' }))[0]).toMatchObject({
      regularMinor: 20_000,
      underRegular: 0.25,
      over: false,
    })
  })

  it('says nothing of it where no regular price is known, or for used goods', () => {
    expect(board(aSighting({ condition: 'sale', priceMinor: 15_000, seenOn: '2026-10-16' }))[0]).toMatchObject({
      regularMinor: null,
      underRegular: null,
    })
    expect(board(shelf, aSighting({ condition: 'used', priceMinor: 5000, seenOn: '2026-10-16' }))[0]?.underRegular).toBeNull()
  })

  it.each([
    [{ lastDay: '2026-10-19' }, true],
    [{ lastDay: '2026-10-20' }, false],
    [{ seenOn: '2026-10-13' }, false],
    [{ seenOn: '2026-10-12' }, true],
    [{ seenOn: '2026-10-14', condition: 'clearance' as const }, true],
  ])('marks a sale as over after its last day: %o is %s', (fields, over) => {
    expect(board(shelf, aSighting({ condition: 'sale', priceMinor: 15_000, seenOn: '2026-10-16', ...fields }))[0]?.over).toBe(over)
  })
})
