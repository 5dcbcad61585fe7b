import { describe, expect, it } from 'vitest'
import { saleFact } from '../../../web/app/prices/sale-fact.ts'

const line = { onSale: false, saleLastDay: null, chanceOfSale: 0.6, payTodayMinor: 2119, basis: 'record' as const }

describe('what stands beside the advice about a sale', () => {
  it('is the chance of one where the record, or that of its kind, has something to go by', () => {
    const told = { head: 'Chance of a sale by then', told: 'about 6 in 10' }
    expect(saleFact(line, 'USD', 2026)).toEqual(told)
    expect(saleFact({ ...line, basis: 'kind' }, 'USD', 2026)).toEqual(told)
  })

  it('is no figure where the words say that too little is recorded', () => {
    expect(saleFact({ ...line, basis: 'too_little' }, 'USD', 2026)).toBeNull()
  })

  it('is the sale itself where one runs, however little is recorded', () => {
    const onSale = { ...line, onSale: true, basis: 'too_little' as const }
    expect(saleFact(onSale, 'USD', 2026)).toEqual({ head: 'On sale now', told: '$21.19 with tax, last day not printed' })
    expect(saleFact({ ...onSale, saleLastDay: '2026-11-29' }, 'USD', 2026)?.told).toBe('$21.19 with tax to Sun, Nov 29')
  })
})
