import { describe, expect, it } from 'vitest'
import { readOutlookSearch } from '../../../web/app/prices/outlook-search.ts'
import { firstAhead, untilOf } from '../../../web/app/prices/use-outlook.ts'

describe('what a quote asked of one product', () => {
  it('is carried in the address: store, day and what a week is worth; what is none of that is left out', () => {
    expect(readOutlookSearch({ store: 's1', until: '2027-01-15', wait: 500 })).toEqual({ store: 's1', until: '2027-01-15', wait: 500 })
    expect(readOutlookSearch({ store: '', until: 'soon', wait: -1, more: 1 })).toEqual({})
  })
  it('opens the outlook at the quote’s day while that is ahead, within a year', () => {
    expect(firstAhead('2026-11-26', { until: '2027-01-15' })).toBe('asked')
    expect(untilOf('asked', '2026-11-26', { until: '2027-01-15' })).toBe('2027-01-15')
    expect([{}, { until: '2026-11-25' }, { until: '2028-01-01' }].map((asked) => firstAhead('2026-11-26', asked))).toEqual(Array(3).fill('season')) // prettier-ignore
    expect(untilOf('season', '2026-11-26', { until: '2027-01-15' })).toBe('2027-01-25')
  })
})
