import jsonld from 'jsonld'
import { fc, it as property } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { openPriceFeed, type OpenPrice } from '../../../core/other-clubs/open-prices.ts'
import { readOpenPrices } from '../../../core/other-clubs/read-open-prices.ts'

const price = (fields: Partial<OpenPrice> = {}): OpenPrice => ({
  originId: 'q1w2e3r4t5y6u7i8o9p0aa',
  // A worked example of GS1's General Specifications.
  product: { name: 'Longstem 200', maker: 'Tarnwick', gtin: '6291041500213', kind: 'heater' },
  store: { key: 'st-1', name: 'Pond & Pine', kind: 'local', town: 'Alder Bay', country: 'US' },
  condition: 'sale',
  priceMinor: 4999,
  printedRegularMinor: 5999,
  currency: 'USD',
  seenOn: '2026-11-20',
  lastDay: '2026-11-30',
  includesTax: false,
  ...fields,
})
const read = (document: unknown) => {
  const reading = readOpenPrices(JSON.parse(JSON.stringify(document)))
  if (!reading.ok) throw new Error(reading.words)
  return reading.value
}

/** Stands in for the context that schema.org serves: every plain word is one of its vocabulary (its own context says the same with `@vocab`). */
const documentLoader = async (url: string) => ({
  contextUrl: undefined,
  documentUrl: url,
  document: { '@context': { '@vocab': 'https://schema.org/' } },
})

describe('the open feed', () => {
  it('is linked data of schema.org to a general reader of it: JSON-LD 1.1, expansion', async () => {
    const [feed] = await jsonld.expand(openPriceFeed('Reed Club', '2026-11-26', [price()]), {
      documentLoader,
    })
    const term = (name: string) => `https://schema.org/${name}`
    const only = (node: unknown, name: string) => (node as Record<string, unknown[]>)[term(name)]?.[0]
    expect(feed?.['@type']).toEqual([term('DataFeed')])
    const offer = only(feed, 'dataFeedElement') as Record<string, unknown>
    expect(offer['@type']).toEqual([term('Offer')])
    expect(only(only(offer, 'itemOffered'), 'gtin')).toEqual({ '@value': '6291041500213' })
    expect(only(only(offer, 'priceSpecification'), 'price')).toEqual({ '@value': '49.99' })
    expect(only(only(offer, 'priceSpecification'), 'priceType')).toEqual({ '@value': term('SalePrice') })
  })

  it('tells nobody’s name, note or hour', () => {
    const text = JSON.stringify(openPriceFeed('Reed Club', '2026-11-26', [price()]))
    expect(text).not.toMatch(/reporter|note|T\d\d:/)
  })

  const words = fc.stringMatching(/^[A-Za-z][A-Za-z &'-]{0,30}[a-z]$/)
  property.prop([
    fc.record({
      originId: fc.stringMatching(/^[\w-]{8,64}$/),
      product: fc.record({
        name: words,
        maker: fc.option(words),
        gtin: fc.constantFrom('6291041500213', null),
        kind: fc.constantFrom('heater' as const, 'tank' as const, null),
      }),
      store: fc.record({
        key: fc.stringMatching(/^[\w-]{1,64}$/),
        name: words,
        kind: fc.constantFrom('local' as const, 'online' as const),
        town: fc.option(words),
        country: fc.stringMatching(/^[A-Z]{2}$/),
      }),
      condition: fc.constantFrom('shelf' as const, 'sale' as const, 'clearance' as const, 'used' as const),
      priceMinor: fc.integer({ min: 1, max: 1_000_000_000 }),
      printedRegularMinor: fc.constant(null),
      currency: fc.constantFrom('USD', 'JPY', 'KWD'),
      seenOn: fc.constant('2026-11-20'),
      lastDay: fc.constantFrom(null, '2026-11-20', '2026-12-24'),
      includesTax: fc.boolean(),
    }),
  ])('is read back as it was told, whatever the currency', (told: OpenPrice) => {
    expect(read(openPriceFeed('Reed Club', '2026-11-26', [told])).prices).toEqual([told])
  })

  it('tells a shelf price under its own printed one as the sale that it is', () => {
    expect(read(openPriceFeed('Reed Club', '2026-11-26', [price({ condition: 'shelf', lastDay: null })])).prices[0]?.condition).toBe('sale')
  })
})

describe('reading another club’s feed', () => {
  const feed = (...offers: unknown[]) => ({
    '@context': 'https://schema.org',
    '@type': 'DataFeed',
    name: 'Reed Club',
    dataFeedElement: offers,
  })
  const offer = JSON.parse(JSON.stringify(openPriceFeed('Reed Club', '2026-11-26', [price()]))).dataFeedElement[0]
  const withPrice = (fields: object) => ({ ...offer, priceSpecification: [{ ...offer.priceSpecification[0], ...fields }] })

  it.each([
    ['no offer at all', 'nonsense'],
    ['no price', { ...offer, priceSpecification: [] }],
    ['a price of nothing', withPrice({ price: '0.00' })],
    ['a price below nothing', withPrice({ price: '-4.00' })],
    ['more decimals than the currency has', withPrice({ price: '4.999' })],
    ['no currency', withPrice({ priceCurrency: 'dollars' })],
    ['a store key that no address can hold', { ...offer, seller: { ...offer.seller, identifier: 'bad\u0000key' } }],
    ['a store key that leads elsewhere', { ...offer, seller: { ...offer.seller, identifier: '..' } }],
    ['a day that is none', { ...offer, validFrom: '2026-02-30' }],
    ['a condition that is none', { ...offer, itemCondition: 'https://schema.org/DamagedCondition' }],
    ['a name of control characters', { ...offer, itemOffered: { name: 'a\u0000b' } }],
    [
      'two currencies in one offer',
      { ...offer, priceSpecification: [offer.priceSpecification[0], { ...offer.priceSpecification[0], priceCurrency: 'CAD' }] },
    ],
  ])('leaves an offer out that has %s, and counts it', (_, wrong) => {
    const reading = read(feed(wrong, offer))
    expect([reading.prices.length, reading.leftOut]).toEqual([1, 1])
  })

  it('takes the first of two that bear one id', () => {
    const reading = read(feed(offer, withPrice({ price: '1.00' })))
    expect(reading.prices.map(({ priceMinor }) => priceMinor)).toEqual([4999])
    expect(reading.leftOut).toBe(1)
  })

  it('takes a number for a price, and a wrong trade item number for none', () => {
    const [one] = read(feed({ ...withPrice({ price: 49.5 }), itemOffered: { name: 'Longstem', gtin: '6291041500214' } })).prices
    expect([one?.priceMinor, one?.product.gtin]).toEqual([4950, null])
  })

  it('refuses what is no feed, and one too long, in words', () => {
    expect(readOpenPrices([1, 2])).toMatchObject({ ok: false })
    expect(readOpenPrices({ '@type': 'Offer' })).toMatchObject({ ok: false, words: expect.stringContaining('not a feed of prices') })
    expect(readOpenPrices(feed(...Array.from({ length: 5_001 }, () => offer)))).toMatchObject({
      ok: false,
      words: expect.stringContaining('5000'),
    })
  })
})
