import { describe, expect, it } from 'vitest'
import { fc, test } from '@fast-check/vitest'
import { livestockGroup, LIVESTOCK_GROUPS } from '../../../../core/catalog/livestock.ts'
import { emptyNeed } from '../../../../core/quote/empty-draft.ts'
import type { Need } from '../../../../core/quote/need.ts'
import { NeedSchema } from '../../../../core/quote/schema.ts'
import { markFaults } from '../../../../core/sizing/livestock-marks.ts'
import { METRIC, US } from '../../../../core/units/say.ts'
import { orderFault } from '../../../../web/app/quotes/exact-order.ts'

const needOf = (exact: Need['exact'], livestockId = emptyNeed().livestockId): Need => ({ ...emptyNeed(), livestockId, exact })

describe('temperatures beside each other', () => {
  it('are told at the field, in the reader’s units, with the limit and the fix', () => {
    expect(orderFault(needOf({ warmestRoomC: 26 }), 'coldestRoomC', 30, METRIC)).toBe(
      'Coldest is 30 °C, above the warmest, 26 °C. Enter at most 26 °C, or change the warmest.',
    )
    // 20 °C = 68 °F and 10 °C = 50 °F exactly.
    expect(orderFault(needOf({ coldestRoomC: 20 }), 'warmestRoomC', 10, US)).toBe(
      'Warmest is 50 °F, below the coldest, 68 °F. Enter at least 68 °F, or change the coldest.',
    )
    expect(orderFault(needOf({ dangerC: 30 }), 'targetC', 30, METRIC)).toMatch(/the same as the danger mark, 30 °C\. Enter less than 30 °C/)
  })
  it('are in order where they meet, or where nobody stated the other', () => {
    expect(orderFault(needOf({ warmestRoomC: 26 }), 'coldestRoomC', 26, METRIC)).toBeNull()
    expect(orderFault(needOf({}), 'coldestRoomC', 34, METRIC)).toBeNull()
    expect(orderFault(needOf({ warmestRoomC: 20 }), 'tapPh', 30, METRIC)).toBeNull()
  })
  const keys = ['coldestRoomC', 'warmestRoomC', 'lowestC', 'targetC', 'dangerC'] as const
  const limits = { coldestRoomC: [-5, 35], warmestRoomC: [5, 45], lowestC: [0, 35], targetC: [5, 35], dangerC: [15, 45] } as const
  const figure = (key: (typeof keys)[number]) => fc.option(fc.integer({ min: limits[key][0], max: limits[key][1] }), { nil: undefined })
  test.prop([fc.constantFrom(...LIVESTOCK_GROUPS.map((group) => group.id)), fc.tuple(...keys.map(figure))], { numRuns: 500 })(
    'are refused exactly where the server refuses the need',
    (livestockId, values) => {
      const exact = Object.fromEntries(keys.flatMap((key, index) => (values[index] === undefined ? [] : [[key, values[index]]]))) as Need['exact'] // prettier-ignore
      const need = needOf(exact, livestockId)
      const faults = keys.flatMap((key) => (exact[key] === undefined ? [] : [orderFault(need, key, exact[key], METRIC)]))
      const group = livestockGroup(livestockId)
      const refused = !NeedSchema.safeParse(need).success || (group !== undefined && markFaults(group, exact).length > 0)
      expect(faults.some((fault) => fault !== null)).toBe(refused)
    },
  )
})
