import { describe, expect, it } from 'vitest'
import { csvColumns } from '../../../core/catalog/csv-columns.ts'
import { CSV_EXAMPLES, exampleCells } from '../../../core/catalog/csv-example.ts'
import { KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import { columnsOf, rowWords } from '../../../core/exchange/columns-of.ts'
import { readHeading } from '../../../core/exchange/heading.ts'
import { productKeys, readProductRow, type ProductRow } from '../../../core/exchange/product-rows.ts'

const ID = '0198c0de-1111-7222-8333-444455556666'
/** A row read, with what was said about it as "column: message". */
function reading(cells: Record<string, string>, kind: Kind | null = 'heater'): { row: ProductRow | null; said: string[] } {
  const said: string[] = []
  const row = readProductRow(new Map(Object.entries(cells)), kind, (column, message) => said.push(`${column}: ${message}`))
  return { row, said }
}
const headings = (cells: string[], kind: Kind | null = 'heater') =>
  readHeading(cells, columnsOf('catalog', kind), rowWords('catalog', kind))

describe('a product of a file', () => {
  it('guesses the kind that was meant by a short text alone', () => {
    expect(reading({ kind: 'cansiter fliter', name: 'X' }, null).said[0]).toMatch(/is not a kind\. Was "filter" meant\?$/)
    const long = Array.from({ length: 8 }, () => 'fliter').join(' ') + ' '.repeat(6)
    expect(reading({ kind: long.slice(0, 60), name: 'X' }, null).said[0]).toMatch(/ meant\?$/)
    expect(reading({ kind: long.slice(0, 60) + 's', name: 'X' }, null).said[0]).toMatch(/is not a kind\. Write one of the/)
  })

  it('is read with its spec, an empty cell being not known', () => {
    expect(reading({ name: 'Torvane 150 W', gtin: '6291041500213', powerW: '150', adjustable: 'yes' }).row).toMatchObject({
      name: 'Torvane 150 W',
      gtin: '6291041500213',
      spec: { powerW: 150, adjustable: true },
      archived: null,
    })
    expect(reading({ name: 'Torvane 50 W' }).row).toMatchObject({ gtin: null, spec: {} })
  })

  it('takes decimal commas, ids in any case, its own kind before the chosen one, and whether it is archived', () => {
    const cells = { kind: 'Tank', name: 'Halden 90', lengthMm: '900', widthMm: '450', heightMm: '450', emptyMassKg: '28,5', id: ID.toUpperCase(), archived: 'Yes' } // prettier-ignore
    const { row, said } = reading(cells)
    expect(said).toEqual([])
    expect(row).toMatchObject({ kind: 'tank', id: ID, archived: true, spec: { lengthMm: 900, emptyMassKg: 28.5 } })
  })

  it('has parts by name or id where it is a kit', () => {
    const { row } = reading({ name: 'Halden set', parts: `Halden 90; Torvane 75 W x 2; ${ID}` }, 'kit')
    expect(row?.parts).toEqual([
      { product: 'Halden 90', quantity: 1 },
      { product: 'Torvane 75 W', quantity: 2 },
      { product: ID, quantity: 1 },
    ])
  })

  it('needs a kind, and no cell under a column of another one', () => {
    expect(reading({ name: 'Nothing' }, null).said).toEqual([
      'kind: The kind is empty. Write one, or choose the kind of every row beside the file.',
    ])
    expect(reading({ name: 'Torvane', glassMm: '8' }).said).toEqual([
      'glassMm: "glassMm" is not a column of a heater. Leave the cell empty.',
    ])
  })

  it.each([
    ['heeter', 'Was "heater" meant?'],
    ['test-kitt', 'Was "test kit" meant?'],
    ['cansiter fliter', 'Was "filter" meant?'],
    ['pump house', 'Was "air pump" or "circulation pump" or "plumbing" meant?'],
    ['xyz', 'Write one of the 36 that the page of formats lists, like "tank", "heater", "filter".'],
  ])('names the kinds that "%s" may have meant by their plain names, and never all of them', (kind, words) =>
    expect(reading({ kind, name: 'X' }, null).said).toEqual([`kind: "${kind}" is not a kind. ${words}`]),
  )

  it.each(['circulation_pump', 'Circulation pump', 'CO2 system', 'co2'])('takes the kind "%s" as it is told and as it is written', (kind) =>
    expect(reading({ kind, name: 'X' }, null).said).toEqual([]),
  )

  it('is named once a file by name without regard to case, and by number, 12 and 13 digits being one', () => {
    const keys = (cells: Record<string, string>) => productKeys(reading(cells).row!).map(([column, , key]) => `${column} ${key}`)
    expect(keys({ name: 'Torvane', gtin: '036000291452' })).toEqual(keys({ name: 'TORVANE', gtin: '0036000291452' }))
    expect(keys({ name: 'Torvane', id: ID })).toEqual([`id ${ID}`, 'name heater torvane'])
  })
})

describe('a faulty row', () => {
  it('names column, limit and fix, every fault of it', () => {
    const { row, said } = reading({ gtin: '6291041500214', powerW: '40000', adjustable: 'perhaps' })
    expect(row).toBeNull()
    expect(said).toEqual([
      'gtin: GTIN "6291041500214" is not right: 8, 12, 13 or 14 digits, the last one checks the others, leading zeros kept.',
      'powerW: Power is 40000 W. For a heater it is between 5 and 1000 W. Check the figure and its unit.',
      'adjustable: Adjustable is "perhaps". Write yes or no, or leave it empty.',
      'name: Name is empty. Every heater needs it.',
    ])
  })

  it.each([
    ['150 W', 'Power is "150 W". Write a plain number of W, without the unit.'],
    ['1,500', 'Power is "1,500", which can be read two ways. Write it without the thousands sign.'],
    ['Infinity', 'Power is "Infinity". Write a plain number of W, without the unit.'],
    ['0x10', 'Power is "0x10". Write a plain number of W, without the unit.'],
  ])('refuses "%s" as watts', (powerW, message) => {
    expect(reading({ name: 'Torvane', powerW }).said).toEqual([`powerW: ${message}`])
  })

  it('is refused where a spreadsheet shortened the barcode', () => {
    expect(reading({ name: 'Torvane', gtin: '6.29104E+12' }).said[0]).toContain('format the column as text')
  })

  it('is refused where the file is not UTF-8, or holds control characters', () => {
    for (const name of ['K\ufffdhler', 'a\u0000b']) expect(reading({ name }).said[0]).toContain('Save the file as UTF-8')
  })
})

describe('a heading', () => {
  it('is read in any order, without regard to case, spaces, dashes and underscores', () => {
    expect(headings(['POWER W', ' Name', 'cord_mm', 'GTIN'])).toEqual({ ok: true, value: ['powerW', 'name', 'cordMm', 'gtin'] })
  })

  it.each([
    [['name', 'name', 'powerW'], 'The column name stands twice. Take one out.'],
    [['maker', 'powerW'], 'The column name is missing. It is needed for a heater.'],
    [[''], 'The file has no heading. Its first line names the columns; take the template.'],
    [[], 'The file has no heading. Its first line names the columns; take the template.'],
    [['name', ''], 'Column 2 has no heading. Name it, or take it out.'],
  ])('%j is refused: %s', (cells, message) => {
    expect(headings(cells)).toMatchObject({ ok: false, refusal: { faults: [{ row: 1, message }] } })
  })

  it('names an unknown column and the ones there are', () => {
    const read = headings(['name', 'watts'])
    expect(read.ok ? '' : read.refusal.faults[0]?.message).toMatch(/^"watts" is not a column of a heater\..*powerW/)
  })

  it('of more columns than any file of ours is refused without looking at them', () => {
    const read = headings(Array.from({ length: 50_000 }, () => 'name'))
    expect(read.ok ? [] : read.refusal.faults.map(({ message }) => message)).toEqual(['The heading has 50000 columns. At most 400 are read; take the template.']) // prettier-ignore
  })

  it('of every kind at once has room below that limit', () => {
    expect(columnsOf('catalog', null).length).toBeLessThan(400)
    expect(headings(columnsOf('catalog', null).map(({ heading }) => heading), null)).toMatchObject({ ok: true }) // prettier-ignore
  })
})

describe('the template', () => {
  it.each(KINDS)('of a %s has an example that can be read, but not stored by mistake', (kind) => {
    expect(headings(csvColumns(kind).map(({ heading }) => heading), kind)).toMatchObject({ ok: true }) // prettier-ignore
    const cells = exampleCells(kind)
    expect(reading(cells, kind).said).toEqual(['name: This is the example of the template. Take the row out.'])
    const read = reading({ ...cells, name: (cells['name'] ?? '').replace('Example: ', '') }, kind)
    expect(read.said).toEqual([])
    expect(read.row?.spec).toEqual(CSV_EXAMPLES[kind].spec)
  })
})
