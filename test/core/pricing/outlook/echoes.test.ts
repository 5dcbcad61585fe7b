import { describe, expect, it } from 'vitest'
import { echoChance, echoesOf } from '../../../../core/pricing/outlook/echoes.ts'
import { randomOf } from '../../../../core/pricing/outlook/random.ts'
import { fitKind, likelihoodsOf, posterior } from '../../../../core/pricing/outlook/sale-fit.ts'
import { gridPoint } from '../../../../core/pricing/outlook/sale-grid.ts'
import { saleSteps } from '../../../../core/pricing/outlook/sale-steps.ts'
import type { ReportDay } from '../../../../core/pricing/outlook/timeline.ts'
import { reportsOf } from './a-sale-process.ts'

const report = (day: number, onSale = false): ReportDay => ({
  day,
  onSale,
  saleMinor: onSale ? 800 : NaN,
  shelfMinor: onSale ? NaN : 1000,
  printedMinor: NaN,
})

describe('reports that echo one before', () => {
  it('tell the same state within three days', () => {
    expect(echoesOf([report(0), report(3), report(7), report(9, true), report(11, true)], 20)).toEqual({
      sale: 1,
      regular: 1,
      // Three days up to the first echo, three without one, and the one before the sale.
      regularDays: 3 + 3 + 1,
    })
  })

  it('end with the record: days that have not come are none on which nobody answered', () => {
    expect(echoesOf([report(0)], 2).regularDays).toBe(2)
    expect(echoesOf([report(0)], 0).regularDays).toBe(0)
  })
})

/** Each report is followed, with this chance a day, by another on one of the three days behind it, as long as the state is the same. */
function withEchoes(reports: readonly ReportDay[], chance: number, name: string): ReportDay[] {
  const random = randomOf(7, name)
  const days = new Map(reports.map((each) => [each.day, each]))
  const states = reports.toSorted((a, b) => a.day - b.day)
  for (const [index, each] of states.entries())
    for (let later = 1; later <= 3; later += 1)
      if (random() < chance && each.day + later < (states[index + 1]?.day ?? Infinity))
        days.set(each.day + later, { ...each, day: each.day + later })
  return [...days.values()].sort((a, b) => a.day - b.day)
}

describe('markets whose reports bring others', () => {
  // 80 products over two years, as often reported on a sale day as on any other; sales of 14 days, so that an echo rarely outlives its sale.
  const process = { ratePerYear: 3, saleDays: 14, days: 730, regularReportsPerYear: 12, reportOnSaleDay: 12 / 365 }
  const products = Array.from({ length: 80 }, (_, index) => {
    const reports = withEchoes(reportsOf(process, 3, `echo ${index}`), 0.12, `echo ${index}`)
    const steps = saleSteps(reports, { windows: [], unwatched: [] }, 729)
    if (steps === undefined) throw new Error('nothing was reported')
    return { productId: `p${index}`, stores: [{ storeId: 's', steps }] }
  })

  it('are seen to do so', () => {
    const chance = echoChance(products.map(({ stores }) => ({ echoes: stores.map(({ steps }) => steps.echoes), regularChance: 12 / 365 })))
    expect(chance).toBeGreaterThan(0.09)
    expect(chance).toBeLessThan(0.14)
    expect(echoChance([]), 'of nothing nothing is believed').toBe(0)
  })

  it('do not pass for markets in which every sale is reported', () => {
    const rateOf = (some: typeof products): number => {
      const likelihoods = likelihoodsOf(some, () => () => 0)
      const kind = fitKind(likelihoods)
      const rates = likelihoods.map((each) =>
        posterior(each, kind).reduce((sum, weight, at) => sum + weight * gridPoint(at).ratePerYear, 0),
      )
      return rates.reduce((sum, rate) => sum + rate, 0) / rates.length
    }
    const blind = products.map(({ productId, stores }) => ({
      productId,
      stores: stores.map(({ storeId, steps }) => ({ storeId, steps: { ...steps, echoes: { sale: 0, regular: 0, regularDays: 0 } } })),
    }))
    const [told, untold] = [rateOf(products), rateOf(blind)]
    expect(Math.abs(told - 3)).toBeLessThan(Math.abs(untold - 3))
    expect(untold).toBeLessThan(told)
  })
})
