import { describe, expect, it } from 'vitest'
import { checkSighting, type SightingFacts } from '../../../core/pricing/check-sighting.ts'

const facts: SightingFacts = {
  product: { name: 'Pellick C-1800', archived: false },
  store: { name: 'Upriver', archived: false },
  today: '2026-10-20',
}
const check = (seenOn: string, changed: Partial<SightingFacts> = {}) => {
  const result = checkSighting({ seenOn }, { ...facts, ...changed })
  return result.ok ? 'taken' : `${result.refusal.code} at ${result.refusal.field}`
}

describe('taking a sighting', () => {
  it.each([
    ['2026-10-20', {}, 'taken'],
    ['2026-10-21', {}, 'future at seenOn'],
    ['2024-10-20', {}, 'taken'],
    ['2024-10-19', {}, 'too_old at seenOn'],
    ['2026-10-20', { product: undefined }, 'unknown_product at productId'],
    ['2026-10-20', { store: undefined }, 'unknown_store at storeId'],
    ['2026-10-20', { product: { name: 'x', archived: true } }, 'archived_product at productId'],
    ['2026-10-20', { store: { name: 'x', archived: true } }, 'archived_store at storeId'],
  ])('seen on %s with %o is %s', (seenOn, changed, expected) => {
    expect(check(seenOn, changed)).toBe(expected)
  })

  it('says which day it is at the store', () => {
    const result = checkSighting({ seenOn: '2026-10-21' }, facts)
    expect(!result.ok && result.refusal.words).toBe(
      '2026-10-21 has not come yet: at Upriver it is 2026-10-20. Enter the day you saw the price.',
    )
  })
})
