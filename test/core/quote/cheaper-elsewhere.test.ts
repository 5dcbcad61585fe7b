import { describe, expect, it } from 'vitest'
import { cheaperElsewhere } from '../../../core/quote/cheaper-elsewhere.ts'
import { sampleRevision } from '../../support/sample-revision.ts'

const quote = sampleRevision({})
const [build] = quote.builds
const [line] = build?.cost.lines ?? []
const [kettle] = quote.inputs.stores
if (!build || !line?.storeId || !kettle) throw new Error('no line that is bought')
const here = quote.inputs.stores.find(({ id }) => id === line.storeId) ?? kettle
const other = { ...here, id: 'harbour', name: 'Harbour Aquatics', kind: 'local' as const }
const seen = {
  condition: 'shelf',
  seenOn: '2026-10-14',
  holdsUntil: null,
  lastDayStated: false,
  age: 'current',
  reporters: 2,
  sightingIds: [],
} as const
const at = (priceMinor: number, more: Partial<typeof other> = {}) => ({
  ...quote.inputs,
  stores: [...quote.inputs.stores, { ...other, ...more }],
  prices: [...quote.inputs.prices, { productId: line.productId, storeId: other.id, today: { ...seen, priceMinor, sightingIds: [] } }],
})
const tag = line.unitTodayMinor ?? 0
const amount = (minor: number): string => `$${(minor / 100).toFixed(2)}`

describe('a price on the tag that is beaten elsewhere', () => {
  it('is said with the store, and that the quote does not use it', () => {
    const inputs = at(tag - 100)
    const chosen = {
      ...inputs,
      draft: { ...inputs.draft, need: { ...inputs.draft.need, storeIds: quote.inputs.stores.map(({ id }) => id) } },
    }
    expect(cheaperElsewhere(chosen)(line, tag)).toBe(
      `Harbour Aquatics has it for ${amount(tag - 100)}, seen Oct 14: it is not among the stores of this quote.`,
    )
  })

  it('says of a tag that is no lower that less tax comes on it', () => {
    const taxed = { ...at(tag, { taxBasisPoints: 0, pricesIncludeTax: false }) }
    const stores = taxed.stores.map((store) => (store.id === here.id ? { ...store, taxBasisPoints: 600, pricesIncludeTax: false } : store))
    expect(cheaperElsewhere({ ...taxed, stores })(line, tag)).toContain(`Harbour Aquatics has it for ${amount(tag)} and adds no tax, seen`)
  })

  it.each([
    [
      'a choice for the whole build where the store is one of the quote’s',
      null,
      'where the quote buys is chosen for the whole build, delivery counted.',
    ],
    ['the advisor’s choice where the line names its store', here.id, `this line is kept at ${here.name}.`],
  ])('is told as %s', (_as, storeId, why) => {
    const inputs = at(tag - 100)
    const builds = inputs.draft.builds.map((one) => ({
      ...one,
      lines: one.lines.map((each) => (each.answer === 'buy' && each.id === line.lineId ? { ...each, storeId } : each)),
    }))
    const chosen = { ...inputs, draft: { ...inputs.draft, builds, need: { ...inputs.draft.need, storeIds: [] } } }
    expect(cheaperElsewhere(chosen)(line, tag)).toBe(`Harbour Aquatics has it for ${amount(tag - 100)}, seen Oct 14: ${why}`)
  })

  it('is nothing where it is as dear with its tax, or is what the quote waits for', () => {
    expect(cheaperElsewhere(at(tag))(line, tag)).toBeNull()
    expect(cheaperElsewhere(at(tag - 100))(line, tag - 100)).toBeNull()
    // A tag that is 1.00 lower, and half as much again at the till.
    expect(cheaperElsewhere(at(tag - 100, { pricesIncludeTax: false, taxBasisPoints: 5_000 }))(line, tag)).toBeNull()
  })

  it('is nobody’s business where the store sells its own', () => {
    const inputs = at(tag - 100)
    const install = { ...inputs.install, mode: 'store' as const }
    expect(cheaperElsewhere({ ...inputs, install })(line, tag)).toBeNull()
  })
})
