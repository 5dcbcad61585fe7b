import { describe, expect, it } from 'vitest'
import { learnChanges, priceIntervals } from '../../../../core/pricing/outlook/regular-changes.ts'
import { stateDays, taughtBy } from '../../../../core/pricing/outlook/taught.ts'
import { dayNumber } from '../../../../core/pricing/outlook/civil-day.ts'
import { timelines } from '../../../../core/pricing/outlook/timeline.ts'
import { newcomerTrust } from '../../../../core/pricing/trust.ts'
import { aPriceWorld, USUAL_WORLD } from './a-price-world.ts'

const { record } = aPriceWorld({ ...USUAL_WORLD, kinds: 1, productsPerKind: 5, changesPerYear: 2 }, 4)
const lines = timelines(record.sightings, dayNumber(record.asOf), newcomerTrust)
const taught = taughtBy(lines)

describe('what is kept of a product while others are read', () => {
  it('gives back the state of every report day, store by store', () => {
    const kept = taught.flatMap(({ productId, stores }) =>
      stores.map((store) => ({ productId, storeId: store.storeId, days: stateDays(store) })),
    )
    expect(kept).toEqual(
      lines.map(({ productId, storeId, reports }) => ({
        productId,
        storeId,
        days: reports.map(({ day, onSale }) => ({ day, onSale })),
      })),
    )
    expect(kept.flatMap(({ days }) => days).filter(({ onSale }) => onSale).length).toBeGreaterThan(20)
    expect(taught.reduce((sum, { saleDays }) => sum + saleDays, 0)).toBe(
      lines.flatMap(({ reports }) => reports).filter(({ onSale }) => onSale).length,
    )
  })

  it('teaches of changes to the last bit what all intervals teach, with one for all that hold none', () => {
    const all = lines.flatMap(({ reports }) => priceIntervals(reports))
    const kept = taught.flatMap(({ intervals }) => intervals)
    expect(learnChanges(kept)).toEqual(learnChanges(all))
    expect(kept.filter(({ changeLog }) => changeLog !== 0).length).toBeGreaterThan(10)
    expect(kept.filter(({ changeLog }) => changeLog === 0)).toHaveLength(5)
    expect(all.length).toBeGreaterThan(2 * kept.length)
  })

  it('is days before 1970 as well', () => {
    expect(stateDays({ storeId: 's', packedDays: [-3, -2, 0, 1] })).toEqual([
      { day: -2, onSale: true },
      { day: -1, onSale: false },
      { day: 0, onSale: false },
      { day: 0, onSale: true },
    ])
  })
})
