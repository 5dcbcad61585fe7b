import { describe, expect, it } from 'vitest'
import { groupSource, markFaults, withMarks, type MarkOverrides } from '../../../core/sizing/livestock-marks.ts'
import { group } from './sample-build.ts'

/** Bears 21 °C at the least, is kept at 25, comfortable to 28 and in danger at 32. */
const TROPICAL = group('small-tropical')
const marksOf = ({ lowestC, targetC, highestC, dangerC }: typeof TROPICAL) => [lowestC, targetC, highestC, dangerC]

describe('marks stated over those of a group', () => {
  // Own rule: lowest ≤ target < danger.
  it.each<[MarkOverrides, string[]]>([
    [{}, []],
    [{ targetC: 21 }, []],
    [{ targetC: 20.9 }, ['targetC']],
    [{ lowestC: 25 }, []],
    [{ lowestC: 25.1 }, ['lowestC']],
    [{ targetC: 31.9 }, []],
    [{ targetC: 32 }, ['targetC']],
    [{ dangerC: 25.1 }, []],
    [{ dangerC: 25 }, ['dangerC']],
    [{ lowestC: 33 }, ['lowestC']],
    [{ dangerC: 20 }, ['dangerC']],
    [{ lowestC: 30, dangerC: 20 }, ['lowestC', 'dangerC']],
  ])('%j: faults of %j', (stated, fields) => {
    expect(markFaults(TROPICAL, stated).map(({ field }) => field)).toEqual(fields)
  })

  it('leaves a pair that is stated on both sides to its own validator', () => {
    expect(markFaults(TROPICAL, { lowestC: 27, targetC: 26 })).toEqual([])
    expect(markFaults(TROPICAL, { targetC: 33, dangerC: 33 })).toEqual([])
  })

  it('says the limit and the fix of each', () => {
    expect(markFaults(TROPICAL, { targetC: 18 })[0]?.message).toBe(
      'Target temperature is 18 °C, below the lowest safe temperature of this group (Small tropical community), 21 °C. Enter at least 21 °C, or a lower lowest safe temperature.',
    )
    expect(markFaults(TROPICAL, { lowestC: 26 })[0]?.message).toBe(
      'Lowest safe temperature is 26 °C, above the target of this group (Small tropical community), 25 °C. Enter at most 25 °C, or a higher target temperature.',
    )
    expect(markFaults(TROPICAL, { targetC: 33 })[0]?.message).toBe(
      'Target temperature is 33 °C and the danger mark of this group (Small tropical community) 32 °C. Enter less than 32 °C, or a higher danger mark.',
    )
    expect(markFaults(TROPICAL, { dangerC: 24 })[0]?.message).toBe(
      'Danger mark is 24 °C and the target of this group (Small tropical community) 25 °C. Enter more than 25 °C, or a lower target temperature.',
    )
  })
})

describe('a group with stated marks', () => {
  /** Lowest, target, highest and danger, by the rule: danger is never moved, the target gives way to it by 1 K, comfort ends 1 K below danger at the most. */
  it.each<[MarkOverrides, number[]]>([
    [{}, [21, 25, 28, 32]],
    [{ targetC: 30 }, [21, 30, 30, 32]],
    [{ targetC: 18 }, [18, 18, 28, 32]],
    [{ lowestC: 19 }, [19, 25, 28, 32]],
    [{ lowestC: 27 }, [27, 27, 28, 32]],
    [{ lowestC: 27, targetC: 26 }, [26, 26, 28, 32]],
    [{ dangerC: 28 }, [21, 25, 27, 28]],
    [{ dangerC: 40 }, [21, 25, 28, 40]],
    [{ dangerC: 25 }, [21, 24, 24, 25]],
    [{ targetC: 32 }, [21, 31, 31, 32]],
    [{ targetC: 31.5 }, [21, 31.5, 31.5, 32]],
    [{ targetC: 34, dangerC: 30 }, [21, 29, 29, 30]],
    [{ lowestC: 0, targetC: 0 }, [0, 0, 28, 32]],
  ])('%j: %j', (stated, marks) => {
    expect(marksOf(withMarks(TROPICAL, stated))).toEqual(marks)
  })

  it('keeps everything else of the group', () => {
    expect(withMarks(TROPICAL, { targetC: 26 })).toEqual({ ...TROPICAL, targetC: 26 })
  })
})

it('tells whose marks they are', () => {
  const row = { name: 'Bog pond', source: 'kept so for years' }
  expect(groupSource(row)).toBe('The keeping trade’s marks for this group (Bog pond): kept so for years')
  expect(groupSource({ ...row, standing: 'own' })).toBe('This place’s own marks for this group (Bog pond): kept so for years')
  expect(groupSource({ ...row, standing: 'edited' })).toBe('Marks edited here for this group (Bog pond): kept so for years')
})
