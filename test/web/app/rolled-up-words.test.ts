import { describe, expect, it } from 'vitest'
import { changeWords, placeWords, rolledRows } from '../../../web/app/prices/rolled-up-words.ts'

describe('the roll-up in words', () => {
  it.each([
    [0.0312, '2026-02-01', '+3 % since Feb 1'],
    [-0.1, '2025-11-02', '−10 % since Nov 2, 2025'],
    [0.004, '2026-02-01', 'the same since Feb 1'],
  ])('says of a change of %s since %s: %s', (change, since, words) => {
    expect(changeWords({ change, since, stores: 1 }, 2026)).toBe(words)
  })

  it('says that of several stores it is the middle one', () => {
    expect(changeWords({ change: 0.04, since: '2025-11-02', stores: 3 }, 2026)).toBe('+4 % since Nov 2, 2025, the middle of 3 stores')
  })

  it('has a row of new goods and one of used where any were seen, and calls a part by what it is', () => {
    const best = { priceMinor: 4000, storeId: 'kettle', seenOn: '2026-10-01', sightingIds: ['u'] }
    const rows = rolledRows([
      { part: 'all', regionId: null, regionName: null, new: { stores: 1 }, used: { stores: 1, best } },
      { part: 'region', regionId: 'n', regionName: 'North', used: { stores: 1, best } },
    ])
    expect(rows.map(({ place }) => place)).toEqual(['All stores', 'All stores, used', 'North, used'])
    expect(placeWords({ part: 'rest', regionName: null })).toBe('In no region')
  })
})
