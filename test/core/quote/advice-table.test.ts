import { expect, it } from 'vitest'
import type { LineAdvice } from '../../../core/pricing/line-advice.ts'
import { adviceNotes, adviceTable } from '../../../core/quote/advice-table.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

const quote = sampleRevision({})
const [build] = quote.builds
if (!build) throw new Error('no build')
const bought = build.rows.filter(({ answer, lineId }) => (answer === 'buy' || answer === 'kit') && lineId !== null)
const advised = (index: number, fields: Partial<LineAdvice>): LineAdvice => ({
  lineId: bought[index]?.lineId ?? '',
  advice: 'buy_when_convenient',
  title: '',
  words: '',
  tagMinor: 10_000,
  likely: null,
  by: '2026-11-14',
  returnsEndOn: null,
  ...fields,
})
const advice = [
  advised(0, { advice: 'wait', tagMinor: 8_900, likely: { many: 2, of: 3, paidMinor: 9_540 } }),
  advised(1, { advice: 'buy_now', returnsEndOn: '2026-11-03' }),
]

it('what is to be bought now stands first, each with its price and day and what must be minded', () => {
  const table = adviceTable({ ...build, advice }, 'USD', 2026)
  expect(table).toEqual([
    {
      head: 'Buy now',
      why: '',
      rows: [{ what: bought[1]?.text, price: '100.00', note: expect.stringContaining('goes back until Nov 3 only') }],
    },
    {
      head: 'Wait, and buy at this price or under; by Nov 14 at the latest',
      why: '',
      rows: [{ what: bought[0]?.text, price: '89.00', note: 'about 2 in 3 to pay 95.40 or less with tax' }],
    },
  ])
})

it('each line has its reason, and where it costs less', () => {
  const told = advised(0, { reason: 'Why.', elsewhere: 'Upriver has it for $90.00.', likely: { many: 2, of: 3, paidMinor: 9_540 } })
  const [group] = adviceTable({ ...build, advice: [told] }, 'USD', 2026)
  expect(group?.rows[0]?.note).toBe('Why. Upriver has it for $90.00.')
})

it('a reason that all lines of one head share is said once', () => {
  const both = [advised(0, { reason: 'Why.' }), advised(1, { reason: 'Why.', elsewhere: 'Upriver has it for $90.00.' })]
  const [group] = adviceTable({ ...build, advice: both }, 'USD', 2026)
  expect(group).toMatchObject({ why: 'Why.', rows: [{ note: '' }, { note: 'Upriver has it for $90.00.' }] })
})

it('what tags show of tax is said once', () => {
  const note = (included: boolean[]): string => {
    const stores = quote.inputs.stores.map((store, index) => ({ ...store, pricesIncludeTax: included[index % included.length] === true }))
    return adviceNotes({ ...quote, inputs: { ...quote.inputs, stores }, builds: [{ ...build, advice }] })[0] ?? ''
  }
  expect(note([false])).toContain('Prices are those on the tag, of one: tax is added at the till.')
  expect(note([true])).toContain('Prices are those on the tag, of one, tax in them.')
})

it('a quote of before has none, and no notes on it', () => {
  expect(adviceTable(build, 'USD', 2026)).toEqual([])
  expect(adviceNotes(quote)).toEqual([])
})

it('says what a wait is taken to cost, and what is not waited for', () => {
  const withAdvice = { ...quote, builds: [{ ...build, advice }] }
  expect(adviceNotes(withAdvice)[1]).toBe(
    'Waiting is taken to cost nothing, so that only the day ends it. Nothing is waited for that saves less than $5.00 or 3 %.',
  )
  const priced = { ...withAdvice, need: { ...quote.need, weekWaitMinor: 700 } }
  expect(adviceNotes(priced)[1]).toContain('A week’s wait is counted as $7.00.')
})
