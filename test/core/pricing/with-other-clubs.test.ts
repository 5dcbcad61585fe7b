import { describe, expect, it } from 'vitest'
import { addDays } from '../../../core/dates.ts'
import { priceViews } from '../../../core/pricing/price-views.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'
import { isLikely, withOtherClubs, type OtherClubPrice } from '../../../core/pricing/with-other-clubs.ts'
import { aSighting } from './a-sighting.ts'

const TODAY = '2026-11-26'
const { productId, storeId } = aSighting({ priceMinor: 1, seenOn: TODAY })
const told = (fields: Partial<OtherClubPrice> = {}): OtherClubPrice => ({
  clubId: 'club-1',
  clubName: 'Reed Club',
  originId: 'origin-1',
  productId,
  storeId,
  condition: 'shelf',
  priceMinor: 9000,
  printedRegularMinor: null,
  seenOn: '2026-11-20',
  lastDay: null,
  ...fields,
})
const views = (own: Sighting[], ...prices: OtherClubPrice[]) => withOtherClubs(priceViews(own, TODAY), prices, TODAY)

describe('prices of other clubs', () => {
  it('stand in where our members saw nothing, marked with the club, as one report and never as best seen', () => {
    expect(views([], told(), told({ clubId: 'club-2', clubName: 'Tarn Club', originId: 'origin-2' }))).toEqual([
      expect.objectContaining({
        otherClub: expect.stringMatching(/^(Reed|Tarn) Club$/),
        today: expect.objectContaining({ priceMinor: 9000, reporters: 1, sightingIds: [] }),
        regular: expect.objectContaining({ priceMinor: 9000, sightingIds: [] }),
      }),
    ])
    expect(views([], told())[0]?.best).toBeUndefined()
  })

  it('count for nothing beside one report of our own that still counts, however new and low they are', () => {
    const own = [aSighting({ priceMinor: 12000, seenOn: addDays(TODAY, -180) })]
    const many = Array.from({ length: 50 }, (_, index) => told({ originId: `origin-${index}`, priceMinor: 5000, seenOn: TODAY }))
    expect(views(own, ...many)).toEqual(priceViews(own, TODAY))
  })

  it('stand in again once our own is too old, beside our own best seen', () => {
    const own = [aSighting({ priceMinor: 8000, seenOn: addDays(TODAY, -200) })]
    expect(views(own, told())[0]).toMatchObject({ otherClub: 'Reed Club', today: { priceMinor: 9000 }, best: { priceMinor: 8000 } })
  })

  it('count for sixty days, where our own count for a hundred and eighty', () => {
    expect(views([], told({ seenOn: addDays(TODAY, -60) }))).toHaveLength(1)
    expect(views([], told({ seenOn: addDays(TODAY, -61) }))).toHaveLength(0)
  })

  it('end as a sale does', () => {
    const sale = told({ condition: 'sale', priceMinor: 7000, printedRegularMinor: 9000, lastDay: '2026-11-25' })
    expect(views([], sale)[0]?.today).toMatchObject({ condition: 'shelf', priceMinor: 9000 })
  })

  it('leave used goods out, and do not depend on their order', () => {
    expect(views([], told({ condition: 'used' }))).toEqual([])
    const some = [
      told(),
      told({ originId: 'origin-2', priceMinor: 8500, seenOn: '2026-11-22' }),
      told({ originId: 'origin-3', storeId: `${storeId}x` }),
    ]
    expect(views([], ...some.toReversed())).toEqual(views([], ...some))
  })
})

describe('a price of another club beside what our members saw anywhere', () => {
  it.each([
    [1, [849], false],
    [254, [849], false],
    [255, [849], true],
    [1698, [849], true],
    [1699, [849], false],
    [1, [], true],
    [4000, [4200, 4300, 90_000], true],
  ] as const)('%s beside %j is likely: %s', (minor, own, likely) => {
    expect(isLikely(minor, own)).toBe(likely)
  })
})
