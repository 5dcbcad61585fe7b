import { describe, expect, it } from 'vitest'
import { COMMON_SIZES, commonSize } from '../../core/catalog/common-sizes.ts'
import { LIVESTOCK_GROUPS, livestockGroup } from '../../core/catalog/livestock.ts'
import { findingOf } from '../core/sizing/sample-build.ts'

describe('livestock groups', () => {
  it('are at least eight, each with an id of its own', () => {
    expect(LIVESTOCK_GROUPS.length).toBeGreaterThanOrEqual(8)
    expect(new Set(LIVESTOCK_GROUPS.map(({ id }) => id)).size).toBe(LIVESTOCK_GROUPS.length)
    expect(livestockGroup('no-such-group')).toBeUndefined()
  })

  it.each(LIVESTOCK_GROUPS)('$name: marks in order and every figure positive', (group) => {
    expect(group.lowestC).toBeLessThan(group.targetC)
    expect(group.targetC).toBeLessThan(group.highestC)
    expect(group.highestC).toBeLessThan(group.dangerC)
    expect(group.flowFloorPerHour).toBeGreaterThan(0)
    if (group.flowCeilingPerHour !== null) expect(group.flowCeilingPerHour).toBeGreaterThan(group.flowFloorPerHour)
    expect(group.smallestVolumeL).toBeGreaterThan(0)
    expect(group.feedGramsPerDay).toBeGreaterThan(0)
    // Nothing in the table was read off a standard: the finding that cites it must say so.
    const cited = findingOf('smallest_volume', {}, { livestock: group }).source
    expect(['common_practice', 'from_memory']).toContain(cited.tag)
    expect(cited.text).toContain(group.source)
  })
})

describe('common sizes', () => {
  it('run from 5.5 to 180 US gallons and from 30 to 150 cm', () => {
    const us = COMMON_SIZES.filter(({ system }) => system === 'us')
    const metric = COMMON_SIZES.filter(({ system }) => system === 'metric')
    expect([us[0]?.label, us.at(-1)?.label]).toEqual(['5.5 gal', '180 gal'])
    expect([metric[0]?.lengthMm, metric.at(-1)?.lengthMm]).toEqual([300, 1500])
    for (const form of ['long', 'high', 'breeder']) expect(us.some(({ label }) => label.endsWith(form))).toBe(true)
    expect(new Set(COMMON_SIZES.map(({ id }) => id)).size).toBe(COMMON_SIZES.length)
  })

  it('understand "20 long" and "90 cm"', () => {
    // 30 × 12 × 12 in and 90 × 45 × 45 cm: common practice.
    expect(commonSize('us-20-long')).toMatchObject({ label: '20 long', lengthMm: 762, widthMm: 305, heightMm: 305 })
    expect(commonSize('cm-90')).toMatchObject({ label: '90 cm', lengthMm: 900, widthMm: 450, heightMm: 450 })
  })

  it.each(COMMON_SIZES)('$id: label and outside box agree within 15 per cent', ({ lengthMm, widthMm, heightMm, labelVolumeL }) => {
    const boxL = (lengthMm * widthMm * heightMm) / 1e6
    expect(boxL / labelVolumeL).toBeGreaterThan(0.9)
    expect(boxL / labelVolumeL).toBeLessThan(1.15)
  })
})
