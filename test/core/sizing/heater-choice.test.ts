import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

const adviceIn = (room: Partial<Conditions>) => reportOf({ heaters: [] }, room).figures.heaterAdvice
const build = (powerW: number, count: number) => ({ heaters: [one('Torvane', { powerW }, count)] })

describe('how many heaters of what power', () => {
  /** Own rule: one alone holds the target less 2 K in the coldest room, one stuck on stays below the danger mark in the warmest. */
  it('are two, of which one alone holds the target less 2 K, and none is too strong', () => {
    const advice = adviceIn({ coldestRoomC: 20, warmestRoomC: 22 })
    expect(advice).toMatchObject({ count: 2, oneHolds: true })
    for (const powerW of [advice?.eachLowestW ?? NaN, advice?.eachHighestW ?? NaN]) {
      const report = reportOf(build(powerW, 2), { coldestRoomC: 20, warmestRoomC: 22 })
      expect(report.figures.oneFailedC).toBeGreaterThanOrEqual(23)
      expect(report.figures.stuckTemperatureC).toBeLessThanOrEqual(31)
      expect(report.findings.find(({ check }) => check === 'heater_stuck')?.verdict).toBe('fits')
      expect(report.findings.find(({ check }) => check === 'heater_holds')?.verdict).toBe('fits')
    }
    // 5 W less, and one alone no longer does.
    const less = reportOf(build((advice?.eachLowestW ?? NaN) - 5, 2), { coldestRoomC: 20, warmestRoomC: 22 })
    expect(less.figures.oneFailedC).toBeLessThan(23)
  })

  it('give up the spare before safety where no power has both, and say so', () => {
    const advice = adviceIn({ coldestRoomC: 16, warmestRoomC: 24 })
    expect(advice?.oneHolds).toBe(false)
    const words = sayPhrase(findingOf('heater_holds', { heaters: [] }, { coldestRoomC: 16, warmestRoomC: 24 }).action?.text ?? [], METRIC)
    expect(words).toMatch(/One alone does not hold 23\.0 °C in the coldest room: a power that did would be too much when it sticks on\.$/)
  })

  it('are none where no power both holds and is safe; what would is told', () => {
    const room = { coldestRoomC: 5, warmestRoomC: 30 }
    expect(adviceIn(room)).toBeUndefined()
    const words = sayPhrase(findingOf('heater_holds', { lid: null, heaters: [] }, room).action?.text ?? [], METRIC)
    expect(words).toMatch(/No power both holds .* What would: heaters of \d+ W in all, with an external controller .* A lid lowers/)
  })

  it('is one for a tank that needs less than two small ones give', () => {
    const tank = one('Nook', { lengthMm: 300, widthMm: 200, heightMm: 250, glassMm: 4, bottomMm: 4, material: 'glass' as const })
    expect(
      reportOf({ tank, heaters: [], lights: [], filters: [] }, { coldestRoomC: 21, warmestRoomC: 22 }).figures.heaterAdvice,
    ).toMatchObject({
      count: 1,
      oneHolds: false,
    })
  })

  it('are none where the animals need no heat', () =>
    expect(reportOf({ heaters: [] }, { livestock: group('goldfish-fancy') }).figures.heaterAdvice).toBeUndefined())

  it('ask for more in a colder room', () => {
    fc.assert(
      fc.property(fc.double({ min: 15, max: 20, noNaN: true }), fc.double({ min: 0.5, max: 3, noNaN: true }), (coldestRoomC, colder) => {
        const all = (roomC: number) => {
          const advice = adviceIn({ coldestRoomC: roomC, warmestRoomC: 22 })
          return advice ? advice.count * advice.eachLowestW : Infinity
        }
        // Giving up the spare lets the least power fall: of the same kind of advice only.
        const [warm, cold] = [
          adviceIn({ coldestRoomC, warmestRoomC: 22 }),
          adviceIn({ coldestRoomC: coldestRoomC - colder, warmestRoomC: 22 }),
        ]
        if (warm?.oneHolds === cold?.oneHolds && warm?.count === cold?.count)
          expect(all(coldestRoomC - colder)).toBeGreaterThanOrEqual(all(coldestRoomC))
      }),
      { numRuns: 60 },
    )
  })
})

const hoursIn = (words: string, found: RegExp): number => Number(found.exec(words)?.[1])

describe('when heat fails', () => {
  it('tells what is held with one of two off, and how long all lost leaves', () => {
    const two = build(150, 2)
    const { oneFailedC, heatLostHours } = reportOf(two).figures
    const words = sayPhrase(findingOf('heater_spare', two).reason, METRIC)
    expect(words).toContain(`falls to ${oneFailedC?.toFixed(1)} °C`)
    expect(hoursIn(words, /With all heat lost, as in a power cut, it is as cold as they bear after (\d+) h\./)).toSatisfy(
      (hours: number) => Math.abs(hours - (heatLostHours ?? NaN)) < 0.6,
    )
    // One heater's failing is all heat lost: told once.
    const single = sayPhrase(findingOf('heater_spare', build(300, 1)).reason, METRIC)
    expect(hoursIn(single, /After (\d+) h it is below/)).toBe(hoursIn(words, /power cut, .* after (\d+) h/))
    expect(single).not.toContain('power cut')
  })

  it('tells the hours to the danger mark in the figures as in the finding', () => {
    const report = reportOf(build(400, 1), { warmestRoomC: 26 })
    const words = sayPhrase(findingOf('heater_stuck', build(400, 1), { warmestRoomC: 26 }).reason, METRIC)
    expect(hoursIn(words, /after (\d+) h/)).toSatisfy((hours: number) => Math.abs(hours - (report.figures.stuckHours ?? NaN)) < 0.6)
    expect(reportOf(build(25, 1), { warmestRoomC: 20, coldestRoomC: 18 }).figures.stuckHours).toBeUndefined()
  })
})
