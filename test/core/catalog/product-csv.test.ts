import { describe, expect, it } from 'vitest'
import { csvColumns } from '../../../core/catalog/csv-columns.ts'
import { CSV_EXAMPLES, exampleCells } from '../../../core/catalog/csv-example.ts'
import { KINDS } from '../../../core/catalog/kinds.ts'
import { MOST_FAULTS, productRowSteps, readProductRows } from '../../../core/catalog/product-csv.ts'

const ID = '0198c0de-1111-7222-8333-444455556666'
const heaters = (...rows: string[][]) => readProductRows([['name', 'gtin', 'powerW', 'adjustable'], ...rows], 'heater')
const messages = (file: ReturnType<typeof readProductRows>) => file.faults.map(({ row, column, message }) => `${row} ${column}: ${message}`)

describe('products from a file', () => {
  it('are read with their specs, an empty cell being not known', () => {
    const file = heaters(['Torvane 150 W', '6291041500213', '150', 'yes'], ['Torvane 50 W', '', '', ''])
    expect(file.faults).toEqual([])
    expect(file.rows.map(({ row, name, gtin, spec }) => ({ row, name, gtin, spec }))).toEqual([
      { row: 2, name: 'Torvane 150 W', gtin: '6291041500213', spec: { powerW: 150, adjustable: true } },
      { row: 3, name: 'Torvane 50 W', gtin: null, spec: {} },
    ])
  })

  it('take headings in any order and case, and decimal commas', () => {
    const file = readProductRows(
      [
        ['LENGTH MM', 'Name', 'width_mm', ' heightMm ', 'empty-mass-kg', 'ID', 'oversize'],
        ['900', ' Halden 90 ', '450', '450', '28,5', ID.toUpperCase(), 'Yes'],
      ],
      'tank',
    )
    expect(file.faults).toEqual([])
    expect(file.rows[0]).toMatchObject({
      id: ID,
      name: 'Halden 90',
      oversize: true,
      spec: { lengthMm: 900, widthMm: 450, heightMm: 450, emptyMassKg: 28.5 },
    })
  })

  it('have kits with parts by name or id', () => {
    const file = readProductRows(
      [
        ['name', 'parts'],
        ['Halden set', `Halden 90; Torvane 75 W x 2; ${ID}`],
      ],
      'kit',
    )
    expect(file.rows[0]?.parts).toEqual([
      { product: 'Halden 90', quantity: 1 },
      { product: 'Torvane 75 W', quantity: 2 },
      { product: ID, quantity: 1 },
    ])
  })

  it('skip empty lines and keep counting rows', () => {
    expect(heaters(['', '', '', ''], ['Torvane', '', '150', '']).rows.map(({ row }) => row)).toEqual([3])
  })

  it('say the line of the file where the parser knows it', () => {
    const file = readProductRows([['name'], ['two\nlines'], ['after']], 'heater', [1, 2, 4])
    expect(file.rows.map(({ row }) => row)).toEqual([2, 4])
  })
})

describe('a faulty heading', () => {
  it.each([
    [['name', 'name', 'powerW'], 'The column name stands twice. Take one out.'],
    [['maker', 'powerW'], 'The column name is missing. Every heater needs it.'],
    [[''], 'The file has no heading. Its first line names the columns; take the template.'],
    [['name', ''], 'Column 2 has no heading. Name it, or take it out.'],
  ])('%j is refused: %s', (heading, message) => {
    const file = readProductRows([heading, heading.map(() => 'x')], 'heater')
    expect(file.rows).toEqual([])
    expect(file.faults.map((fault) => [fault.row, fault.message])).toEqual([[1, message]])
  })

  it('names an unknown column and the ones there are', () => {
    const [fault] = readProductRows(
      [
        ['name', 'watts'],
        ['Torvane', '150'],
      ],
      'heater',
    ).faults
    expect(fault).toMatchObject({ row: 1, column: 'watts' })
    expect(fault?.message).toContain('"watts" is not a column of a heater.')
    expect(fault?.message).toContain('powerW')
  })

  it('is refused in an empty file', () => {
    expect(readProductRows([], 'heater').faults[0]?.message).toContain('no heading')
    expect(readProductRows([['name']], 'heater').faults[0]?.message).toBe('There are no products under the heading.')
  })
})

describe('a faulty row', () => {
  it('names row, column, limit and fix, every fault of it', () => {
    expect(messages(heaters(['', '6291041500214', '40000', 'perhaps']))).toEqual([
      '2 name: name is empty. Every heater needs it.',
      '2 gtin: GTIN "6291041500214" is not right: 8, 12, 13 or 14 digits, the last one checks the others, leading zeros kept.',
      '2 powerW: Power is 40000 W. For a heater it is between 5 and 1000 W. Check the figure and its unit.',
      '2 adjustable: Adjustable is "perhaps". Write yes or no, or leave it empty.',
    ])
  })

  it.each([
    ['150 W', 'Power is "150 W". Write a plain number of W, without the unit.'],
    ['1,500', 'Power is "1,500", which can be read two ways. Write it without the thousands sign.'],
    ['Infinity', 'Power is "Infinity". Write a plain number of W, without the unit.'],
    ['0x10', 'Power is "0x10". Write a plain number of W, without the unit.'],
  ])('refuses "%s" as watts', (cell, message) => {
    expect(heaters(['Torvane', '', cell, '']).faults).toEqual([{ row: 2, column: 'powerW', message }])
  })

  it('is refused where a spreadsheet shortened the barcode', () => {
    expect(heaters(['Torvane', '6.29104E+12', '', '']).faults[0]?.message).toContain('format the column as text')
  })

  it('is refused where a comma split a cell', () => {
    expect(heaters(['Torvane', 'two', '', '150', '']).faults[0]?.message).toBe(
      'This row has 5 cells and the heading 4. A cell that holds what stands between columns needs quotes around it.',
    )
  })

  it('is refused where the file is not UTF-8, or holds control characters', () => {
    for (const name of ['K\ufffdhler', 'a\u0000b'])
      expect(heaters([name, '', '', '']).faults[0]?.message).toContain('Save the file as UTF-8')
  })

  it('is refused where it repeats a name or a barcode, 12 and 13 digits being one', () => {
    const file = heaters(['Torvane', '036000291452', '', ''], ['TORVANE', '', '', ''], ['Other', '0036000291452', '', ''])
    expect(messages(file)).toEqual([
      '3 name: The same name stands in row 2. Keep one of the two rows.',
      '4 gtin: The same GTIN stands in row 2. Keep one of the two rows.',
    ])
  })

  it('is told with no more than 500 others', () => {
    const file = heaters(...Array.from({ length: 700 }, (_, index) => [`Heater ${index}`, '', 'x', '']))
    expect(file.faults).toHaveLength(MOST_FAULTS)
    expect(file).toMatchObject({ more: true, records: 700 })
  })
})

describe('a large file', () => {
  it('of 50 000 rows is read whole', () => {
    const file = heaters(...Array.from({ length: 50_000 }, (_, index) => [`Heater ${index}`, '', '150', 'no']))
    expect(file).toMatchObject({ faults: [], more: false })
    expect(file.rows).toHaveLength(50_000)
  })
})

describe('the columns of the template', () => {
  it.each(KINDS)('of a %s are read back as they are', (kind) => {
    const headings = csvColumns(kind).map(({ heading }) => heading)
    const { faults } = readProductRows([headings], kind)
    expect(faults.map(({ message }) => message)).toEqual(['There are no products under the heading.'])
  })
  it.each(KINDS)('of a %s have an example that can be read, but not stored by mistake', (kind) => {
    const headings = csvColumns(kind).map(({ heading }) => heading)
    const cells = exampleCells(kind)
    const row = headings.map((heading) => cells[heading] ?? '')
    expect(readProductRows([headings, row], kind).faults.map(({ message }) => message)).toEqual([
      'This is the example of the template. Take the row out.',
    ])
    const read = readProductRows([headings, row.map((cell) => cell.replace('Example: ', ''))], kind)
    expect(read.faults).toEqual([])
    expect(read.rows[0]?.spec).toEqual(CSV_EXAMPLES[kind].spec)
  })
})

describe('a long file', () => {
  it('is read in steps of 200 rows, to the same end', () => {
    const records = [['name', 'powerW'], ...Array.from({ length: 1_001 }, (_, index) => [`Heater ${index}`, '50'])]
    const steps = productRowSteps(records, 'heater')
    let [count, step] = [0, steps.next()]
    for (; step.done !== true; step = steps.next()) count += 1
    expect(count).toBe(5)
    expect(step.value).toEqual(readProductRows(records, 'heater'))
    expect(step.value.rows).toHaveLength(1_001)
  })
  it('of more columns than any file of ours is refused by its heading alone', () => {
    const file = readProductRows([Array.from({ length: 50_000 }, () => 'name'), ['x']], 'heater')
    expect(file.faults.map(({ message }) => message)).toEqual(['The heading has 50000 columns. At most 200 are read; take the template.'])
  })
})
