import { describe, expect, it } from 'vitest'
import { SpecSchema } from '../../../core/catalog/schema.ts'
import type { FilterSpec } from '../../../core/catalog/spec.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

/** The worked pump of operating-point.test.ts: its media take 0.26 of the highest head at the printed flow when clean, which is 3e6 m/(m³/s)². */
const worked: FilterSpec = {
  type: 'canister',
  ratedFlowLph: 1500,
  maxHeadM: 2,
  midHeadM: 1.5,
  midFlowLph: 750,
  hoseMm: 16,
  hoseLengthMm: 3000,
  fittings: 'usual',
  powerW: 20,
  mediaVolumeL: 9,
}
const filters = (spec: FilterSpec, count = 1) => ({ filters: [one('Pellick C-1500', spec, count)] })

describe('a canister on its pump’s curve', () => {
  const { pumpCurve: curve } = reportOf(filters(worked)).figures

  /** Own, by another solver: 962.90 L/h with clean media, 835.16 with media loaded to four times that; 4.051 and 3.514 an hour in 237.7 L. */
  it('gives what pump, hoses and media leave of the printed flow', () => {
    expect(curve?.cleanAt.flowLph).toBeGreaterThan(961)
    expect(curve?.cleanAt.flowLph).toBeLessThan(965)
    expect(curve?.loadedAt.flowLph).toBeGreaterThan(833)
    expect(curve?.loadedAt.flowLph).toBeLessThan(837)
    expect(findingOf('filter_flow', filters(worked))).toMatchObject({
      verdict: 'marginal',
      value: { value: 3.5, unit: 'per_hour' },
      assumed: ['resistance of the media'],
    })
    expect(sayPhrase(findingOf('filter_flow', filters(worked)).reason, METRIC)).toMatch(
      /^Of the printed 1,500 L\/h, hoses and media leave 96\d L\/h when clean and 83\d L\/h when loaded: the water goes through 4\.1 times an hour with clean media and 3\.5 times an hour with loaded ones; these animals want at least 4 times an hour and bear 10 times an hour at most\.$/,
    )
  })

  it('draws pump and systems through the points where they meet', () => {
    if (!curve) throw new Error('no curve')
    expect(curve.pump[0]).toEqual({ flowLph: 0, headM: 2 })
    expect(curve.pump.at(-1)).toEqual({ flowLph: 1500, headM: 0 })
    for (const line of [curve.pump, curve.clean, curve.loaded])
      for (const [index, { flowLph }] of line.entries()) if (index > 0) expect(flowLph).toBeGreaterThan(line[index - 1]!.flowLph)
    for (const { headM } of [...curve.clean, ...curve.loaded]) expect(headM).toBeLessThanOrEqual(2)
    expect(curve.loadedAt.headM).toBeGreaterThan(curve.cleanAt.headM)
    expect(curve.cleanLph).toEqual({ low: curve.cleanAt.flowLph, high: curve.cleanAt.flowLph })
    expect(curve).toMatchObject({ filter: 'Pellick C-1500', floorLph: 951, ceilingLph: 2377 })
  })

  it('runs over what nobody stated, and says what would settle it', () => {
    const { hoseLengthMm: _, fittings: __, midHeadM: ___, ...bare } = worked
    const found = findingOf('filter_flow', filters({ ...bare, ratedFlowLph: 1700 }))
    expect(found).toMatchObject({
      verdict: 'not_known',
      missing: ['form of the pump’s curve', 'length of the hoses', 'fittings in the hoses'],
    })
    const { cleanLph } = reportOf(filters(bare)).figures.pumpCurve ?? {}
    expect(cleanLph?.low).toBeLessThan(cleanLph?.high ?? 0)
  })

  it('is assumed where every hose and every curve gives one verdict', () => {
    const { hoseLengthMm: _, ...bare } = worked
    expect(findingOf('filter_flow', filters({ ...bare, ratedFlowLph: 6000, midFlowLph: 3000, hoseMm: 40 }))).toMatchObject({
      verdict: 'fits',
      assumed: ['length of the hoses', 'resistance of the media'],
    })
  })

  it('judges the ceiling by it too', () => {
    const strong = filters({ ...worked, ratedFlowLph: 4000, midFlowLph: 2000, hoseMm: 25 })
    expect(findingOf('flow_ceiling', strong, { livestock: group('labyrinth') }).verdict).toBe('does_not_fit')
  })

  it('adds pumps up, and takes a share of what is printed for one without a curve', () => {
    const both = {
      filters: [one('Pellick C-1500', worked), one('Quarrick', { type: 'hang_on' as const, ratedFlowLph: 600, mediaVolumeL: 1 })],
    }
    const found = findingOf('filter_flow', both)
    expect(found.assumed).toEqual(['resistance of the media', 'flow that media leave'])
    // Own: 835 L/h and half of 600 through 237.7 L.
    expect(found.value?.value).toBe(4.8)
  })

  it('leaves the curve out where head or hose is not stated', () => {
    const { maxHeadM: _, midHeadM: __, ...bare } = worked
    expect(reportOf(filters(bare)).figures.pumpCurve).toBeUndefined()
    expect(findingOf('filter_flow', filters(bare)).assumed).toEqual(['flow that media leave'])
  })
})

describe('a stated point of a curve', () => {
  it.each([
    [{ ...worked, midHeadM: 2 }, 'Head at a point of its curve is not below the highest head: 2 and 2 m. Enter less, or leave it empty.'],
    [{ ...worked, midFlowLph: 1600 }, 'Flow at that point is not below the rated flow: 1600 and 1500 L/h. Enter less, or leave it empty.'],
  ])('is refused beyond the curve’s ends', (spec, words) => {
    const read = SpecSchema.filter.safeParse(spec)
    expect(read.error?.issues.map(({ message }) => message)).toEqual([words])
  })
  it('is taken between them, and by halves', () => {
    expect(SpecSchema.filter.safeParse(worked).success).toBe(true)
    expect(SpecSchema.filter.safeParse({ midHeadM: 1 }).success).toBe(true)
  })
})
