import { describe, expect, it } from 'vitest'
import { foundGone } from '../../../core/pricing/gone.ts'
import { factsOfSummary, summarisePair } from '../../../core/pricing/pair-summary.ts'
import { priceViewOf } from '../../../core/pricing/price-views.ts'
import { recordSteps } from '../../../core/pricing/record-steps.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'
import { withOtherClubs } from '../../../core/pricing/with-other-clubs.ts'
import { aSighting } from './a-sighting.ts'

const older = aSighting({ priceMinor: 15000, seenOn: '2026-06-20' })
const shelf = (fields: Partial<Sighting> = {}) => aSighting({ priceMinor: 18999, seenOn: '2026-10-03', ...fields })
const sale = (fields: Partial<Sighting> = {}) =>
  aSighting({ condition: 'sale', priceMinor: 15199, seenOn: '2026-10-16', lastDay: '2026-10-25', ...fields })
const viewOn = (asOf: string, ...sightings: Sighting[]) => priceViewOf(sightings, asOf)

describe('what was found gone', () => {
  it('ends a sale: from that day on the regular price is today’s again, and the sale stays the best that was seen', () => {
    const record = [older, shelf(), sale({ goneOn: '2026-10-20' })]
    expect(viewOn('2026-10-19', ...record)?.today).toMatchObject({ condition: 'sale', priceMinor: 15199 })
    expect(viewOn('2026-10-20', ...record)).toMatchObject({ today: { condition: 'shelf', priceMinor: 18999 }, best: { priceMinor: 15000 } })
  })

  it('does not let an earlier sale that its tag says still runs take the place of a later one', () => {
    const earlier = sale({ seenOn: '2026-10-10', priceMinor: 14000, lastDay: '2026-10-31' })
    expect(viewOn('2026-10-20', shelf(), earlier, sale({ goneOn: '2026-10-20' }))?.today).toMatchObject({ priceMinor: 18999 })
  })

  it('of a regular price leaves no price today: an older shelf price does not come back', () => {
    const record = [older, shelf({ goneOn: '2026-10-20' })]
    expect(viewOn('2026-10-19', ...record)?.today).toMatchObject({ priceMinor: 18999 })
    const view = viewOn('2026-10-20', ...record)
    expect(view).toMatchObject({ regular: { priceMinor: 18999 }, goneOn: '2026-10-20', best: { priceMinor: 15000 } })
    expect(view?.today).toBeUndefined()
  })

  it('is there again as soon as anybody sees it on that day or later, at whatever price', () => {
    const gone = shelf({ goneOn: '2026-10-20' })
    expect(viewOn('2026-10-21', gone, shelf({ priceMinor: 17900, seenOn: '2026-10-21' }))?.today).toMatchObject({ priceMinor: 17900 })
    expect(viewOn('2026-10-20', gone, sale({ seenOn: '2026-10-20' }))?.today).toMatchObject({ priceMinor: 15199 })
    expect(viewOn('2026-11-20', gone, sale({ seenOn: '2026-10-21' }))?.today, 'after that sale').toMatchObject({ priceMinor: 18999 })
    expect(viewOn('2026-10-21', gone, sale({ seenOn: '2026-10-21', withdrawn: true }))?.today).toBeUndefined()
  })

  it('says nothing of a price that was seen before it and told late', () => {
    expect(viewOn('2026-10-21', shelf({ goneOn: '2026-10-20' }), shelf({ seenOn: '2026-10-19' }))?.today).toBeUndefined()
  })

  it('is told of from the first day on which nobody saw it since', () => {
    const days = (...told: Array<[string, string | null]>) => foundGone(told.map(([seenOn, goneOn]) => ({ seenOn, goneOn })))
    expect(days(['2026-10-03', null])).toBeNull()
    expect(days(['2026-10-03', '2026-10-20'], ['2026-10-04', '2026-10-18'])).toBe('2026-10-18')
    expect(days(['2026-10-03', '2026-10-20'], ['2026-10-21', null])).toBeNull()
    expect(days(['2026-10-03', '2026-10-20'], ['2026-10-21', '2026-10-24'])).toBe('2026-10-24')
  })

  it('ends the step and the dip that are drawn, on the day before, and a dip no earlier than it was seen', () => {
    const [drawn] = recordSteps([shelf({ goneOn: '2026-10-20' })], '2026-10-28')
    expect(drawn?.steps).toMatchObject([{ from: '2026-10-03', until: '2026-10-19' }])
    for (const [goneOn, until] of [
      ['2026-10-20', '2026-10-19'],
      ['2026-10-16', '2026-10-16'],
    ] as const)
      expect(recordSteps([shelf(), sale({ goneOn })], '2026-10-28')[0]?.dips).toMatchObject([{ from: '2026-10-16', until }])
  })

  it('of used goods takes the piece out of what can be had, and not out of the best that was seen', () => {
    const used = (priceMinor: number, fields: Partial<Sighting> = {}) =>
      aSighting({ condition: 'used', priceMinor, seenOn: '2026-10-16', ...fields })
    const summary = summarisePair([used(5000, { goneOn: '2026-10-18' }), used(6000, { seenOn: '2026-10-12' })])
    const facts = factsOfSummary(summary, { productId: 'filter', storeId: 'upriver' }, '2026-10-20')
    expect(facts?.used).toMatchObject({ best: { priceMinor: 5000 }, lowest: { priceMinor: 6000 } })
  })

  it('is not filled in by what another club saw before it', () => {
    const told = {
      productId: 'filter',
      storeId: 'upriver',
      condition: 'shelf',
      priceMinor: 17500,
      printedRegularMinor: null,
      lastDay: null,
    } as const
    const club = { clubId: 'c', clubName: 'Pond club', originId: 'o' }
    const own = [viewOn('2026-10-28', shelf({ goneOn: '2026-10-20' }))].flatMap((view) => view ?? [])
    const withOne = (seenOn: string) => withOtherClubs(own, [{ ...told, ...club, seenOn }], '2026-10-28')[0]?.today
    expect(withOne('2026-10-20')).toBeUndefined()
    expect(withOne('2026-10-21')).toMatchObject({ priceMinor: 17500 })
  })
})
