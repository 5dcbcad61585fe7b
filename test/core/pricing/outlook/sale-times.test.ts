import { describe, expect, it } from 'vitest'
import { learnSaleTimes, type WindowEvidence } from '../../../../core/pricing/outlook/sale-times.ts'
import { randomOf } from '../../../../core/pricing/outlook/random.ts'

const mean = ([yes, no]: readonly [number, number] = [NaN, NaN]): number => yes / (yes + no)
const anEvidence = (fields: Partial<WindowEvidence>): WindowEvidence => ({
  productId: 'p',
  kind: 'filter',
  storeId: 's',
  saleTimeId: 'autumn',
  first: 300,
  ratio: 1,
  open: false,
  ...fields,
})

/** Windows of stores that run a sale time with a chance, products that take part with one, and reports that tell of it or not. */
function simulated(runs: number, part: number, told: number, seed: number): WindowEvidence[] {
  const random = randomOf(seed, 'windows')
  const evidence: WindowEvidence[] = []
  for (let store = 0; store < 6; store += 1)
    for (let year = 0; year < 4; year += 1) {
      const isRun = random() < runs
      for (let product = 0; product < 30; product += 1) {
        const seen = isRun && random() < part && random() < told
        // Silence is likelier without part; a sale report would need an ordinary sale.
        evidence.push(anEvidence({ productId: `p${product}`, storeId: `s${store}`, first: 300 + 365 * year, ratio: seen ? 30 : 1 - told }))
      }
    }
  return evidence
}

describe('sale times in two levels', () => {
  it('are 0.3 and 0.15 where nothing was seen', () => {
    const { stores, products } = learnSaleTimes([anEvidence({ ratio: 1 })])
    expect(mean(stores.get('s')?.get('autumn'))).toBeCloseTo(0.3, 6)
    expect(mean(products.get('p'))).toBeCloseTo(0.15, 6)
  })

  it('find how often stores run them and products take part, though many parts are silent', () => {
    const { stores, products } = learnSaleTimes(simulated(0.6, 0.4, 0.6, 2))
    const runs = [...stores.values()].map((store) => mean(store.get('autumn')))
    const parts = [...products.values()].map((part) => mean(part))
    // 24 windows: standard error 0.1; 30 products of some 14 runs each: 0.03.
    expect(Math.abs(runs.reduce((a, b) => a + b, 0) / runs.length - 0.6)).toBeLessThan(0.2)
    expect(Math.abs(parts.reduce((a, b) => a + b, 0) / parts.length - 0.4)).toBeLessThan(0.09)
  })

  it('take silence of well-watched products as evidence against', () => {
    const watched = learnSaleTimes(simulated(0, 0.4, 0.9, 3))
    const unwatched = learnSaleTimes(simulated(0, 0.4, 0.02, 3))
    const expected = (of: typeof watched): number => mean(of.stores.get('s0')?.get('autumn')) * mean(of.products.get('p0'))
    expect(expected(watched)).toBeLessThan(0.02)
    expect(expected(unwatched)).toBeGreaterThan(2 * expected(watched))
  })

  it('tell of an open window that the store runs it, from what other products show', () => {
    const seen = Array.from({ length: 5 }, (_, index) => anEvidence({ productId: `p${index}`, ratio: 30, open: true }))
    expect(learnSaleTimes(seen).running.get('s autumn')).toBeGreaterThan(0.9)
  })

  it('do not depend on the order of the evidence', () => {
    const evidence = simulated(0.5, 0.3, 0.5, 4)
    const one = learnSaleTimes(evidence)
    const other = learnSaleTimes(evidence.toReversed())
    expect(mean(other.stores.get('s3')?.get('autumn'))).toBeCloseTo(mean(one.stores.get('s3')?.get('autumn')), 9)
  })
})
