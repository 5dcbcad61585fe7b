import { describe, expect, it } from 'vitest'
import { staffOfBuild, staffPlot, staffScale, type StaffBuild } from '../../../web/plots/staff.ts'

const builds: StaffBuild[] = [
  { letter: 'A', name: 'Long', fullMinor: 121_091, todayMinor: 110_703, bestSeenMinor: 97_841 },
  { letter: 'B', name: 'Box', fullMinor: 73_823, todayMinor: 68_523, bestSeenMinor: 60_184 },
]
const hole: StaffBuild = { letter: 'C', name: 'Clear', fullMinor: null, todayMinor: null, bestSeenMinor: null }
const at = (svg: string, className: string): number[] =>
  [...svg.matchAll(new RegExp(`class="${className}" d="M([\\d.]+) `, 'g'))].map((match) => Number(match[1]))

describe('the staff', () => {
  it('spans every tier of every build and the budget, and ends on round figures', () => {
    const scale = staffScale(builds, 150_000)
    expect(scale).not.toBeNull()
    expect(scale!.lowMinor).toBeLessThan(60_184)
    expect(scale!.highMinor).toBeGreaterThan(150_000)
    expect([scale!.lowMinor % 1000, scale!.highMinor % 1000]).toEqual([0, 0])
  })
  it('places tiers by one linear scale', () => {
    const scale = { lowMinor: 50_000, highMinor: 150_000 }
    const svg = staffOfBuild({ ...builds[0]!, todayMinor: 100_000, fullMinor: 125_000 }, scale, {
      id: 's',
      currency: 'USD',
      budgetMinor: 75_000,
      width: 212,
    })
    // own arithmetic: from 6 to 206 over 100 000 minor units
    expect([at(svg, 'staff-today'), at(svg, 'staff-full'), at(svg, 'staff-budget')]).toEqual([[106], [156], [56]])
  })
  it('draws nothing for an incomplete tier and says that it is incomplete', () => {
    const svg = staffPlot([...builds, hole], 115_000, { id: 's', currency: 'USD' })
    expect(at(svg, 'staff-today')).toHaveLength(2)
    expect(svg).toContain('today incomplete')
  })
  it('has no scale and no drawing where nothing is complete', () => {
    expect(staffScale([hole], 115_000)).toBeNull()
    expect(staffPlot([hole], 115_000, { id: 's', currency: 'USD' })).toBe('')
  })
  it('dashes one budget through all builds', () => {
    expect(at(staffPlot(builds, 115_000, { id: 's', currency: 'USD' }), 'staff-budget')).toHaveLength(1)
    expect(staffPlot(builds, null, { id: 's', currency: 'USD' })).not.toContain('budget')
  })
  it('is a picture with a title and a description under ids of its own', () => {
    const svg = staffPlot(builds, null, { id: 'staff-7', currency: 'USD' })
    expect(svg).toContain('role="img" aria-labelledby="staff-7-t staff-7-d"')
    expect(svg).toContain('today $1,107.03')
  })
})
