import { describe, expect, it } from 'vitest'
import { assembleBuild } from '../../../core/quote/assemble.ts'
import { emptyDraft } from '../../../core/quote/empty-draft.ts'
import type { OurService } from '../../../core/quote/our-service.ts'
import { QuoteDraftSchema } from '../../../core/quote/schema.ts'
import { sumParts, sumRowsOf } from '../../../core/quote/sum-parts.ts'
import { mergeDrafts } from '../../../web/app/quotes/draft-merge.ts'
import { sampleInputs } from '../../support/sample-revision.ts'

const drilling: OurService = { id: 'drill', name: 'Drilling', quantity: 2, priceMinor: 1500 }
const inputs = sampleInputs()

function withServices(services: OurService[] | undefined, from = inputs) {
  const builds = from.draft.builds.map((build, index) => (index === 0 ? { ...build, services } : build))
  return { ...from, draft: { ...from.draft, builds } }
}

describe('a service at our own price', () => {
  const before = assembleBuild(inputs, 0)
  const after = assembleBuild(withServices([drilling]), 0)

  it('adds the same to every tier, and nothing to goods, delivery or a store’s tax', () => {
    for (const tier of ['full', 'today', 'bestSeen'] as const) {
      const [was, is] = [before.cost[tier], after.cost[tier]]
      if (!was.complete || !is.complete) throw new Error('the sample has totals')
      // 2 × 15.00, reckoned by hand.
      expect(is).toEqual({ ...was, servicesMinor: 3000, totalMinor: was.totalMinor + 3000 })
    }
    expect(after.cost.receipts).toEqual(before.cost.receipts)
  })

  it('stands in the column of sums, which still adds up', () => {
    const { today } = after.cost
    if (!today.complete) throw new Error('the sample has a total')
    expect(sumParts(today).reduce((sum, { minor }) => sum + minor, 0)).toBe(today.totalMinor)
    expect(sumRowsOf([after]).map(({ words }) => words)).toContain('Our services')
    expect(sumRowsOf([before]).map(({ words }) => words)).not.toContain('Our services')
  })

  it('has a row of its own with its price, in no store’s name', () => {
    const rows = after.rows.filter((row) => row.slot === 'services')
    expect(rows).toMatchObject([{ answer: 'our_price', text: '2 × Drilling', ourPriceMinor: 3000, productId: null }])
  })

  it('never makes a total of a build that has none', () => {
    const unpriced = assembleBuild({ ...withServices([drilling]), prices: [] }, 0)
    expect(unpriced.cost.today.complete).toBe(false)
  })

  it('is refused with a price below nothing, without words, or with the id of a line', () => {
    const empty = emptyDraft('one')
    const lines = [{ id: 'mat', answer: 'not_needed' as const, slot: 'bed_glass' as const, reason: 'rimmed' }]
    const parse = (services: OurService[]) =>
      QuoteDraftSchema.safeParse({ ...empty, builds: empty.builds.map((build) => ({ ...build, lines, services })) })
    expect(parse([drilling]).success).toBe(true)
    expect(parse([{ ...drilling, priceMinor: -1 }]).error?.issues[0]?.path).toEqual(['builds', 0, 'services', 0, 'priceMinor'])
    expect(parse([{ ...drilling, name: '' }]).error?.issues[0]?.path).toEqual(['builds', 0, 'services', 0, 'name'])
    expect(parse([{ ...drilling, id: 'mat' }]).error?.issues[0]?.message).toContain('have the id')
  })

  it('is kept from both sides where two advisors each add one', () => {
    const delivery: OurService = { id: 'carry', name: 'Delivery', quantity: 1, priceMinor: 4000 }
    const merged = mergeDrafts(inputs.draft, withServices([drilling]).draft, withServices([delivery]).draft)
    expect(merged.draft.builds[0]?.services).toEqual([delivery, drilling])
    expect(merged.clashes).toEqual([])
  })
})
