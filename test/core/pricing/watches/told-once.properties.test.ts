import { fc, test } from '@fast-check/vitest'
import { describe, expect } from 'vitest'
import { addDays } from '../../../../core/dates.ts'
import { isAccepted, type Sighting } from '../../../../core/pricing/sighting.ts'
import type { Deal } from '../../../../core/pricing/watches/deal.ts'
import { dealKey } from '../../../../core/pricing/watches/news.ts'
import { aSighting } from '../a-sighting.ts'
import { look } from './told-so-far.ts'

const FIRST_DAY = '2026-10-01'
const LIMIT = 12000

/** What a member may do to the record on a day, in the order in which it is done. */
const act = fc.record({
  day: fc.nat(40),
  what: fc.constantFrom('post' as const, 'post' as const, 'post' as const, 'confirm' as const, 'dispute' as const, 'withdraw' as const),
  which: fc.nat(20),
  storeId: fc.constantFrom('upriver', 'kettle'),
  condition: fc.constantFrom('shelf' as const, 'sale' as const, 'sale' as const, 'clearance' as const, 'used' as const),
  priceMinor: fc.constantFrom(10000, 10100, 10700, 11900, 14000, 18000),
  late: fc.nat(3),
  isDoubted: fc.boolean(),
})
type Act = typeof act extends fc.Arbitrary<infer Value> ? Value : never

function after(record: readonly Sighting[], one: Act): Sighting[] {
  if (one.what === 'post') {
    const { storeId, condition, priceMinor } = one
    const seenOn = addDays(FIRST_DAY, Math.max(0, one.day - one.late))
    const doubt = one.isDoubted && one.which % 4 === 0 ? { code: 'too_deep' as const, words: '' } : null
    return [...record, aSighting({ storeId, condition, priceMinor, seenOn, doubt, reporterId: `member ${one.which % 5}` })]
  }
  return record.map((sighting, index) => {
    if (record.length === 0 || index !== one.which % record.length) return sighting
    if (one.what === 'withdraw') return { ...sighting, withdrawn: true }
    return one.what === 'confirm'
      ? { ...sighting, confirmations: sighting.confirmations + 1 }
      : { ...sighting, disputes: sighting.disputes + 1 }
  })
}

interface Told {
  deal: Deal
  record: Sighting[]
  asOf: string
}
/** Every act with a look after it, days in order; what was told with the record as it stood then. */
function tellAll(acts: readonly Act[], looksAfter: (index: number) => boolean): Told[] {
  const told: Told[] = []
  let record: Sighting[] = []
  acts
    .toSorted((a, b) => a.day - b.day)
    .forEach((one, index) => {
      record = after(record, one)
      const asOf = addDays(FIRST_DAY, one.day)
      if (looksAfter(index))
        for (const deal of look(
          record,
          told.map((each) => each.deal),
          asOf,
          LIMIT,
        ))
          told.push({ deal, record, asOf })
    })
  return told
}

describe('whatever members post, confirm, dispute and withdraw', () => {
  test.prop([fc.array(act, { maxLength: 25 })], { numRuns: 150 })(
    'nothing is told but on the word of a report that counts then',
    (acts) => {
      for (const { deal, record, asOf } of tellAll(acts, () => true)) {
        const behind = record.find(({ id }) => id === deal.sightingId)
        expect(behind !== undefined && isAccepted(behind)).toBe(true)
        expect(deal.totalMinor).toBeLessThanOrEqual(LIMIT)
        expect(deal.until >= asOf).toBe(true)
      }
    },
  )

  test.prop([fc.array(act, { maxLength: 25 })], { numRuns: 150 })('no deal is told twice, and a second look finds nothing new', (acts) => {
    const told = tellAll(acts, () => true)
    expect(new Set(told.map(({ deal }) => dealKey(deal))).size).toBe(told.length)
    const last = told.at(-1)
    if (last) expect(look(last.record, told.map(({ deal }) => deal), last.asOf, LIMIT)).toEqual([]) // prettier-ignore
  })

  test.prop([fc.array(act, { maxLength: 20 }), fc.infiniteStream(fc.nat())], { numRuns: 100 })(
    'what one look tells does not hang on the order in which reports came in',
    (acts, order) => {
      const record = acts.reduce<Sighting[]>(after, [])
      const turned = record
        .map((sighting) => ({ sighting, at: order.next().value ?? 0 }))
        .toSorted((a, b) => a.at - b.at)
        .map(({ sighting }) => sighting)
      const asOf = addDays(FIRST_DAY, 20)
      expect(look(turned, [], asOf, LIMIT)).toEqual(look(record, [], asOf, LIMIT))
    },
  )

  test.prop([fc.array(fc.nat(60), { minLength: 1, maxLength: 15 }), fc.array(fc.boolean(), { minLength: 15, maxLength: 15 })], {
    numRuns: 150,
  })(
    'a sale at one price is told once a run of reports with no more than eight days between, however often it is looked at',
    (days, looks) => {
      const sorted = days.toSorted((a, b) => a - b)
      // Counted by hand: an undated sale holds seven days after it was seen, and goes on where it is seen again the day after at the latest.
      const runs = sorted.filter((day, index) => index === 0 || day - (sorted[index - 1] ?? 0) > 8)
      const acts = sorted.map((day, which): Act => ({ day, which, what: 'post', storeId: 'upriver', condition: 'sale', priceMinor: 10000, late: 0, isDoubted: false })) // prettier-ignore
      // Each run is looked at once at least: at its first report.
      const isFirst = (index: number): boolean => index === 0 || (sorted[index] ?? 0) - (sorted[index - 1] ?? 0) > 8
      expect(tellAll(acts, (index) => isFirst(index) || looks[index] === true)).toHaveLength(runs.length)
    },
  )
})
