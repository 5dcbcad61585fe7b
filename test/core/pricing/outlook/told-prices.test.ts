import { describe, expect, it } from 'vitest'
import { pricesTold } from '../../../../core/pricing/outlook/told-prices.ts'
import type { TaughtPrice } from '../../../../core/pricing/outlook/timeline.ts'

/** Every field has a value of its own, so that none can stand in another's place unseen. */
const sale: TaughtPrice = {
  id: '018f-a',
  productId: '018f-b',
  storeId: '018f-c',
  condition: 'sale',
  priceMinor: 8999,
  printedRegularMinor: 12900,
  seenOn: '2028-02-29',
  reporterId: '018f-d',
  confirmations: 4,
  disputes: 3,
  doubt: null,
  withdrawn: false,
}
const used: TaughtPrice = {
  ...sale,
  id: '018f-e',
  condition: 'used',
  priceMinor: 0,
  printedRegularMinor: null,
  seenOn: '2026-01-01',
  confirmations: 0,
  disputes: 0,
}

/** As PostgreSQL writes `json_build_array` in `json_agg`: a blank after each comma, a line for each sighting. */
const TEXT = `[["018f-a", "018f-b", "018f-c", "sale", 8999, 12900, "2028-02-29", "018f-d", 4, 3], 
 ["018f-e", "018f-b", "018f-c", "used", 0, null, "2026-01-01", "018f-d", 0, 0]]`

describe('prices told in one text', () => {
  it('are every field in its place, in the order told', () => {
    expect(pricesTold(TEXT)).toEqual([sale, used])
  })

  it('are none where there are none, and no text at all is an error', () => {
    expect(pricesTold('[]')).toEqual([])
    expect(() => pricesTold('')).toThrow(SyntaxError)
  })
})
