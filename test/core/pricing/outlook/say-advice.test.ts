import { describe, expect, it } from 'vitest'
import { likelyPaid } from '../../../../core/pricing/outlook/likely.ts'
import { sayAdvice, type LineOutlook } from '../../../../core/pricing/outlook/outlook.ts'

const line = {
  productId: 'filter',
  advice: 'wait',
  noHurryUntil: null,
  saleLastDay: null,
  payTodayMinor: 18900,
  expectedPaidMinor: 15800,
  paid10Minor: 14200,
  paid90Minor: 18900,
  chanceOfSale: 0.7,
  likely: { many: 2, of: 3, paidMinor: 16000 },
  priceToBuyAtMinor: 17800,
  nextSaleTime: null,
  basis: 'record',
} satisfies Omit<LineOutlook, 'priceToBuyAt'>
const reader = { currency: 'USD', asOf: '2026-11-26', until: '2027-03-12', waitingCosts: true }

describe('advice in words', () => {
  it('says how likely what price is, and at which to buy', () => {
    expect(sayAdvice(line, reader)).toEqual({
      title: 'Wait',
      words: 'About 2 in 3 to pay $160.00 or less by Mar 12, 2027; buy at $178.00 or under.',
    })
  })

  it('says what it rests on, and that waiting was taken to be free', () => {
    const { words } = sayAdvice({ ...line, basis: 'kind' }, { ...reader, waitingCosts: false })
    expect(words).toContain('This rests on products of its kind. Waiting is taken to cost nothing.')
  })

  it('names the last day of a sale that runs', () => {
    expect(sayAdvice({ ...line, advice: 'no_hurry', noHurryUntil: '2026-11-29' }, reader).title).toBe('No hurry until Sun, Nov 29')
  })

  it('says that a sale which outlasts the date holds to the date', () => {
    const lasting = { ...line, advice: 'no_hurry', noHurryUntil: '2027-03-12', saleLastDay: '2027-03-20' } as const
    expect(sayAdvice(lasting, reader)).toEqual({
      title: 'No hurry until Fri, Mar 12, 2027',
      words: '$189.00 holds to that day, by which it is to be bought.',
    })
  })

  it('says that a sale which ends today holds for today only', () => {
    const { words } = sayAdvice({ ...line, advice: 'buy_now', saleLastDay: '2026-11-26' }, reader)
    expect(words).toContain('$189.00 is a sale price that holds for today only.')
    expect(words).not.toContain('not known')
  })

  it('says that the date is today, whatever is recorded', () => {
    for (const basis of ['record', 'too_little'] as const)
      expect(sayAdvice({ ...line, advice: 'buy_now', basis }, { ...reader, until: reader.asOf })).toEqual({
        title: 'Buy now',
        words: 'Today is the day it is to be bought by. It costs $189.00 today.',
      })
  })

  it('says of a sale that too little is recorded to tell what comes after it', () => {
    const guess = { ...line, basis: 'too_little' } as const
    const words = [
      sayAdvice({ ...guess, advice: 'buy_now' }, reader).words,
      sayAdvice({ ...guess, advice: 'no_hurry', noHurryUntil: '2026-11-29' }, reader).words,
    ]
    for (const one of words) expect(one).toContain('Too little is recorded here')
    for (const one of words) expect(one).not.toContain('expected')
  })

  it('says buy now, or when convenient, and why', () => {
    expect(sayAdvice({ ...line, advice: 'buy_now' }, reader).words).toContain('$189.00 is a sale price whose last day is not known.')
    expect(sayAdvice({ ...line, advice: 'buy_when_convenient' }, reader).words).toContain('not expected to save enough')
    expect(sayAdvice({ ...line, advice: 'buy_when_convenient', basis: 'too_little' }, reader).words).toContain('Too little is recorded')
  })

  it('says that no price is known rather than an amount', () => {
    expect(sayAdvice({ ...line, payTodayMinor: NaN }, reader).title).toBe('No price known')
  })
})

describe('the share that is told', () => {
  it('is the largest that pays less than today', () => {
    expect(likelyPaid(Float64Array.of(80, 70, 90, 100), 100)).toEqual({ many: 3, of: 4, paidMinor: 90 })
    expect(likelyPaid(Float64Array.of(80, 100, 100, 100), 100)).toEqual({ many: 1, of: 4, paidMinor: 80 })
  })

  it('is none where hardly anybody does', () => {
    expect(likelyPaid(Float64Array.of(100, 100, 99, 100), 100)).toBeNull()
  })
})
