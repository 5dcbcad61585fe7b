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

  it('is told as a matter of delivery where the store is one of the quote’s', () => {
    const inputs = at(tag - 100)
    const chosen = { ...inputs, draft: { ...inputs.draft, need: { ...inputs.draft.need, storeIds: [] } } }
    expect(cheaperElsewhere(chosen)(line, tag)).toMatch(/with delivery the whole would come to more there|this line is kept at/)
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
