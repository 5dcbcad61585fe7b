import { describe, expect, it } from 'vitest'
import { regularPrice } from '../../../core/pricing/regular-price.ts'
import { trust } from '../../../core/pricing/trust.ts'
import { aSighting } from './a-sighting.ts'

const asOf = '2026-10-20'

describe('the regular price', () => {
  it('is the newest accepted shelf price', () => {
    const regular = regularPrice(
      [aSighting({ priceMinor: 18999, seenOn: '2026-08-11' }), aSighting({ priceMinor: 19999, seenOn: '2026-09-22' })],
      asOf,
    )
    expect(regular).toMatchObject({ priceMinor: 19999, seenOn: '2026-09-22', age: 'current', from: 'shelf' })
  })

  it('passes over withdrawn, disputed and doubted sightings', () => {
    const doubt = { code: 'far_from_record' as const, words: '' }
    const regular = regularPrice(
      [
        aSighting({ priceMinor: 18999, seenOn: '2026-08-11' }),
        aSighting({ priceMinor: 100, seenOn: '2026-10-01', withdrawn: true }),
        aSighting({ priceMinor: 200, seenOn: '2026-10-02', disputes: 1 }),
        aSighting({ priceMinor: 300, seenOn: '2026-10-03', doubt }),
      ],
      asOf,
    )
    expect(regular?.priceMinor).toBe(18999)
  })

  it('takes a doubted shelf price once a second member confirmed it', () => {
    const doubt = { code: 'far_from_record' as const, words: '' }
    expect(regularPrice([aSighting({ priceMinor: 300, seenOn: '2026-10-03', doubt, confirmations: 1 })], asOf)?.priceMinor).toBe(300)
  })

  it('is the trust-weighted median where shelf prices of one day disagree', () => {
    const day = '2026-10-01'
    const trustOf = (id: string) => (id === 'ada' ? trust(20, 0) : trust(0, 3))
    const sightings = [
      aSighting({ priceMinor: 18999, seenOn: day, reporterId: 'ada' }),
      aSighting({ priceMinor: 21000, seenOn: day, reporterId: 'wil' }),
      aSighting({ priceMinor: 22000, seenOn: day, reporterId: 'tom' }),
    ]
    expect(regularPrice(sightings, asOf, trustOf)?.priceMinor).toBe(18999)
    expect(regularPrice(sightings, asOf)?.priceMinor).toBe(21000)
    expect(regularPrice(sightings, asOf)?.sightingIds).toHaveLength(3)
  })

  it('does not take a shelf price below its own printed "was" for regular: it is a sale, and the printed price stands', () => {
    expect(regularPrice([aSighting({ priceMinor: 15199, printedRegularMinor: 18999, seenOn: '2026-10-16' })], asOf)).toMatchObject({
      priceMinor: 18999,
      from: 'printed',
    })
  })

  it('uses a printed price only where no shelf price is younger than 180 days', () => {
    const sale = aSighting({ condition: 'sale', priceMinor: 15199, printedRegularMinor: 21000, seenOn: '2026-10-16' })
    // 2026-04-23 is 180 days before, 2026-04-22 is 181.
    expect(regularPrice([sale, aSighting({ priceMinor: 18999, seenOn: '2026-04-23' })], asOf)).toMatchObject({
      priceMinor: 18999,
      from: 'shelf',
      age: 'ageing',
    })
    expect(regularPrice([sale, aSighting({ priceMinor: 18999, seenOn: '2026-04-22' })], asOf)).toMatchObject({
      priceMinor: 21000,
      from: 'printed',
    })
  })

  it.each([
    ['2026-08-21', 'current'],
    ['2026-08-20', 'ageing'],
    ['2026-04-23', 'ageing'],
    ['2026-04-22', undefined],
    ['2026-10-21', undefined],
  ])('seen on %s is %s on October 20 (60 and 180 days)', (seenOn, age) => {
    expect(regularPrice([aSighting({ priceMinor: 18999, seenOn })], asOf)?.age).toBe(age)
  })

  it('knows nothing of used goods', () => {
    expect(
      regularPrice([aSighting({ condition: 'used', priceMinor: 9000, printedRegularMinor: 18999, seenOn: '2026-10-01' })], asOf),
    ).toBeUndefined()
  })
})
