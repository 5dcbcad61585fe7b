import { expect, it } from 'vitest'
import type { ImportView } from '../../../core/exchange/import-view.ts'
import { endWords } from '../../../web/app/exchange/import-words.ts'

type Outcome = NonNullable<ImportView['outcome']>
const TRIED: Outcome = { applied: false, ready: true, faults: 0, more: false, creates: 2, updates: 0, unchanged: 5, rows: 7 }
const end = (part: Partial<Outcome>) => endWords({ state: 'done', outcome: { ...TRIED, ...part }, words: null })

it('a file that changes nothing waits for nobody', () => {
  expect(end({})).toBe('Tried, without a fault. Waits to be written.')
  expect(end({ creates: 0 })).toBe('Tried, without a fault. Nothing to write: all of it is here already.')
})

it('a file without rows is nothing to import, tried or written', () => {
  const none = { rows: 0, creates: 0, unchanged: 0, ready: false }
  expect(end(none)).toBe('Nothing to import: the file has no rows.')
  expect(end({ ...none, applied: true })).toBe('Nothing to import: the file has no rows.')
})

it('faults of the column names are in the heading, not in rows', () => {
  expect(end({ faults: 2, rows: 0, ready: false })).toBe('Nothing written: 2 faults in the heading')
  expect(end({ faults: 1, rows: 1, ready: false })).toBe('Nothing written: 1 fault in 1 row')
})
