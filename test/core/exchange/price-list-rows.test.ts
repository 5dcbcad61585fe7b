import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { priceListValues, readPriceListRow, type PriceListRow } from '../../../core/exchange/price-list-rows.ts'

const ID = '0198c0de-1111-7222-8333-444455556666'
function read(cells: Record<string, string>, currency = 'USD') {
  const said: string[] = []
  const row = readPriceListRow(new Map(Object.entries(cells)), currency, (column, message) => said.push(`${column}: ${message}`))
  return { row, said }
}

describe('a row of a price list', () => {
  it('is read with its amounts in minor units, and what it leaves empty is not known', () => {
    const { row } = read({
      product: 'Torvane 150 W',
      price: '39,90',
      salePrice: '35',
      validFrom: '2026-10-20',
      saleUntil: '2026-10-31',
      gtin: '4006381-333931',
    })
    expect(row).toEqual<PriceListRow>({
      productId: null,
      gtin: '4006381333931',
      stockNumber: null,
      kind: null,
      product: 'Torvane 150 W',
      stockCount: null,
      currency: 'USD',
      validFrom: '2026-10-20',
      priceMinor: 3990,
      saleMinor: 3500,
      saleUntil: '2026-10-31',
    })
  })

  it.each<[Record<string, string>, RegExp]>([
    [{ price: '5' }, /^product: Nothing says which product/],
    [{ product: 'A', price: '0' }, /^price: Price is 0/],
    [{ product: 'A', price: '1,234' }, /^price: .*two ways/],
    [{ product: 'A' }, /^price: The price is empty/],
    [{ product: 'A', stock: '3', validFrom: '2026-10-20' }, /^price: The price is empty/],
    [{ product: 'A', price: '5', stock: '-1' }, /^stock: Stock is "-1"/],
    [{ product: 'A', price: '5', stock: '1000001' }, /^stock: .*up to 1000000/],
    [{ product: 'A', price: '5', validFrom: '2026-02-30' }, /^validFrom: "2026-02-30" is not a day/],
    [{ product: 'A', price: '5', validFrom: '1926-02-03' }, /^validFrom: .*Check the year/],
    [{ product: 'A', price: '5', salePrice: '5' }, /^salePrice: .*not below/],
    [{ product: 'A', price: '5', saleUntil: '2026-10-20' }, /^salePrice: There is a last day/],
    [{ product: 'A', price: '5', salePrice: '4', validFrom: '2026-10-20', saleUntil: '2026-10-19' }, /^saleUntil: .*before its first/],
    [{ product: 'A', price: '5', salePrice: '4', validFrom: '2026-10-20', saleUntil: '2027-10-22' }, /^saleUntil: .*At most 366/],
    [{ product: 'A', price: '5', currency: 'EUR' }, /^currency: "EUR" is not the currency/],
    [{ product: 'A', price: '5', stockNumber: 'x'.repeat(41) }, /^stockNumber: .*At most 40/],
    [{ productId: '12', price: '5' }, /^productId: "12" is not an id/],
  ])('with %o is refused by its column', (cells, words) => {
    const { row, said } = read(cells)
    expect(row).toBeNull()
    expect(said).toHaveLength(1)
    expect(said[0]).toMatch(words)
  })

  it.each(['USD', 'JPY', 'KWD'])('comes back from its export as it was, in %s', (currency) => {
    const days = fc.constantFrom('1990-01-01', '2026-10-20', '2199-12-31')
    const rows = fc.record({
      price: fc.integer({ min: 2, max: 1_000_000_000 }),
      day: days,
      stock: fc.option(fc.nat(1_000_000)),
      isSale: fc.boolean(),
    })
    fc.assert(
      fc.property(rows, ({ price, day, stock, isSale }) => {
        const sale = { saleMinor: isSale ? price - 1 : null, saleUntil: isSale ? day : null }
        const about = { productId: ID, gtin: null, stockNumber: 'T-1', kind: 'heater', product: 'Torvane 150 W' }
        const row = { ...about, stockCount: stock, currency, validFrom: day, priceMinor: price, ...sale }
        const cells = [...priceListValues(row)].flatMap(([heading, value]) => (value === null ? [] : [[heading, String(value)]]))
        expect(read(Object.fromEntries(cells) as Record<string, string>, currency)).toEqual({ row, said: [] })
      }),
    )
  })
})
