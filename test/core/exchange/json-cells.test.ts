import { expect, it } from 'vitest'
import { columnsOf } from '../../../core/exchange/columns-of.ts'
import { headingKey } from '../../../core/exchange/column.ts'
import { readJsonRow } from '../../../core/exchange/json-cells.ts'

const columns = new Map(columnsOf('customers', null).map((column) => [headingKey(column.heading), column]))

// Unicode Standard Annex 9, section 2: what turns a direction reaches beyond its own text.
it('takes the signs that turn the direction of writing out of a cell', () => {
  const read = readJsonRow(JSON.stringify({ name: ' \u202EUpriver\u202C \u2066' }), columns, () => undefined)
  expect(read.ok && [...read.value]).toEqual([['name', 'Upriver']])
})
