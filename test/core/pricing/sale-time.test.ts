import { describe, expect, it } from 'vitest'
import { runsOf } from '../../../core/pricing/sale-time.ts'
import { sayDays, sayPlan, sayRun, sayWhen, yearlyDayOf, yearlyRule } from '../../../core/pricing/sale-time-words.ts'

describe('the runs of a sale time', () => {
  it('are those that touch the days asked for, both ends counted', () => {
    const runs = (from: string, to: string) => runsOf(['2026-11-27', '2026-05-01', '2026-05-01'], 5, from, to).map(({ first }) => first)
    expect(runs('2026-01-01', '2026-12-31')).toEqual(['2026-05-01', '2026-11-27'])
    expect(runs('2026-12-01', '2026-12-31'), 'its last day').toEqual(['2026-11-27'])
    expect(runs('2026-12-02', '2026-12-31'), 'the day after').toEqual([])
    expect(runs('2026-11-01', '2026-11-27'), 'its first day').toEqual(['2026-11-27'])
    expect(runs('2026-11-01', '2026-11-26'), 'the day before').toEqual([])
  })
  it('of one day begin and end on it', () =>
    expect(runsOf(['2026-03-01'], 1, '2026-03-01', '2026-03-01')).toEqual([{ first: '2026-03-01', last: '2026-03-01' }]))
})

describe('in words', () => {
  const run = { first: '2025-11-28', last: '2025-12-02', sightings: 41, products: 30, stores: 6, medianDepth: 0.214 }
  it('a past run says what was reported', () => {
    expect(sayRun(run, 2026)).toBe('Nov 28 to Dec 2, 2025: 41 sale prices of 30 products at 6 stores, the middle one 21\u00a0%\u00a0off.')
    expect(sayRun({ ...run, first: '2025-12-30', last: '2026-01-02', sightings: 1, products: 1, stores: 1, medianDepth: null }, 2026)).toBe(
      'Dec 30, 2025 to Jan 2: 1 sale price of 1 product at 1 store.',
    )
  })
  it('silence is not told as no sale', () =>
    expect(sayRun({ ...run, sightings: 0 }, 2025)).toBe('Nov 28 to Dec 2: nobody reported a sale price.'))
  it('days and plans', () => {
    expect(sayDays({ first: '2026-11-27', last: '2026-12-01' }, 2026)).toBe('Fri, Nov 27 to Tue, Dec 1')
    expect(sayDays({ first: '2027-03-01', last: '2027-03-01' }, 2026)).toBe('Mon, Mar 1, 2027')
    expect(sayPlan({ when: { kind: 'holiday', holiday: 'Thanksgiving Day', offsetDays: 1 }, lengthDays: 5 })).toBe(
      '1 day after Thanksgiving Day, for 5 days',
    )
    expect(sayWhen({ kind: 'holiday', holiday: 'Easter Sunday', offsetDays: -3 })).toBe('3 days before Easter Sunday')
    expect(sayWhen({ kind: 'holiday', holiday: 'Easter Sunday', offsetDays: 0 })).toBe('on Easter Sunday')
    expect(sayWhen({ kind: 'rule', rule: yearlyRule('04-04'), from: '2020-01-01' })).toBe('each year on Apr 4')
    expect(sayWhen({ kind: 'rule', rule: 'FREQ=WEEKLY', from: '2020-01-01' })).toBe('by a calendar rule')
    expect(sayWhen({ kind: 'dates', firstDays: ['2026-01-01', '2026-02-01'] })).toBe('on listed days')
  })
  it('a rule of one day a year is known again as that day', () => {
    expect(yearlyDayOf({ rule: yearlyRule('11-03') })).toBe('11-03')
    expect(yearlyDayOf({ rule: 'FREQ=YEARLY;BYMONTH=6;BYDAY=1SA' })).toBeNull()
  })
})
