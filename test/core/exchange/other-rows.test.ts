import { describe, expect, it } from 'vitest'
import { plainAmount } from '../../../core/exchange/cell-reader.ts'
import { readCustomerRow } from '../../../core/exchange/customer-rows.ts'
import { readJsonRow } from '../../../core/exchange/json-cells.ts'
import { headingKey } from '../../../core/exchange/column.ts'
import { readSightingRow, SIGHTING_COLUMNS, sightingValues } from '../../../core/exchange/sighting-rows.ts'

const SEEN = {
  product: 'Torvane 150 W',
  store: 'Saltcote',
  condition: 'Sale',
  price: '1,049.50',
  seenOn: '2026-10-20',
  lastDay: '2026-10-31',
}
function sighting(change: Record<string, string | undefined> = {}, currency = 'USD') {
  const said: string[] = []
  const cells = Object.entries({ ...SEEN, ...change }).filter((entry): entry is [string, string] => entry[1] !== undefined)
  const row = readSightingRow(
    new Map(cells),
    'EUR',
    () => currency,
    (column, message) => said.push(`${column}: ${message}`),
  )
  return { row, said }
}

describe('a sighting of a file', () => {
  it('is read with its price in minor units', () => {
    expect(sighting().row).toMatchObject({
      condition: 'sale',
      priceMinor: 104950,
      lastDay: '2026-10-31',
      evidence: 'none',
      id: null,
      note: null,
    })
  })

  it.each([
    [{ price: '1,049' }, /^price: .*two ways/],
    [{ price: '0' }, /^price: Price is 0/],
    [{ seenOn: '2026-02-30' }, /^seenOn: "2026-02-30" is not a day/],
    [{ condition: 'cheap' }, /^condition: "cheap" is not known/],
    [{ condition: 'shelf' }, /^lastDay: A last day belongs to a sale/],
    [{ lastDay: '2026-10-01' }, /^lastDay: The last day 2026-10-01 is before/],
    [{ lastDay: '2028-10-01' }, /^lastDay: .*At most 366/],
    [{ currency: 'EUR' }, /^currency: EUR is not the currency of .*, whose prices are in USD/],
    [{ store: undefined }, /^store: Store is empty\. Every sighting needs it\./],
    [{ printedRegular: '1,000.00' }, /^printedRegular: The regular price on the tag is lower than the price/],
    [{ id: '12' }, /^id: "12" is not an id of ours/],
  ])('with %o is refused by its column', (change, words) => {
    const { row, said } = sighting(change)
    expect(row).toBeNull()
    expect(said).toHaveLength(1)
    expect(said[0]).toMatch(words)
  })

  it.each(['USD', 'JPY', 'KWD'])('comes back from its export as it was, in %s', (currency) => {
    const { row } = sighting({ price: plainAmount(1_234_567, currency), printedRegular: plainAmount(2_000_000, currency) }, currency)
    const values = sightingValues({ ...row!, id: '0198c0de-1111-7222-8333-444455556666', counts: true })
    const cells = [...values].flatMap(([heading, value]): Array<[string, string]> => (value === null ? [] : [[heading, String(value)]]))
    const back = readSightingRow(
      new Map(cells),
      'EUR',
      () => currency,
      (_column, message) => expect(message).toBe(''),
    )
    expect(back).toEqual({ ...row, id: '0198c0de-1111-7222-8333-444455556666' })
    expect(row?.priceMinor).toBe(1_234_567)
  })
})

describe('a customer of a file', () => {
  const reading = (cells: Record<string, string>): [object | null, string[]] => {
    const said: string[] = []
    return [readCustomerRow(new Map(Object.entries(cells)), (column, message) => said.push(`${column}: ${message}`)), said]
  }
  it('has a name, and nothing longer than its form takes', () => {
    expect(reading({ name: 'Ines Halberg', reach: '555-0100' })).toEqual([
      { id: null, name: 'Ines Halberg', reach: '555-0100', note: '' },
      [],
    ])
    expect(reading({ reach: '555-0100' })).toEqual([null, ['name: Name is empty. Every customer needs it.']])
    expect(reading({ name: 'A', note: 'x'.repeat(2001) })[1]).toEqual(['note: Note has 2001 characters. At most 2000 fit.'])
  })
})

describe('an object of a JSON file', () => {
  const known = new Map(SIGHTING_COLUMNS.map((column) => [headingKey(column.heading), column]))
  const reading = (item: string): [string[][] | string, string[]] => {
    const said: string[] = []
    const read = readJsonRow(item, known, (column, message) => said.push(`${column}: ${message}`))
    return [read.ok ? [...read.value] : read.refusal.words, said]
  }
  it('has the cells that a row of CSV would have, nothing and null being empty', () => {
    expect(reading('{"product": " Torvane ", "price": 4.5, "counts": true, "note": null, "seen_on": ""}')).toEqual([
      [['product', 'Torvane'], ['price', '4.5'], ['counts', 'yes']],
      [],
    ]) // prettier-ignore
  })
  it('says which field is unknown, twice there, or no plain value', () => {
    expect(reading('{"colour": "red", "note": ["x"], "seenOn": "2026-10-20", "Seen-On": "x", "__proto__": {"a": 1}}')[1]).toEqual([
      'colour: "colour" is not a field of these rows. Check the spelling, or leave it out.',
      'note: note is a list or an object. Write plain text, a number, true or false.',
      'seenOn: The field seenOn stands twice. Take one out.',
      '__proto__: "__proto__" is not a field of these rows. Check the spelling, or leave it out.',
    ])
    expect(reading('[1]')[0]).toContain('no object')
    expect(reading('{"product": }')[0]).toContain('not well-formed JSON')
  })
})
