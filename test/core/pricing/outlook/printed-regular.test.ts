import { describe, expect, it } from 'vitest'
import { falseShare, printedCount, regularStart } from '../../../../core/pricing/outlook/printed-regular.ts'
import type { ReportDay } from '../../../../core/pricing/outlook/timeline.ts'

const shelf = (day: number, shelfMinor: number): ReportDay => ({ day, onSale: false, saleMinor: NaN, shelfMinor, printedMinor: NaN })
const tag = (day: number, printedMinor: number): ReportDay => ({ day, onSale: true, saleMinor: 700, shelfMinor: NaN, printedMinor })
const changes = { shape: 1, days: 365, sizesLog: [-0.05, 0, 0.05, 0.1], meanError: 0.01, falsePrinted: 0.05 }

describe('a regular price printed on a sale tag', () => {
  it('is counted wrong where the shelf says otherwise before and behind', () => {
    expect(printedCount([shelf(0, 1000), tag(10, 1000), tag(20, 1300), shelf(30, 1000), tag(40, 1400)])).toEqual({ told: 2, wrong: 1 })
    expect(falseShare([{ told: 90, wrong: 9.5 }])).toBeCloseTo(0.1, 12)
  })

  it('that is the shelf’s says that it stood until then', () => {
    expect(regularStart({ minor: 1000, age: 100 }, { minor: 1000, age: 20 }, changes)).toMatchObject({
      shelf: { minor: 1000, age: 20 },
      chance: 0,
    })
  })

  it('is likelier a change than false where it is of a usual size, and false where it is far above', () => {
    const chance = (minor: number): number => regularStart({ minor: 1000, age: 170 }, { minor, age: 5 }, changes).chance
    expect(chance(1050)).toBeGreaterThan(0.9)
    expect(chance(1450)).toBeLessThan(0.3)
  })

  it('is false the likelier the less time there was to change', () => {
    const chance = (age: number): number => regularStart({ minor: 1000, age }, { minor: 1100, age: 5 }, changes).chance
    expect(chance(10)).toBeLessThan(chance(170))
  })

  it('says nothing where a shelf price is newer', () => {
    expect(regularStart({ minor: 1000, age: 5 }, { minor: 1200, age: 50 }, changes).chance).toBe(0)
    expect(regularStart({ minor: 1000, age: 5 }, null, changes).chance).toBe(0)
  })
})
