import { describe, expect, it } from 'vitest'
import { dayNumber } from '../../../../core/pricing/outlook/civil-day.ts'
import { timelines } from '../../../../core/pricing/outlook/timeline.ts'
import { newcomerTrust } from '../../../../core/pricing/trust.ts'
import { aSighting } from '../a-sighting.ts'

const asOf = dayNumber('2026-11-26')
const reportsOf = (...sightings: Array<Parameters<typeof aSighting>[0]>) =>
  timelines(sightings.map(aSighting), asOf, newcomerTrust)[0]?.reports

describe('the report days of a product at a store', () => {
  it('are one a day, on sale where any of the day’s reports tells of a sale', () => {
    const reports = reportsOf(
      { priceMinor: 10000, seenOn: '2026-10-01' },
      { priceMinor: 8000, seenOn: '2026-10-20', condition: 'sale', printedRegularMinor: 10000 },
      { priceMinor: 8000, seenOn: '2026-10-20', condition: 'sale' },
      { priceMinor: 10000, seenOn: '2026-10-20' },
    )
    expect(reports?.map(({ day, onSale }) => [day - dayNumber('2026-10-01'), onSale])).toEqual([
      [0, false],
      [19, true],
    ])
    expect(reports?.[1]).toMatchObject({ saleMinor: 8000, shelfMinor: 10000, printedMinor: 10000 })
  })

  it('leave out what is withdrawn, doubted, disputed, used or later', () => {
    const seenOn = '2026-10-01'
    const doubt = { code: 'too_deep', words: '' } as const
    expect(
      reportsOf(
        { priceMinor: 1, seenOn, withdrawn: true },
        { priceMinor: 1, seenOn, doubt },
        { priceMinor: 1, seenOn, disputes: 1 },
        { priceMinor: 1, seenOn, condition: 'used' },
        { priceMinor: 1, seenOn: '2026-11-27' },
        { priceMinor: 9000, seenOn },
      )?.map(({ shelfMinor }) => shelfMinor),
    ).toEqual([9000])
  })

  it('take a sale at the very shelf price for what it is: a false regular price on the tag', () => {
    const reports = reportsOf(
      { priceMinor: 10000, seenOn: '2026-10-01' },
      { priceMinor: 10000, seenOn: '2026-10-20', printedRegularMinor: 13000 },
      { priceMinor: 9000, seenOn: '2026-10-25', printedRegularMinor: 10000 },
    )
    expect(reports?.map(({ onSale }) => onSale)).toEqual([false, false, true])
    expect(reports?.[1]?.shelfMinor).toBe(10000)
  })
})
