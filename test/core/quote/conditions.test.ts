import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { livestockGroup, LIVESTOCK_GROUPS } from '../../../core/catalog/livestock.ts'
import type { Install } from '../../../core/install.ts'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { emptyNeed } from '../../../core/quote/empty-draft.ts'
import type { NeedExact } from '../../../core/quote/need.ts'
import { markFaults } from '../../../core/sizing/livestock-marks.ts'
import { NeedSchema } from '../../../core/quote/schema.ts'
import { CONDITION_FIELDS } from '../../../core/sizing/condition-fields.ts'
import { METRIC } from '../../../core/units/say.ts'

const install: Install = {
  name: 'Tarnwick Aquarium Club', mode: 'club', currency: 'USD', country: 'US', timeZone: 'America/New_York', units: METRIC, contact: '555-0100', paper: 'a4',
  energyPriceMinor: 17, circuitVoltageV: 120, circuitCurrentA: 15,
} // prettier-ignore

const resolved = (exact: NeedExact, livestockId = 'small-tropical') => resolveConditions({ ...emptyNeed(), livestockId, exact }, install)
const faults = (exact: NeedExact, livestockId = 'small-tropical') => [
  ...(NeedSchema.safeParse({ livestockId, exact }).error?.issues.map(({ path, message }) => `${path.join('.')}: ${message}`) ?? []),
  ...markFaults(livestockGroup(livestockId)!, exact).map(({ field, message }) => `exact.${field}: ${message}`),
]

describe('the ends of the room', () => {
  /** Own: the default spans 18 to 26 °C and keeps 4 K from a stated figure that passes it. */
  it.each<[NeedExact, number, number]>([
    [{}, 18, 26],
    [{ coldestRoomC: 30 }, 30, 34],
    [{ coldestRoomC: 23 }, 23, 27],
    [{ coldestRoomC: 15 }, 15, 26],
    [{ warmestRoomC: 12 }, 8, 12],
    [{ warmestRoomC: 30 }, 18, 30],
    [{ coldestRoomC: 20, warmestRoomC: 21 }, 20, 21],
    [{ coldestRoomC: 25, warmestRoomC: 20 }, 20, 25],
  ])('of %j run from %s to %s °C', (exact, coldestRoomC, warmestRoomC) => {
    expect(resolved(exact)).toMatchObject({ coldestRoomC, warmestRoomC })
  })

  it('stay assumed where a default gave way', () => {
    expect(resolved({ coldestRoomC: 30 }).assumed).toContain('warmestRoomC')
    expect(resolved({ coldestRoomC: 30 }).assumed).not.toContain('coldestRoomC')
  })
})

describe('temperatures over those of the livestock group', () => {
  it.each<[NeedExact, string]>([
    [
      { targetC: 18 },
      'exact.targetC: Target temperature is 18 °C, below the lowest safe temperature of this group (Small tropical community), 21 °C. Enter at least 21 °C, or a lower lowest safe temperature.',
    ],
    [
      { lowestC: 26 },
      'exact.lowestC: Lowest safe temperature is 26 °C, above the target of this group (Small tropical community), 25 °C. Enter at most 25 °C, or a higher target temperature.',
    ],
    [
      { targetC: 32 },
      'exact.targetC: Target temperature is 32 °C and the danger mark of this group (Small tropical community) 32 °C. Enter less than 32 °C, or a higher danger mark.',
    ],
    [
      { dangerC: 25 },
      'exact.dangerC: Danger mark is 25 °C and the target of this group (Small tropical community) 25 °C. Enter more than 25 °C, or a lower target temperature.',
    ],
    [
      { targetC: 30, dangerC: 30 },
      'exact.dangerC: The danger mark must be above the target temperature: 30 °C and 30 °C. Swap them, or correct one.',
    ],
  ])('of %j are refused with field, limit and fix', (exact, message) => expect(faults(exact)).toEqual([message]))

  it('are taken in any order that makes sense', () => {
    expect(faults({ targetC: 18, lowestC: 15 })).toEqual([])
    expect(faults({ targetC: 31.9 })).toEqual([])
    expect(faults({ targetC: 20, lowestC: 18, dangerC: 24 })).toEqual([])
    expect(faults({ targetC: 18 }, 'cool-stream')).toEqual([])
  })

  it('carry the end of comfort along, below the danger mark', () => {
    expect(resolved({ targetC: 30 }).livestock).toMatchObject({ lowestC: 21, targetC: 30, highestC: 30, dangerC: 32 })
    expect(resolved({ targetC: 24, dangerC: 26 }).livestock).toMatchObject({ targetC: 24, highestC: 25, dangerC: 26 })
  })

  it('come in order from a draft that is older than the check, the danger mark unmoved', () => {
    expect(resolved({ targetC: 33 }).livestock).toMatchObject({ lowestC: 21, targetC: 31, highestC: 31, dangerC: 32 })
    expect(resolved({ targetC: 18 }).livestock).toMatchObject({ lowestC: 18, targetC: 18, highestC: 28, dangerC: 32 })
    expect(resolved({ lowestC: 27 }).livestock).toMatchObject({ lowestC: 27, targetC: 27, highestC: 28, dangerC: 32 })
    expect(resolved({ dangerC: 20 }).livestock).toMatchObject({ lowestC: 19, targetC: 19, highestC: 19, dangerC: 20 })
  })
})

/** Those that come in an order; the tap's stands for itself. */
const TEMPERATURES = CONDITION_FIELDS.filter((field) => field.type === 'number' && field.unit === 'degC' && field.key !== 'tapC')
const anyTemperatures = fc.record(
  Object.fromEntries(
    TEMPERATURES.map((field) => [field.key, fc.integer({ min: 'min' in field ? field.min : 0, max: 'max' in field ? field.max : 0 })]),
  ),
  { requiredKeys: [] },
)
const anyGroupId = fc.constantFrom(...LIVESTOCK_GROUPS.map(({ id }) => id))

it('has five temperatures in order to state', () => expect(TEMPERATURES.map(({ key }) => key)).toHaveLength(5))

it('gives every mix of stated and assumed temperatures in order, and keeps whatever the validator accepts', () => {
  fc.assert(
    fc.property(anyTemperatures, anyGroupId, (stated, livestockId) => {
      const { coldestRoomC, warmestRoomC, livestock } = resolved(stated, livestockId)
      const { lowestC, targetC, highestC, dangerC } = livestock
      expect(coldestRoomC).toBeLessThanOrEqual(warmestRoomC)
      expect(lowestC).toBeLessThanOrEqual(targetC)
      expect(targetC).toBeLessThanOrEqual(highestC)
      expect(highestC).toBeLessThan(dangerC)
      if (faults(stated, livestockId).length === 0)
        expect({ coldestRoomC, warmestRoomC, lowestC, targetC, highestC, dangerC }).toMatchObject(stated)
    }),
    { numRuns: 1000 },
  )
})
