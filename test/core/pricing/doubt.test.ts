import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { doubtLeeway } from '../../../core/pricing/doubt-leeway.ts'
import { doubtOf, type DoubtCandidate } from '../../../core/pricing/doubt.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import { trust, trustByReporter } from '../../../core/pricing/trust.ts'
import { aSighting } from './a-sighting.ts'

const context = { currency: 'USD', othersThatDay: [] }
const candidate = (fields: Partial<DoubtCandidate>): DoubtCandidate => ({
  productId: 'filter',
  storeId: 'upriver',
  condition: 'shelf',
  priceMinor: 5000,
  printedRegularMinor: null,
  seenOn: '2026-10-20',
  ...fields,
})
/** The record of the pricing reference, a month apart, the newest at 50. */
const record = [4900, 5000, 5000, 5100, 5200, 4800, 5000].map((priceMinor, index) =>
  aSighting({ priceMinor, seenOn: `2026-0${index + 3}-10` }),
)
const code = (fields: Partial<DoubtCandidate>, sightings = record) => doubtOf(candidate(fields), sightings, context)?.code ?? null

describe('doubt of a shelf price', () => {
  // Deviations of the pricing reference: 5.939, 2.840, 2.108, 3.246 and 6.210 against a limit of 3.5.
  it.each([
    [4200, 'far_from_record'],
    [4600, null],
    [4700, null],
    [5500, null],
    [6000, 'far_from_record'],
  ])('of %s against a record near 50.00 is %s', (priceMinor, expected) => {
    expect(code({ priceMinor })).toBe(expected)
  })

  it('is judged within its class: the sales of the year do not widen it', () => {
    const sales = [3000, 3500, 4000].map((priceMinor, index) =>
      aSighting({ condition: 'sale', priceMinor, seenOn: `2026-0${index + 4}-20` }),
    )
    expect(code({ priceMinor: 4200 }, [...record, ...sales])).toBe('far_from_record')
  })

  it('is judged by this store’s record only', () => {
    expect(code({ priceMinor: 4200, storeId: 'saltcote' })).toBeNull()
  })

  it('lets a changed price stand against one or two reports, but not twice or half of them', () => {
    for (const few of [record.slice(-1), record.slice(-2)]) {
      const usual = few.length === 1 ? 5000 : 4900
      expect(code({ priceMinor: 6000 }, few)).toBeNull()
      expect(code({ priceMinor: usual * 2 }, few)).toBeNull()
      expect(code({ priceMinor: usual * 2 + 2 }, few)).toBe('far_from_record')
      expect(code({ priceMinor: usual / 2 - 1 }, few)).toBe('far_from_record')
    }
  })

  it('does not return to a new regular price that was accepted', () => {
    const risen = aSighting({ priceMinor: 6000, seenOn: '2026-10-15', doubt: { code: 'far_from_record', words: '' }, confirmations: 1 })
    expect(code({ priceMinor: 6000 }, [...record, risen])).toBeNull()
  })

  it('leaves out what is older than a year', () => {
    const old = record.map((sighting) => ({ ...sighting, seenOn: sighting.seenOn.replace('2026', '2024') }))
    expect(code({ priceMinor: 6000 }, old)).toBeNull()
  })
})

describe('doubt of a sale', () => {
  // Design rule 8: below 0.3 or above 1.0 of the regular price, which is 50.00 here.
  it.each([
    ['sale', 1499, 'too_deep'],
    ['sale', 1500, null],
    ['clearance', 1499, 'too_deep'],
    ['sale', 4000, null],
    ['sale', 5000, null],
    ['sale', 5001, 'above_regular'],
  ] as const)('%s at %s is %s', (condition, priceMinor, expected) => {
    expect(code({ condition, priceMinor })).toBe(expected)
  })

  it('looks at the regular price on the tag where none is known', () => {
    expect(code({ condition: 'sale', priceMinor: 1000, printedRegularMinor: 5000 }, [])).toBe('too_deep')
    expect(code({ condition: 'sale', priceMinor: 1000 }, [])).toBeNull()
  })
})

describe('a slipped decimal', () => {
  it.each([
    [50_000, 'slipped_decimal'],
    [51_000, 'slipped_decimal'],
    [51_001, 'far_from_record'],
    [500, 'slipped_decimal'],
    [490, 'slipped_decimal'],
    [489, 'far_from_record'],
  ])('%s against 50.00 is %s (within 2 % of ten times or a tenth)', (priceMinor, expected) => {
    expect(code({ priceMinor })).toBe(expected)
  })

  it('is seen in used goods and in the first price at a store too', () => {
    expect(code({ condition: 'used', priceMinor: 50_000 })).toBe('slipped_decimal')
    expect(code({ storeId: 'saltcote', priceMinor: 50_000 })).toBe('slipped_decimal')
  })

  it('says its likely cause with the figure', () => {
    expect(doubtOf(candidate({ priceMinor: 50_000 }), record, context)?.words).toBe(
      'About ten times the regular price of $50.00. A slipped decimal?',
    )
  })
})

describe('the price of another product', () => {
  const others = { currency: 'USD', othersThatDay: [{ name: 'Pellick C-900', priceMinor: 9900 }] }

  it('is named where a doubted price is exactly one seen there that day', () => {
    expect(doubtOf(candidate({ priceMinor: 9900 }), record, others)).toEqual({
      code: 'other_product',
      words: '$99.00 is the price of Pellick C-900 seen here that day. Its tag?',
    })
  })

  it('says how far a shelf price is off, and calls 8 % nothing more', () => {
    const flat = [1, 2, 3, 4].map((day) => aSighting({ priceMinor: 5000, seenOn: `2026-10-0${day}` }))
    expect(doubtOf(candidate({ priceMinor: 5400 }), flat, context)?.words).toBe(
      '8 % above the shelf prices seen here in the last year, about $50.00. A new price, or another size?',
    )
    expect(doubtOf(candidate({ priceMinor: 3000 }), flat, context)?.words).toMatch(/^40 % below the shelf prices/)
  })

  it('raises no doubt by itself', () => {
    expect(
      doubtOf(candidate({ priceMinor: 5100 }), record, { ...others, othersThatDay: [{ name: 'Pellick C-900', priceMinor: 5100 }] }),
    ).toBeNull()
  })
})

describe('doubt of a first price at a store', () => {
  const elsewhere = [aSighting({ storeId: 'saltcote', priceMinor: 18399, seenOn: '2026-10-07' })]
  const first = (priceMinor: number, fields: Partial<DoubtCandidate> = {}) =>
    doubtOf(candidate({ storeId: 'upriver', priceMinor, ...fields }), elsewhere, context)

  it('rises where it is far from the usual price elsewhere', () => {
    expect(first(780)?.words).toBe('96 % below the usual price elsewhere, $183.99. A slipped decimal, or another size?')
    expect(first(40000)?.words).toMatch(/^117 % above the usual price elsewhere/)
    expect(first(4000, { condition: 'sale' })?.code).toBe('far_from_record')
  })
  it.each([
    ['near', 17000, {}],
    ['exactly twice', 36798, {}],
    ['a deep sale', 7000, { condition: 'sale' as const }],
    ['used', 780, { condition: 'used' as const }],
  ])('stays away where it is %s', (_name, priceMinor, fields) => {
    expect(first(priceMinor, fields)).toBeNull()
  })
  it('stays away where nothing is known elsewhere, and leaves a store with its own shelf price to that', () => {
    expect(doubtOf(candidate({ priceMinor: 780 }), [], context)).toBeNull()
    const own = aSighting({ priceMinor: 900, seenOn: '2026-10-01', storeId: 'upriver' })
    expect(doubtOf(candidate({ priceMinor: 780 }), [...elsewhere, own], context)).toBeNull()
  })
})

describe('doubt and who reports', () => {
  const [newcomer, careless, trusted] = [trust(0, 0), trust(1, 6), trust(20, 0)]
  const doubted = (fields: Partial<DoubtCandidate>, by: number, sightings = record) =>
    doubtOf(candidate(fields), sightings, { ...context, trust: by }) !== null

  it('is a newcomer’s as it is where nobody’s trust is known', () => {
    for (const priceMinor of [4200, 4600, 5500, 6000, 1400]) expect(doubted({ priceMinor }, newcomer)).toBe(code({ priceMinor }) !== null)
  })

  // Deviations of the pricing reference: 46 lies 2.840 off, 55 lies 3.246; limits of 3.5 for a newcomer, 2.5 and 4.5 at the ends.
  it.each([
    [4700, false, false, false],
    [4600, true, false, false],
    [5500, true, false, false],
    [5650, true, true, false],
    [6000, true, true, true],
  ])(
    'of %s comes to whom others disputed before a newcomer and to whom they confirmed after: %s, %s, %s',
    (priceMinor, early, usual, late) => {
      expect([careless, newcomer, trusted].map((by) => doubted({ priceMinor }, by))).toEqual([early, usual, late])
    },
  )

  it('lets a trusted member’s deep sale stand, and the slipped decimal of nobody', () => {
    const deep = { condition: 'sale' as const, priceMinor: 1350 }
    expect([careless, newcomer, trusted].map((by) => doubted(deep, by))).toEqual([true, true, false])
    for (const by of [careless, newcomer, trusted, 1]) expect(doubted({ priceMinor: 500 }, by)).toBe(true)
  })

  it('never comes to a price that agrees with the record, whoever reports it', () => {
    for (const by of [0, careless, newcomer, 1]) expect(doubted({ priceMinor: 5000 }, by)).toBe(false)
  })

  it('is lifted by two honest confirmations, though somebody disputed, and what was confirmed brings the trust back', () => {
    const odd = aSighting({
      priceMinor: 4600,
      seenOn: '2026-10-20',
      reporterId: 'wil',
      doubt: { code: 'far_from_record', words: '' },
      disputes: 1,
    })
    expect(isAccepted({ ...odd, confirmations: 1 })).toBe(false)
    expect(isAccepted({ ...odd, confirmations: 2 })).toBe(true)
    expect(trustByReporter([{ ...odd, confirmations: 2 }])('wil')).toBeGreaterThan(newcomer)
  })

  it('grows with trust, is a newcomer’s at 1, and has bounds', () => {
    const chance = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(chance, chance, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)]
        expect(doubtLeeway(less)).toBeLessThanOrEqual(doubtLeeway(more))
        expect(doubtLeeway(less)).toBeGreaterThanOrEqual(5 / 7)
        expect(doubtLeeway(more)).toBeLessThanOrEqual(9 / 7)
      }),
    )
    expect(doubtLeeway(newcomer)).toBe(1)
    expect(doubtLeeway(Number.NaN)).toBe(1)
  })

  it('never holds back a trusted member’s price that it lets a less trusted one’s through', () => {
    const chance = fc.double({ min: 0.01, max: 0.99, noNaN: true })
    const seen = fc.record({
      priceMinor: fc.integer({ min: 1, max: 100_000 }),
      condition: fc.constantFrom('shelf' as const, 'sale' as const),
    })
    fc.assert(
      fc.property(seen, chance, chance, fc.nat(7), (fields, a, b, known) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)]
        const sightings = record.slice(0, known)
        expect(doubted(fields, more, sightings) && !doubted(fields, less, sightings)).toBe(false)
      }),
    )
  })
})
