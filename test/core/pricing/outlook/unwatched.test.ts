import { describe, expect, it } from 'vitest'
import { drawDaysUntil, randomOf } from '../../../../core/pricing/outlook/random.ts'
import { saleSteps } from '../../../../core/pricing/outlook/sale-steps.ts'
import type { ReportDay } from '../../../../core/pricing/outlook/timeline.ts'
import { unwatchedOf } from '../../../../core/pricing/outlook/unwatched.ts'

const report = (day: number): ReportDay => ({ day, onSale: false, saleMinor: NaN, shelfMinor: 1000, printedMinor: NaN })

/** Report days at a daily chance, none within the stretches. */
function reports(chance: number, days: number, away: ReadonlyArray<[number, number]>, seed: number): ReportDay[] {
  const random = randomOf(seed, 'reports')
  const found: ReportDay[] = []
  for (let day = drawDaysUntil(random, chance); day < days; day += drawDaysUntil(random, chance))
    if (!away.some(([first, last]) => first <= day && day <= last)) found.push(report(day))
  return found
}

describe('stretches on which nobody looked at a store', () => {
  it('are found where all its products are silent for too long', () => {
    const found = unwatchedOf([reports(0.4, 700, [[200, 260]], 1), reports(0.3, 700, [[200, 260]], 2)], 699)
    expect(found).toHaveLength(1)
    expect(found[0]?.first).toBeLessThanOrEqual(200)
    expect(found[0]?.last).toBeGreaterThanOrEqual(260)
    expect((found[0]?.last ?? 0) - (found[0]?.first ?? 0)).toBeLessThan(75)
  })

  it('are none where one product alone is silent, nor by chance in nine records of ten', () => {
    expect(unwatchedOf([reports(0.1, 700, [[200, 260]], 1), reports(0.5, 700, [], 2)], 699)).toEqual([])
    const byChance = Array.from({ length: 100 }, (_, seed) => unwatchedOf([reports(0.2, 700, [], seed)], 699))
    // A silence as long is taken by chance in one of thirty; of a hundred, 3 and a standard error of 1.8.
    expect(byChance.filter((found) => found.length > 0).length).toBeLessThan(10)
  })

  it('reach to the end of the record where the last reports lie far behind', () => {
    expect(unwatchedOf([reports(0.5, 500, [], 3)], 699)[0]?.last).toBe(699)
  })
})

describe('the steps of a record', () => {
  it('take no day of such a stretch for a day without a report, and no window that touches it', () => {
    const found = saleSteps(
      [report(0), report(10), report(90), report(120)],
      { windows: [{ saleTimeId: 't', first: 60, last: 70 }], unwatched: [{ first: 20, last: 80 }] },
      130,
    )
    expect(found?.steps).toEqual([
      { what: 'regular', gap: 10 },
      { what: 'away', gap: 9, days: 61 },
      { what: 'regular', gap: 10 },
      { what: 'regular', gap: 30 },
      { what: 'end', gap: 10 },
    ])
    expect(found?.days).toBe(130 - 61)
  })

  it('hold the reports of a window together, from its eve to its last day', () => {
    const window = { saleTimeId: 't', first: 20, last: 24 }
    const found = saleSteps([report(5), { ...report(22), onSale: true }, report(30)], { windows: [window], unwatched: [] }, 30)
    expect(found?.steps).toEqual([
      { what: 'window', gap: 14, window, days: 5, inside: [{ at: 3, onSale: true }], open: false },
      { what: 'regular', gap: 6 },
    ])
  })

  it('begin with the first report outside a window: it conditions and no more', () => {
    const window = { saleTimeId: 't', first: 0, last: 6 }
    const found = saleSteps([{ ...report(3), onSale: true }, report(20), report(40)], { windows: [window], unwatched: [] }, 40)
    expect(found).toMatchObject({ startsOnSale: false, days: 20, regularDays: 1, saleDays: 0 })
  })
})
