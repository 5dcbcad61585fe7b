import { describe, expect, it } from 'vitest'
import { ruleDays } from '../../../api/sale-times/calendar-rule.ts'
import { runsAt, saleTimeFault } from '../../../api/sale-times/first-days.ts'
import { holidayDays, holidayNames } from '../../../api/sale-times/holidays.ts'

const US = { country: 'US', subdivision: null }
const LATE_NOVEMBER = 'FREQ=YEARLY;BYMONTH=11;BYDAY=FR;BYMONTHDAY=23,24,25,26,27,28,29'

describe('the day after the fourth Thursday of November', () => {
  // By the calendar: 1 November 2024 is a Friday, 2025 a Saturday, 2026 a Sunday, 2030 a Friday.
  const DAYS = { 2024: '2024-11-29', 2025: '2025-11-28', 2026: '2026-11-27', 2030: '2030-11-29' }
  for (const [year, day] of Object.entries(DAYS))
    it(`is ${day}, by the rule and by the holiday`, () => {
      const [from, to] = [`${year}-01-01`, `${year}-12-31`]
      expect(ruleDays(LATE_NOVEMBER, '2000-01-01', from, to)).toEqual([day])
      const when = { kind: 'holiday', holiday: 'Thanksgiving Day', offsetDays: 1 } as const
      expect(runsAt({ when, lengthDays: 4 }, US, from, to).map(({ first }) => first)).toEqual([day])
    })
  it('is not the fourth Friday, which is a week early in 2024 and 2030', () => {
    expect(ruleDays('FREQ=YEARLY;BYMONTH=11;BYDAY=4FR', '2000-01-01', '2024-01-01', '2024-12-31')).toEqual(['2024-11-22'])
    expect(ruleDays('FREQ=YEARLY;BYMONTH=11;BYDAY=4FR', '2000-01-01', '2030-01-01', '2030-12-31')).toEqual(['2030-11-22'])
  })
})

it('names the first Monday of September as each country spells it, and knows it in either spelling', () => {
  // 5 U.S.C. § 6103: "Labor Day, the first Monday in September"; Canada Labour Code, section 166: "Labour Day".
  const CA = { country: 'CA', subdivision: null }
  expect(holidayNames(US, 2026)).toContain('Labor Day')
  expect(holidayNames(US, 2026).filter((name) => name.includes('Labour'))).toEqual([])
  expect(holidayNames(CA, 2026)).toContain('Labour Day')
  for (const place of [US, CA])
    for (const name of ['Labor Day', 'Labour Day']) expect(holidayDays(place, name, 2026, 2026)).toEqual(['2026-09-07'])
})

describe('a rule', () => {
  // Examples of RFC 5545, section 3.8.5.3, as printed there; its rules by days of a time of day left out.
  const EXAMPLES: Array<[string, string, string[]]> = [
    ['FREQ=YEARLY;BYDAY=20MO', '1997-05-19', ['1997-05-19', '1998-05-18', '1999-05-17']],
    ['FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO', '1997-05-12', ['1997-05-12', '1998-05-11', '1999-05-17']],
    ['FREQ=YEARLY;BYMONTH=3;BYDAY=TH', '1997-03-13', ['1997-03-13', '1997-03-20', '1997-03-27', '1998-03-05', '1998-03-12', '1998-03-19', '1998-03-26', '1999-03-04', '1999-03-11', '1999-03-18', '1999-03-25']],
    ['FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13', '1997-09-03', ['1998-02-13', '1998-03-13', '1998-11-13', '1999-08-13']],
    ['FREQ=MONTHLY;COUNT=6;BYDAY=-2MO', '1997-09-22', ['1997-09-22', '1997-10-20', '1997-11-17', '1997-12-22', '1998-01-19', '1998-02-16']],
  ] // prettier-ignore
  for (const [rule, startsOn, days] of EXAMPLES) it(rule, () => expect(ruleDays(rule, startsOn, startsOn, '1999-12-31')).toEqual(days))
  it('begins no earlier than its own first day', () =>
    expect(ruleDays('FREQ=YEARLY;BYMONTH=4;BYMONTHDAY=4', '2026-05-01', '2020-01-01', '2027-12-31')).toEqual(['2027-04-04']))
  it('that is none is refused in words', () => {
    for (const rule of [
      'FREQ=DAILY',
      'FREQ=YEARLY;BYDAY=9XX',
      'FREQ=YEARLY;INTERVAL=0',
      'weekly',
      'FREQ=YEARLY;BYHOUR=9',
      'FREQ=WEEKLY;BYMONTHDAY=30',
      'FREQ=MONTHLY;BYDAY=99MO',
      '',
    ])
      expect(() => ruleDays(rule, '2020-01-01', '2026-01-01', '2026-12-31'), rule).toThrow(/RFC 5545/)
    expect(() => ruleDays('FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30,31', '2020-01-01', '2026-01-01', '2026-12-31')).toThrow(/cannot be read/)
  })
  it('that never comes true ends', () =>
    expect(ruleDays('FREQ=YEARLY;BYMONTH=1;BYMONTHDAY=1;BYSETPOS=2', '2000-01-01', '2026-01-01', '2030-12-31')).toEqual([]))
})

describe('holidays', () => {
  it('are those of the country and its subdivision, by code or name', () => {
    expect(holidayDays(US, 'Mardi Gras', 2026, 2026), 'not kept by the whole country').toEqual([])
    expect(holidayDays({ country: 'US', subdivision: 'Louisiana' }, 'mardi gras', 2026, 2026)).toEqual(['2026-02-17'])
    expect(holidayDays({ country: 'US', subdivision: 'LA' }, 'Mardi Gras', 2026, 2026)).toEqual(['2026-02-17'])
    expect(holidayNames({ country: 'US', subdivision: 'Tarn Valley' }, 2026), 'an unknown one is the country').toEqual(
      holidayNames(US, 2026),
    )
    expect(holidayNames({ country: 'ZZ', subdivision: null }, 2026)).toEqual([])
  })
  // Dates of Easter Sunday from the Astronomical Applications Department's table, from memory: 2024-03-31, 2025-04-20, 2026-04-05, 2027-03-28.
  it('Easter moves', () =>
    expect(holidayDays({ country: 'DE', subdivision: null }, 'Easter Sunday', 2024, 2027)).toEqual([
      '2024-03-31',
      '2025-04-20',
      '2026-04-05',
      '2027-03-28',
    ]))
  it('an offset over the turn of the year is found', () => {
    const when = { kind: 'holiday', holiday: "New Year's Day", offsetDays: -6 } as const
    expect(runsAt({ when, lengthDays: 10 }, US, '2026-12-01', '2027-01-03')).toEqual([{ first: '2026-12-26', last: '2027-01-04' }])
  })
})

describe('what the calendar refuses', () => {
  const today = '2026-11-26'
  it('a holiday that no store keeps', () =>
    expect(saleTimeFault({ when: { kind: 'holiday', holiday: 'Feast of Nobody', offsetDays: 0 }, lengthDays: 3 }, [US], today)?.field).toBe(
      'when.holiday',
    ))
  it('a holiday of two days on which a longer sale would begin twice', () => {
    const when = { kind: 'holiday', holiday: "New Year's Day", offsetDays: 0 } as const
    const place = { country: 'AZ', subdivision: null }
    expect(saleTimeFault({ when, lengthDays: 5 }, [place], today)).toMatchObject({ field: 'lengthDays' })
    expect(saleTimeFault({ when, lengthDays: 1 }, [place], today)).toBeNull()
  })
  it('one that never comes', () =>
    expect(
      saleTimeFault({ when: { kind: 'rule', rule: 'FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=31', from: '2000-01-01' }, lengthDays: 3 }, [US], today)
        ?.field,
    ).toBe('when.rule'))
  it('one that begins again before it ends', () => {
    const weekly = { when: { kind: 'rule', rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2020-01-01' }, lengthDays: 8 } as const
    expect(saleTimeFault(weekly, [US], today)).toMatchObject({ field: 'lengthDays', message: expect.stringContaining('at most 7 days') })
    expect(saleTimeFault({ ...weekly, lengthDays: 7 }, [US], today)).toBeNull()
  })
})
