import { expect, it } from 'vitest'
import { openSlots, sayLeftOut, sayOpenSlots } from '../../../core/quote/open-slots.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

const built = sampleRevision({ builds: 1 }).builds[0]!
const rowsWithout = (...slots: string[]) => ({
  rows: built.rows.map((row) =>
    slots.includes(row.slot) ? { ...row, answer: 'missing' as const, lineId: null, required: row.slot === 'filter' } : row,
  ),
})

it('tells what is left out as the paper does, what a build may do without too', () => {
  expect(sayLeftOut(rowsWithout())).toBe('nothing is left out')
  expect(sayLeftOut(rowsWithout('cover', 'light'))).toBe('without lid, light: not chosen')
  expect(sayLeftOut(rowsWithout('cover', 'filter'))).toBe('without lid, filter: not chosen')
})

it('calls open only what a build must cover', () => {
  expect(openSlots(rowsWithout('cover', 'light'))).toEqual([])
  expect(sayOpenSlots(rowsWithout('cover', 'filter'))).toBe('without filter: not chosen')
})
