import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { addDays } from '../../../core/dates.ts'
import { decodeSummary, encodeSummary, summarisePair, tellsOf, viewOfSummary } from '../../../core/pricing/pair-summary.ts'
import { priceViewOf } from '../../../core/pricing/price-views.ts'
import { CONDITIONS, type Sighting } from '../../../core/pricing/sighting.ts'
import { aSighting } from './a-sighting.ts'

const newest = '2026-10-20'
const PAIR = { productId: 'heater', storeId: 'kettle' }

const seen = fc
  .record({
    id: fc.uuid(),
    condition: fc.constantFrom(...CONDITIONS),
    // Few prices, so that reports agree, go on with a sale and undercut each other.
    priceMinor: fc.integer({ min: 3, max: 9 }).map((step) => step * 1000),
    printedRegularMinor: fc.option(fc.integer({ min: 5, max: 10 }).map((step) => step * 1000)),
    daysAgo: fc.oneof(fc.nat(4), fc.nat(40), fc.nat(540)),
    lasts: fc.option(fc.nat(20)),
    reporterId: fc.constantFrom('noor', 'ada', 'tom'),
    doubted: fc.boolean(),
    withdrawn: fc.integer({ min: 0, max: 9 }).map((draw) => draw === 0),
    confirmations: fc.nat(2),
    disputes: fc.integer({ min: 0, max: 5 }).map((draw) => Math.max(0, draw - 3)),
  })
  .map(({ daysAgo, lasts, doubted, ...fields }): Sighting => {
    const seenOn = addDays(newest, -daysAgo)
    const lastDay = lasts === null || fields.condition === 'shelf' || fields.condition === 'used' ? null : addDays(seenOn, lasts)
    return aSighting({ ...PAIR, ...fields, seenOn, lastDay, doubt: doubted ? { code: 'too_deep', words: 'deep' } : null })
  })

/** Whoever asks may be up to two civil days behind the store; ahead there is no limit. */
const day = fc.oneof(fc.integer({ min: -2, max: 12 }), fc.integer({ min: -2, max: 400 })).map((days) => addDays(newest, days))

describe('the summary of a product at a store', () => {
  test.prop([fc.array(seen, { maxLength: 40 }), day], { numRuns: 400 })('says of every day what its sightings say', (sightings, asOf) => {
    const all = summarisePair(sightings)
    const summary = decodeSummary(encodeSummary(all), asOf)
    expect(tellsOf(summary, asOf)).toBe(tellsOf(all, asOf))
    expect(viewOfSummary(all, PAIR, asOf)).toEqual(viewOfSummary(summary, PAIR, asOf))
    const view = priceViewOf(sightings, asOf)
    const known = view && (view.regular ?? view.today ?? view.best) !== undefined
    expect(viewOfSummary(summary, PAIR, asOf)).toEqual(known && tellsOf(summary, asOf) ? view : undefined)
  })

  test.prop([
    fc.array(seen, { maxLength: 30 }).chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length }))),
  ])('has the same bytes in whatever order they came', ([sightings, shuffled]) => {
    expect(encodeSummary(summarisePair(shuffled))).toBe(encodeSummary(summarisePair(sightings)))
  })

  test.prop([fc.array(seen, { maxLength: 40 })])('tells of yesterday and the day before, at stores that are ahead', (sightings) => {
    const summary = summarisePair(sightings)
    for (const days of [0, 1, 2]) {
      const asOf = addDays(newest, -days)
      if (!tellsOf(summary, asOf))
        expect(
          priceViewOf(
            sightings.filter(({ seenOn }) => seenOn <= asOf),
            asOf,
          )?.regular,
        ).toBeUndefined()
    }
  })

  it('stays short, however many sightings there are', () => {
    const lengthOf = (count: number): number =>
      encodeSummary(
        summarisePair(
          Array.from({ length: count }, (_, index) =>
            aSighting({
              id: `s${String(index).padStart(4, '0')}`,
              priceMinor: index % 50 < 5 ? 15_000 : 19_000,
              seenOn: addDays(newest, -(index % 500)),
            }),
          ),
        ),
      ).length
    expect(lengthOf(500)).toBeLessThan(1_500)
    // Twenty reports a day instead of one: each state names those of one day, no more.
    expect(lengthOf(10_000)).toBeLessThan(20 * lengthOf(500))
  })

  it('knows nothing of what waits and of what was withdrawn, and nothing new of used goods', () => {
    const doubt = { code: 'too_deep' as const, words: 'deep' }
    const one = { priceMinor: 19_000, seenOn: newest }
    const none = [aSighting({ ...one, doubt }), aSighting({ ...one, withdrawn: true })]
    expect(summarisePair(none)).toEqual([])
    expect(viewOfSummary(summarisePair([aSighting({ ...one, condition: 'used' })]), PAIR, newest)).toBeUndefined()
    expect(tellsOf([], newest)).toBe(true)
    expect(viewOfSummary([], PAIR, newest)).toBeUndefined()
  })
})
