import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { likelyPaid } from '../../../../core/pricing/outlook/likely.ts'
import { sayAdvice, type LineOutlook } from '../../../../core/pricing/outlook/outlook.ts'

const line = {
  productId: 'filter',
  quantity: 1,
  advice: 'wait',
  noHurryUntil: null,
  saleLastDay: null,
  payTodayMinor: 18900,
  onSale: false,
  regularMinor: 18900,
  regularAtDateMinor: 18900,
  expectedPaidMinor: 15800,
  paid10Minor: 14200,
  paid90Minor: 18900,
  chanceOfSale: 0.7,
  likely: { many: 2, of: 3, paidMinor: 16000 },
  likelyTagMinor: 16000,
  priceToBuyAtMinor: 17800,
  buyAtTagMinor: 17800,
  tagsAgree: true,
  nextSaleTime: null,
  basis: 'record',
} satisfies Omit<LineOutlook, 'priceToBuyAt'>
const reader = { currency: 'USD', asOf: '2026-11-26', until: '2027-03-12', weekWaitMinor: 500, withTax: false }

describe('advice in words', () => {
  it('says how likely what price is, and at which to buy', () => {
    expect(sayAdvice(line, reader)).toEqual({
      title: 'Wait: buy at $178.00 or under',
      reason: 'About 2 in 3 to find it at $160.00 or less by Mar 12, 2027.',
      words: 'About 2 in 3 to find it at $160.00 or less by Mar 12, 2027. A week’s wait is counted as $5.00.',
    })
  })

  it('tells prices of one sort: the tag’s, of one, also where what is paid is with tax and for all', () => {
    const two = { ...line, quantity: 2, priceToBuyAtMinor: 37_736, likely: { many: 2, of: 3, paidMinor: 33_920 } }
    const { title, words } = sayAdvice(two, { ...reader, withTax: true })
    expect(title).toBe('Wait: buy at $178.00 or under')
    expect(words).toContain('About 2 in 3 to find it at $160.00 or less by Mar 12, 2027. Both prices are those of one on its tag.')
    expect(words).not.toMatch(/377|339/)
  })

  it('tells all prices with tax where it is bought at any store, and what a tag shows then', () => {
    // 178.00 and 160.00 with 6 % tax.
    const paid = { ...line, priceToBuyAtMinor: 18_868, likely: { many: 2, of: 3, paidMinor: 16_960 } }
    const [asked, anywhere] = [{ ...reader, withTax: true }, { anyStore: true }]
    const { title, words } = sayAdvice(paid, asked, anywhere)
    expect(title).toBe('Wait: buy at $188.68 or under with tax')
    expect(words).toContain('About 2 in 3 to pay $169.60 or less with tax by Mar 12, 2027. On the tag that is $178.00, before tax.')
    expect(words).not.toContain('160.00')
    const mixed = sayAdvice({ ...paid, likelyTagMinor: null, tagsAgree: false }, asked, anywhere)
    expect(mixed.title).toBe(title)
    expect(mixed.words).toContain('What the tag shows then differs by store')
    expect(mixed.words).not.toContain('178.00')
    const included = sayAdvice({ ...paid, buyAtTagMinor: 18_868 }, asked, anywhere)
    expect([included.title, included.words.includes('tag')]).toEqual([title, false])
    const two = sayAdvice({ ...paid, quantity: 2, priceToBuyAtMinor: 37_737 }, asked, anywhere)
    expect([two.title, two.words]).toEqual([
      title,
      expect.stringContaining('The price to buy at is that of one. On the tag that is $178.00'),
    ])
  })

  it('says which is which where tags differ from store to store, and tells a share where no amount is likely', () => {
    const mixed = sayAdvice({ ...line, likelyTagMinor: null }, { ...reader, withTax: true }).words
    expect(mixed).toContain('to pay $160.00 or less with tax by Mar 12, 2027. The price to buy at is that on the tag.')
    // 1 − 15800 / 18900 is 16.4 %.
    const { reason } = sayAdvice({ ...line, likely: null, likelyTagMinor: null }, { ...reader, withTax: true })
    expect(reason).toBe('Waiting until Mar 12, 2027 saves about 16 % on average.')
  })

  it('names the sale time that is not waited for, and none behind the day', () => {
    const calm = { ...line, advice: 'buy_when_convenient' } as const
    const near = sayAdvice(calm, reader, { nextSaleTime: { name: 'Black week', first: '2026-11-27' } })
    expect(near.reason).toBe(
      'Black week begins Nov 27, but waiting for it, or until Mar 12, 2027, is not expected to save enough to be worth it.',
    )
    expect(sayAdvice(calm, reader, { nextSaleTime: { name: 'Black week', first: '2026-11-20' } }).reason).toContain(
      'Black week runs already',
    )
    expect(sayAdvice(calm, reader, { nextSaleTime: { name: 'Spring fair', first: '2027-03-13' } }).reason).not.toContain('Spring fair')
    const guess = sayAdvice({ ...calm, basis: 'too_little' }, reader, { nextSaleTime: { name: 'Black week', first: '2026-11-27' } })
    expect(guess.reason).toBe('Black week begins Nov 27, but too little is recorded here to say what it brings.')
  })

  it('says why a later day may come out dearer, and nothing of a shelf price that stays', () => {
    const rising = sayAdvice({ ...line, regularAtDateMinor: 19_656 }, reader).words
    expect(rising).toContain('The shelf price is expected to rise by about 4 % by then: that is why a longer wait can come out dearer.')
    expect(sayAdvice({ ...line, regularAtDateMinor: 19_050 }, reader).words).not.toContain('shelf price')
    expect(sayAdvice({ ...line, regularAtDateMinor: 18_000 }, reader).words).toContain('is expected to fall by about 5 % by then.')
  })

  it('says what it rests on, and that waiting was taken to be free', () => {
    const { words } = sayAdvice({ ...line, basis: 'kind' }, { ...reader, weekWaitMinor: 0 })
    expect(words).toContain('This rests on products of its kind. Waiting is taken to cost nothing, so that only the date ends it.')
  })

  it('names the last day of a sale that runs', () => {
    expect(sayAdvice({ ...line, advice: 'no_hurry', noHurryUntil: '2026-11-29' }, reader).title).toBe('No hurry until Sun, Nov 29')
  })

  it('says that a sale which outlasts the date holds to the date', () => {
    const lasting = { ...line, advice: 'no_hurry', noHurryUntil: '2027-03-12', saleLastDay: '2027-03-20' } as const
    expect(sayAdvice(lasting, reader)).toEqual({
      title: 'No hurry until Fri, Mar 12, 2027',
      reason: 'The sale price holds to that day, by which it is to be bought.',
      words: 'The sale price holds to that day, by which it is to be bought.',
    })
  })

  it('says that a sale which ends today holds for today only', () => {
    const { words } = sayAdvice({ ...line, advice: 'buy_now', saleLastDay: '2026-11-26' }, reader)
    expect(words).toContain('It is on sale for today only: waiting is not expected')
    expect(words).not.toContain('not known')
  })

  it('says that the date is today, whatever is recorded', () => {
    for (const basis of ['record', 'too_little'] as const)
      expect(sayAdvice({ ...line, advice: 'buy_now', basis }, { ...reader, until: reader.asOf })).toEqual({
        title: 'Buy now',
        reason: 'Today is the day it is to be bought by.',
        words: 'Today is the day it is to be bought by. It costs $189.00 today.',
      })
  })

  it('says of a sale that too little is recorded to tell what comes after it', () => {
    const guess = { ...line, basis: 'too_little' } as const
    const words = [
      sayAdvice({ ...guess, advice: 'buy_now' }, reader).words,
      sayAdvice({ ...guess, advice: 'no_hurry', noHurryUntil: '2026-11-29' }, reader).words,
    ]
    for (const one of words) expect(one).toContain('too little is recorded here')
    for (const one of words) expect(one).not.toContain('expected')
  })

  it('says buy now, or when convenient, and why', () => {
    expect(sayAdvice({ ...line, advice: 'buy_now' }, reader).words).toContain('on sale to a day that is not known')
    expect(sayAdvice({ ...line, advice: 'buy_when_convenient' }, reader).words).toContain('not expected to save enough')
    expect(sayAdvice({ ...line, advice: 'buy_when_convenient', basis: 'too_little' }, reader).words).toContain('Too little is recorded')
  })

  it('says that no price is known rather than an amount', () => {
    expect(sayAdvice({ ...line, payTodayMinor: NaN }, reader)).toMatchObject({
      title: 'No price known',
      words: expect.stringContaining('Nobody has reported'),
    })
  })
})

describe('a product that is reported as used alone', () => {
  it('is told with what was reported, and not as one that nobody reported', () => {
    const used = { priceMinor: 4500, seenOn: '2026-11-20' }
    const { title, words } = sayAdvice({ ...line, payTodayMinor: NaN }, reader, { used })
    expect([title, words]).toEqual(['No price known', expect.stringContaining('Reported only as used, $45.00 on Nov 20.')])
    expect(words).not.toContain('Nobody')
  })
})

describe('the share that is told', () => {
  it('is the largest that pays less than today', () => {
    expect(likelyPaid(Float64Array.of(80, 70, 90, 100), 100)).toEqual({ many: 3, of: 4, paidMinor: 90 })
    expect(likelyPaid(Float64Array.of(80, 100, 100, 100), 100)).toEqual({ many: 1, of: 4, paidMinor: 80 })
  })

  it('is, where one in four pays no more than the price to buy at, the largest that does', () => {
    const paid = Float64Array.of(60, 70, 95, 97)
    expect(likelyPaid(paid, 100)).toEqual({ many: 9, of: 10, paidMinor: 97 })
    expect(likelyPaid(paid, 100, 80)).toEqual({ many: 1, of: 2, paidMinor: 70 })
  })

  it('is never of a price above the one to buy at', () => {
    expect(likelyPaid(Float64Array.of(60, 70, 95, 97), 100, 50)).toBeNull()
    const amount = fc.double({ min: 1, max: 20_000, noNaN: true })
    fc.assert(
      fc.property(fc.array(amount, { minLength: 4, maxLength: 40 }), amount, amount, (paid, today, buyAt) => {
        const likely = likelyPaid(Float64Array.from(paid), today, buyAt)
        if (likely === null) return
        expect(likely.paidMinor).toBeLessThanOrEqual(buyAt)
        expect(paid.filter((one) => one <= likely.paidMinor).length).toBeGreaterThanOrEqual((likely.many / likely.of) * paid.length)
      }),
      { numRuns: 200 },
    )
  })

  it('is none where hardly anybody does', () => {
    expect(likelyPaid(Float64Array.of(100, 100, 99, 100), 100)).toBeNull()
  })
})
