import { expect, it } from 'vitest'
import { salesEndingBefore, saySalesEnding } from '../../../core/pricing/sales-ending.ts'

const lines = (...days: Array<string | null>) => days.map((holdsUntil) => ({ holdsUntil }))

it('counts the sales that are over before a day, the day itself not being before it', () => {
  expect(salesEndingBefore(lines('2026-12-05', null, '2026-12-02', '2026-12-09'), '2026-12-09')).toEqual({
    count: 2,
    firstOn: '2026-12-02',
    lastOn: '2026-12-05',
  })
  expect(salesEndingBefore(lines('2026-12-09', null), '2026-12-09')).toBeNull()
  expect(salesEndingBefore([], '2026-12-09')).toBeNull()
})

it.each([
  [{ count: 1, firstOn: '2026-12-02', lastOn: '2026-12-02' }, 'The sale price of 1 part holds only until Dec 2.'],
  [{ count: 3, firstOn: '2026-12-02', lastOn: '2027-01-04' }, 'Sale prices of 3 parts hold only until Dec 2 to Jan 4, 2027.'],
])('is said in one sentence', (ending, words) => expect(saySalesEnding(ending, 2026)).toBe(words))

it('says "about" where a store prints no last day', () => {
  const lines = [
    { holdsUntil: '2026-12-02', lastDayStated: false },
    { holdsUntil: '2026-12-05', lastDayStated: true },
  ]
  const ending = salesEndingBefore(lines, '2026-12-09')
  expect(ending && saySalesEnding(ending, 2026)).toBe('Sale prices of 2 parts hold only until about Dec 2 to Dec 5.')
  expect(salesEndingBefore(lines.slice(1), '2026-12-09')).toEqual({ count: 1, firstOn: '2026-12-05', lastOn: '2026-12-05' })
})
