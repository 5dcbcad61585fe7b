import { describe, expect, it } from 'vitest'
import { resolveConditions } from '../../../../core/quote/conditions.ts'
import { METRIC, US } from '../../../../core/units/say.ts'
import { quantity } from '../../../../core/units/quantity.ts'
import { compareDrafts } from '../../../../web/app/quotes/draft-compare.ts'
import { editDraft } from '../../../../web/app/quotes/draft-edit.ts'
import { answersOf, EXACT_FIELDS } from '../../../../web/app/quotes/exact-fields.ts'
import { sayLimit } from '../../../../core/explanation/limit-words.ts'
import { sayExact } from '../../../../web/app/quotes/need-words.ts'
import { sayClosed, sayQuote, saySaving } from '../../../../web/app/quotes/saving-words.ts'
import { isThisComputer } from '../../../../web/app/quotes/this-computer.ts'
import { sayBudget, sayDifference, sayMissing } from '../../../../web/app/quotes/tier-words.ts'
import { sampleDraft, sampleView } from './sample-draft.ts'

const view = sampleView(1, sampleDraft)
const total = (totalMinor: number) => ({ complete: true as const, goodsMinor: totalMinor, deliveryMinor: 0, taxMinor: 0, totalMinor })
const heater = { lineId: 'l', name: 'Torvane 150 W', why: 'no_price' as const }

describe('a tier without a total', () => {
  it('names the line and why', () => {
    expect(sayMissing([heater])).toBe('no total: Torvane 150 W has no price')
    expect(sayMissing([{ ...heater, why: 'cannot_be_delivered' }, heater, heater])).toBe(
      'no total: Torvane 150 W cannot be delivered, and 2 more',
    )
  })
  it('is no difference: without a total before, the new total is said; without one after, nothing', () => {
    const incomplete = { complete: false as const, missing: [heater] }
    expect(sayDifference(incomplete, total(5000), 'USD')).toBe('total $50.00')
    expect(sayDifference(total(5000), incomplete, 'USD')).toBe('')
  })
})

it.each([
  [10000, 16145, 'adds $61.45'],
  [10000, 8800, 'saves $12.00'],
  [10000, 10000, 'same total'],
])('from %i to %i it says "%s"', (before, after, words) => {
  expect(sayDifference(total(before), total(after), 'USD')).toBe(words)
})

it('says how a total stands to the budget, and that the budget itself is met', () => {
  expect(sayBudget(110703, 115000, 'USD')).toEqual({ words: '$42.97 under budget', over: false })
  expect(sayBudget(123706, 115000, 'USD')).toEqual({ words: '$87.06 over budget', over: true })
  expect(sayBudget(115000, 115000, 'USD')).toEqual({ words: 'on budget', over: false })
})

describe('a limit', () => {
  it('is told in the reader’s units, the unit of a range once', () => {
    expect(sayLimit({ kind: 'at_most', high: quantity(32, 'degC', 1) }, US)).toBe('at most 89.6 °F')
    expect(sayLimit({ kind: 'at_least', low: quantity(4, 'per_hour', 0) }, METRIC)).toBe('at least 4 times an hour')
    expect(sayLimit({ kind: 'between', low: quantity(30, 'umol/m2/s', 0), high: quantity(60, 'umol/m2/s', 0) }, METRIC)).toBe(
      '30 to 60 µmol/m²s',
    )
  })
})

describe('a figure of the need', () => {
  const conditions = resolveConditions(sampleDraft.need, view.install)
  const say = (key: string) => {
    const field = EXACT_FIELDS.find((one) => one.key === key)
    if (!field) throw new Error(`no field ${key}`)
    return sayExact(field, sampleDraft.need, conditions, view.install.units)
  }
  it('is marked assumed where a default stands for it, and not where somebody stated it', () => {
    expect(say('coldestRoomC')).toEqual({ label: 'Coldest', words: '62.6 °F', assumed: false })
    expect(say('warmestRoomC')).toMatchObject({ assumed: true })
  })
  it('says where a figure comes from that neither customer nor default gave', () => {
    expect(say('circuitVoltageV')).toEqual({ label: 'Circuit voltage', words: '120 V, the settings’', assumed: false })
    expect(say('dangerC').words).toMatch(/the group’s$/)
  })
  it('is not stated where there is no default: tap water is never guessed', () => {
    expect(say('tapKhDegrees')).toEqual({ label: 'KH', words: 'not stated', assumed: false })
  })
  it('covers every figure that a need can state, each once', () => {
    const keys = EXACT_FIELDS.map((field) => field.key)
    expect(new Set(keys).size).toBe(keys.length)
    // The price of energy is the install's; the customer is not asked for it.
    const asked = Object.keys(conditions).filter((key) => !['assumed', 'livestock', 'energyPriceMinor'].includes(key))
    expect(asked.filter((key) => !keys.some((known) => known === key))).toEqual([])
  })
})

describe('the heading', () => {
  const revision = { revision: 2, issuedOn: '2026-10-20', standsUntil: '2026-10-31', totals: [] }
  it('says how the quote and its draft stand, the time in the club’s zone', () => {
    expect(sayQuote({ number: null, state: 'draft', revisions: [] })).toBe('New quote, draft')
    expect(sayQuote({ number: '2026-0147', state: 'issued', revisions: [revision] })).toBe('Quote 2026-0147, version 2 issued')
    expect(saySaving({ state: 'saved' }, '2026-10-20T14:42:00Z', 'America/New_York')).toBe('saved 10:42')
    expect(saySaving({ state: 'failed', words: 'No signal.' }, '2026-10-20T14:42:00Z', 'America/New_York')).toBe('not saved')
  })
})

it('says that a closed quote changes no more, and why', () => {
  expect(sayClosed('accepted', 'B', '4 October')).toBe('Accepted B on 4 October: it no longer changes')
  expect(sayClosed('withdrawn', null, null)).toBe('Withdrawn: it no longer changes')
})

describe('two drafts', () => {
  const names = { ...view, products: [], stores: [] }
  it('say the same of the same', () => {
    expect(compareDrafts(sampleDraft, { ...sampleDraft }, names)).toEqual([])
  })
  it('are told apart field by field and slot by slot', () => {
    const theirs = editDraft(editDraft(sampleDraft, { do: 'need', change: { budgetMinor: 70_000 } }), {
      do: 'remove_line',
      buildId: 'b',
      lineId: 'b-mat',
    })
    expect(compareDrafts(sampleDraft, theirs, names)).toEqual([
      { where: 'Budget', mine: '$600.00', theirs: '$700.00' },
      { where: 'Build B, Bed the glass', mine: 'not needed: rimmed tank', theirs: 'nothing' },
    ])
  })
})

it.each([
  ['http://localhost:8080/q/x', true], ['http://127.0.0.1/q/x', true], ['http://[::1]:80/q', true], ['https://tanks.example.org/q/x', false], ['https://localhost.example.org', false], ['nonsense', false],
] as const)('an address like %s is this computer’s alone: %s', (address, is) => {
  expect(isThisComputer(address)).toBe(is)
}) // prettier-ignore

it('an answer of "not known" is not offered beside "I don’t know"', () => {
  const choices = EXACT_FIELDS.filter((field) => field.type === 'choice')
  expect(choices.length).toBeGreaterThan(2)
  const disinfectant = choices.filter(({ key }) => key === 'disinfectant').flatMap((field) => answersOf(field).map(([value]) => value))
  expect(disinfectant).toEqual(['chlorine', 'chloramine', 'none'])
})
