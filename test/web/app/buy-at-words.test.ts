import { describe, expect, it } from 'vitest'
import { sayBuyAt, type BuyAtLine } from '../../../web/app/watches/buy-at-words.ts'

const line: BuyAtLine = {
  title: 'Wait: buy at $188.68 or under with tax',
  payTodayMinor: 20_034,
  priceToBuyAtMinor: 18_868,
  buyAtTagMinor: 17_800,
  tagsAgree: true,
}
const said = (fields: Partial<BuyAtLine>, anywhere = true): string =>
  sayBuyAt({ state: 'told', line: { ...line, ...fields }, until: '2027-01-25', anywhere }, 'USD', 2026)

describe('the price to buy at beside a watch', () => {
  it('is told with tax, for the day and the place that are chosen, with what a tag shows then', () => {
    expect(said({})).toBe(
      'Today a new one costs $200.34 with tax at the least. The price to buy at, wanted by Jan 25, 2027, is $188.68 with tax. On the tag that is $178.00, before tax.',
    )
    expect(said({}, false)).toContain('costs $200.34 with tax there.')
  })

  it('names no tag where the tag shows that price, and none in particular where tags differ', () => {
    expect(said({ buyAtTagMinor: 18_868 })).not.toContain('tag')
    const mixed = said({ tagsAgree: false })
    expect(mixed).toContain('What the tag shows then differs by store')
    expect(mixed).not.toContain('178.00')
  })

  it('says that it can be bought now where today’s price is no more, under the words of the product’s page', () => {
    expect(said({ title: 'Buy when convenient', payTodayMinor: 18_868 })).toContain(
      'Buy when convenient: that is no more than the price to buy at, $188.68 with tax, if it is wanted by Jan 25, 2027: it can be bought now.',
    )
  })

  it('says why there is none', () => {
    expect(said({ payTodayMinor: null }, false)).toBe(
      'Nobody has reported a price of a new one there within 180 days: there is no price to buy at yet.',
    )
    const none = ['no_day', 'nowhere', 'busy', 'failed', 'not_learned', 'own_list', 'each_its_own'] as const
    const words = none.map((state) => sayBuyAt({ state }, 'USD', 2026))
    expect(new Set(words).size).toBe(none.length)
    for (const one of words) expect(one).toMatch(/price to buy at|Each product has its own/)
  })
})
