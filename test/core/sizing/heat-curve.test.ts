import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { heatCurve } from '../../../core/sizing/heat-curve.ts'
import { heatingOf } from '../../../core/sizing/heating.ts'
import { anyGear, anyRoom } from './any-subject.ts'
import { isNear } from './reference-tanks.ts'
import { roundTank } from './round-tank.ts'
import { one, reportOf } from './sample-build.ts'

const curveOf = (...changes: Parameters<typeof reportOf>) => {
  const { heatCurve } = reportOf(...changes).figures
  if (!heatCurve) throw new Error('a tank in a room has a curve')
  return heatCurve
}

describe('heat against the temperature of the room', () => {
  it('spans the stated rooms and four kelvin beyond, evenly', () => {
    const { points, coldestRoomC, warmestRoomC, targetC } = curveOf({}, { coldestRoomC: 18, warmestRoomC: 26 })
    expect(points.map(({ roomC }) => roomC)).toEqual([14, 15.3, 16.7, 18, 19.3, 20.7, 22, 23.3, 24.7, 26, 27.3, 28.7, 30])
    expect([coldestRoomC, warmestRoomC, targetC]).toEqual([18, 26, 25])
  })

  it('passes through the figures of the checks', () => {
    const report = reportOf({}, { coldestRoomC: 18, warmestRoomC: 26 })
    const at = (roomC: number) => report.figures.heatCurve?.points.find((point) => point.roomC === roomC)
    expect(at(18)?.highW).toBe(report.figures.coldLossW)
    expect(at(22)?.usualW).toBe(report.figures.usualLossW)
  })

  /** Own: the lidded 75 gallon tank at 25 °C loses 62.29 W in a room of 22 °C, as usual; tolerance 1e-3. */
  it('draws the worked loss of the lidded tank', () =>
    isNear(curveOf({}, { coldestRoomC: 18, warmestRoomC: 26 }).points.find(({ roomC }) => roomC === 22)?.usualW, 62.29, 1e-3))

  /**
   * Own, by a second program, of the lidded 75 gallon tank at 25 °C: at the low-loss end, as usual and at the high-loss end in rooms of 14, 21 and 28 °C.
   * The room of 28 °C warms the water by itself.
   */
  it.each([
    [14, 140.1, 213, 223.8],
    [21, 52.5, 81.2, 92],
    [28, 0, 0, 0],
  ])('draws the three ends in a room of %s °C', (roomC, lowW, usualW, highW) =>
    expect(curveOf().points.find((point) => point.roomC === roomC)).toEqual({ roomC, lowW, usualW, highW }),
  )

  it('draws a room whose ends were given the wrong way round from the colder to the warmer', () => {
    const rooms = (coldestRoomC: number, warmestRoomC: number) =>
      curveOf({}, { coldestRoomC, warmestRoomC }).points.map(({ roomC }) => roomC)
    expect(rooms(24, 18)).toEqual(rooms(18, 24))
  })

  it('asks for less heat the warmer the room, and never for less than none', () => {
    const { points } = curveOf({}, { coldestRoomC: 10, warmestRoomC: 40 })
    for (const end of ['lowW', 'usualW', 'highW'] as const) {
      const watts = points.map((point) => point[end])
      expect(watts).toEqual([...watts].sort((a, b) => b - a))
      expect(watts[0]).toBeGreaterThan(0)
      expect(watts.at(-1)).toBe(0)
    }
  })

  it('has a line for one heater and one for all, and none without a power', () => {
    expect(curveOf()).toMatchObject({ oneHeaterW: 100, allHeatersW: 200 })
    const two = curveOf({ heaters: [one('Torvane 50', { powerW: 50 }), one('Torvane 150', { powerW: 150 })] })
    expect(two).toMatchObject({ oneHeaterW: 50, allHeatersW: 200 })
    for (const heaters of [[], [one('Torvane', { lengthMm: 200 })]]) {
      expect(curveOf({ heaters })).not.toHaveProperty('oneHeaterW')
      expect(curveOf({ heaters })).not.toHaveProperty('allHeatersW')
    }
  })

  /**
   * A room warmer than the water warms it through bare panes, while through insulated ones only vapour leaves: by hand, at 25 °C in a room of 27 °C,
   * 0.01 W/Pa × (3169.2 − 0.7 × 3567.1 Pa) = 6.7 W at the low-loss end, and nothing is asked for at the two others.
   */
  it('tells the band in order where a room warmer than the water turns the ends round', () => {
    const situation = roundTank({}, { coldestRoomC: 21, warmestRoomC: 25 })
    const heating = heatingOf(situation)
    const cases = (dryWPerK: number, vapourWPerPa: number) => [
      { loss: { ...heating.usual[0]!.loss, dryWPerK, vapourWPerPa }, capacityJPerK: 1 },
    ]
    const bare = cases(400, 0)
    const { points } = heatCurve(situation, { ...heating, warm: cases(0, 0.01), usual: bare, cold: bare })
    const { lowW, usualW, highW } = points.find(({ roomC }) => roomC === 27) ?? { lowW: NaN, usualW: NaN, highW: NaN }
    expect([lowW, usualW, highW]).toEqual([0, 0, 6.7])
  })

  it('never lets the low end lie above the usual one, nor that above the high one', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        for (const { lowW, usualW, highW } of sizingReport({ gear: someGear, conditions: room }).figures.heatCurve?.points ?? []) {
          expect(lowW).toBeLessThanOrEqual(usualW)
          expect(usualW).toBeLessThanOrEqual(highW)
        }
      }),
      { numRuns: 300 },
    )
  })
})
