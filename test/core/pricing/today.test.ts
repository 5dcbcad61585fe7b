import { describe, expect, it } from 'vitest'
import { addDays } from '../../../core/dates.ts'
import { priceViewOf } from '../../../core/pricing/price-views.ts'
import { saleSpells } from '../../../core/pricing/sale-spells.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'
import { aSighting } from './a-sighting.ts'

const shelf = aSighting({ priceMinor: 18999, seenOn: '2026-09-22' })
const sale = (fields: Partial<Sighting> = {}) => aSighting({ condition: 'sale', priceMinor: 15199, seenOn: '2026-10-16', ...fields })
const todayOn = (asOf: string, ...sightings: Sighting[]) => priceViewOf(sightings, asOf)?.today

describe('the price today', () => {
  it('is the sale to its stated last day, inclusive, and then the regular price again', () => {
    const sightings = [shelf, sale({ lastDay: '2026-10-25' })]
    expect(todayOn('2026-10-25', ...sightings)).toMatchObject({
      priceMinor: 15199,
      condition: 'sale',
      holdsUntil: '2026-10-25',
      lastDayStated: true,
    })
    expect(todayOn('2026-10-26', ...sightings)).toMatchObject({ priceMinor: 18999, condition: 'shelf', holdsUntil: null })
  })

  it.each([
    ['sale', 7],
    ['clearance', 5],
  ] as const)('takes an undated %s to hold %s days', (condition, days) => {
    const sightings = [shelf, sale({ condition })]
    expect(todayOn(addDays('2026-10-16', days), ...sightings)).toMatchObject({ condition, lastDayStated: false })
    expect(todayOn(addDays('2026-10-16', days + 1), ...sightings)).toMatchObject({ condition: 'shelf', priceMinor: 18999 })
  })

  it('ends a running sale at a shelf sighting of a later day, not of the same day', () => {
    const running = sale({ lastDay: '2026-10-25' })
    expect(todayOn('2026-10-20', shelf, running, aSighting({ priceMinor: 18999, seenOn: '2026-10-18' }))?.condition).toBe('shelf')
    expect(todayOn('2026-10-20', shelf, running, aSighting({ priceMinor: 18999, seenOn: '2026-10-16' }))?.condition).toBe('sale')
  })

  it('is not ended by a shelf sighting that waits for a second member', () => {
    const doubted = aSighting({ priceMinor: 25000, seenOn: '2026-10-18', doubt: { code: 'far_from_record', words: '' } })
    expect(todayOn('2026-10-20', shelf, sale({ lastDay: '2026-10-25' }), doubted)?.condition).toBe('sale')
  })

  it('forgets a withdrawn sale at once', () => {
    expect(todayOn('2026-10-20', shelf, sale({ withdrawn: true, lastDay: '2026-10-25' }))?.priceMinor).toBe(18999)
  })

  it('is the newest of two sale prices', () => {
    expect(todayOn('2026-10-20', shelf, sale({ lastDay: '2026-10-25' }), sale({ priceMinor: 14500, seenOn: '2026-10-19' }))).toMatchObject({
      priceMinor: 14500,
      holdsUntil: '2026-10-26',
    })
  })

  it('keeps a last day that an earlier report of the same price stated', () => {
    expect(todayOn('2026-10-20', shelf, sale({ lastDay: '2026-10-31' }), sale({ seenOn: '2026-10-19', reporterId: 'tom' }))).toMatchObject({
      holdsUntil: '2026-10-31',
      lastDayStated: true,
      reporters: 2,
    })
  })

  it('drops a stated last day when the price was seen again after it', () => {
    expect(todayOn('2026-10-20', shelf, sale({ lastDay: '2026-10-18' }), sale({ seenOn: '2026-10-19' }))).toMatchObject({
      holdsUntil: '2026-10-26',
      lastDayStated: false,
    })
  })

  it('says one report of a single sighting, and counts the one who confirmed', () => {
    expect(todayOn('2026-10-20', shelf, sale())?.reporters).toBe(1)
    expect(todayOn('2026-10-20', shelf, sale({ confirmations: 1 }))?.reporters).toBe(2)
  })

  it('counts of a list only those who confirmed it, and nobody who brought it in', () => {
    expect(todayOn('2026-10-20', shelf, sale({ imported: true }))?.reporters).toBe(0)
    expect(todayOn('2026-10-20', shelf, sale({ imported: true, confirmations: 3 }))?.reporters).toBe(3)
  })

  it('is not known after 180 days', () => {
    expect(todayOn('2027-04-01', shelf)).toBeUndefined()
  })

  it('moves at once by an ordinary sale of one report', () => {
    expect(todayOn('2026-10-16', shelf, sale())?.priceMinor).toBe(15199)
  })
})

describe('sale spells', () => {
  it('make one spell of ten reports of one weekend', () => {
    const reports = Array.from({ length: 10 }, (_, index) =>
      sale({ seenOn: index < 5 ? '2026-10-17' : '2026-10-18', reporterId: `m${index}` }),
    )
    const spells = saleSpells(reports, '2026-11-30')
    expect(spells).toHaveLength(1)
    expect(spells[0]).toMatchObject({ startedOn: '2026-10-17', lastSeenOn: '2026-10-18', endsOn: '2026-10-25' })
  })

  it('make two of the same price with a shelf price between', () => {
    const between = aSighting({ priceMinor: 18999, seenOn: '2026-10-18' })
    const spells = saleSpells([sale(), between, sale({ seenOn: '2026-10-20' })], '2026-11-30')
    expect(spells.map(({ startedOn, endsOn }) => [startedOn, endsOn])).toEqual([
      ['2026-10-16', '2026-10-17'],
      ['2026-10-20', '2026-10-27'],
    ])
  })
})
