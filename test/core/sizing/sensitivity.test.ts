import { describe, expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { VERDICTS, type Check } from '../../../core/sizing/finding.ts'
import type { InputEnd } from '../../../core/sizing/open-input.ts'
import { openInputs } from '../../../core/sizing/open-inputs.ts'
import type { SizingReport, SizingSubject, ToldReport } from '../../../core/sizing/report.ts'
import { withRanges } from '../../../core/sizing/sensitivity.ts'
import { toldReport } from '../../../core/sizing/told-report.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, gear, one } from './sample-build.ts'

const ranged = (subject: SizingSubject): ToldReport => withRanges(subject, sizingReport(subject))
const findingIn = ({ findings }: SizingReport, check: Check) => {
  const found = findings.find((finding) => finding.check === check)
  if (!found) throw new Error(`no finding for ${check}`)
  return found
}
const says = (subject: SizingSubject, check: Check): string[] =>
  (findingIn(ranged(subject), check).turns ?? []).map(({ input, at, verdict }) => `${input} ${sayPhrase(at, METRIC)}: ${verdict}`)

/** A filter of which somebody measured the flow, and a place by the sea: nothing is open then. */
const measured = [one('Pellick canister', { ...gear().filters[0]!.spec, measuredFlowLph: 1200 })]
const stated: SizingSubject = { gear: gear({ filters: measured }), conditions: conditions({ altitudeM: 0 }) }
const roomOpen: SizingSubject = {
  gear: gear(),
  conditions: conditions({ assumed: ['coldestRoomC', 'warmestRoomC', 'waterBelowRimMm', 'otherLoadW'] }),
}
const { glassMm: _glass, bottomMm: _bottom, ...bare } = gear().tank!.spec
const glassOpen: SizingSubject = { gear: gear({ tank: one('Wendlemere', bare) }), conditions: conditions() }

describe('a build of which everything is stated', () => {
  it('has no range, no turn and only what it misses to ask', () => {
    const report = ranged(stated)
    expect(openInputs(stated)).toEqual([])
    expect(report.findings.filter(({ range, limitRange, worst, turns }) => range || limitRange || worst || turns?.length)).toEqual([])
    // A timber floor of which nobody looked at the joists.
    expect(report.questions?.map(({ place }) => place)).toEqual([{ at: 'need', field: 'joistSpanMm' }])
  })
})

describe('a build of which something is open', () => {
  it('keeps every verdict, value and sentence as it was', () => {
    const before = toldReport(sizingReport(roomOpen))
    const after = ranged(roomOpen)
    const plain = after.findings.map(({ range: _r, limitRange: _l, worst: _w, turns: _t, ...finding }) => finding)
    expect(plain).toEqual(before.findings)
    expect(after.counts).toEqual(before.counts)
  })

  it('says which answer alone would change a verdict, and to which: checked by stating that answer', () => {
    expect(says(roomOpen, 'warm_room')).toContain('warmest room temperature 33 °C: does_not_fit')
    const warm = sizingReport({ gear: gear(), conditions: conditions({ warmestRoomC: 33 }) })
    expect(findingIn(warm, 'warm_room').verdict).toBe('does_not_fit')
    expect(says(roomOpen, 'electrical_load')).toEqual(['other load on the circuit 1,500 W: does_not_fit'])
    expect(says(roomOpen, 'stand_load')).toEqual([])
  })

  it('carries the value over all corners: the same ends, to their last digit, as every combination tried in turn', () => {
    for (const subject of [roomOpen, glassOpen]) {
      const report = ranged(subject)
      const all = everyCorner(subject)
      for (const finding of report.findings) {
        const values = all.flatMap(({ findings }) => {
          const { value } = findings.find(({ check }) => check === finding.check) ?? {}
          return value && value.unit === finding.value?.unit ? [value.value] : []
        })
        if (finding.value === undefined) continue
        const told = finding.range ?? { low: finding.value, high: finding.value }
        // What one input alone moves by less than the last digit may add up with others to one of it.
        const lastDigit = 1.01 * 10 ** -finding.value.digits
        expect([finding.check, Math.abs(told.low.value - Math.min(...values)) <= lastDigit]).toEqual([finding.check, true])
        expect([finding.check, Math.abs(told.high.value - Math.max(...values)) <= lastDigit]).toEqual([finding.check, true])
      }
    }
  })

  it('tells the range of a limit that moves where the value stands still', () => {
    const holds = findingIn(ranged(roomOpen), 'heater_holds')
    expect(holds.range).toBeUndefined()
    expect(holds.limitRange!.low.value).toBeLessThan(holds.limitRange!.high.value)
  })

  it('names both ends of an unstated thickness where a verdict hangs on it', () => {
    const subject = {
      gear: gear({ tank: one('Wendlemere', bare), heaters: [one('Torvane', { powerW: 74, cordMm: 2600 }, 2)] }),
      conditions: conditions(),
    }
    expect(findingIn(sizingReport(subject), 'heater_holds')).toMatchObject({ verdict: 'not_known' })
    const turns = says(subject, 'heater_holds')
    expect(turns.length).toBeGreaterThan(0)
    expect(turns.every((turn) => /thickness/.test(turn))).toBe(true)
  })
})

/** By hand: heaters of 200 W, a filter of 20 and a light of 30, and on a circuit of 15 A at 120 V what else may run on it: 0 to 1500 W. */
describe('ranges by hand', () => {
  const WITHOUT = { range: undefined, limitRange: undefined, worst: undefined, turns: [] }
  const told = (report: SizingReport, check: Check) => {
    const { range, limitRange, worst, turns } = findingIn(report, check)
    return { range: range && [range.low.value, range.high.value], limitRange, worst, turns }
  }

  it('of one open input are its ends, and what it turns', () => {
    const report = ranged({ gear: stated.gear, conditions: conditions({ altitudeM: 0, assumed: ['otherLoadW'] }) })
    expect(told(report, 'electrical_load')).toEqual({
      range: [250, 1750],
      limitRange: undefined,
      worst: 'does_not_fit',
      turns: [{ input: 'other load on the circuit', at: [{ value: 1500, unit: 'W', digits: 0 }], verdict: 'does_not_fit' }],
    })
    for (const { check } of report.findings) if (check !== 'electrical_load') expect([check, told(report, check)]).toEqual([check, WITHOUT])
  })

  it('of two are the corners of both', () => {
    // 297.327 L at 0.5 to 2 W each, twice: 297.3 to 1189.3 W of heaters, 50 of the rest and 0 to 1500.
    const subject = {
      gear: gear({ heaters: [one('Torvane', { cordMm: 2600 }, 2)] }),
      conditions: conditions({ assumed: ['otherLoadW'] }),
    }
    expect(told(ranged(subject), 'electrical_load').range).toEqual([347, 2739])
  })

  it('of a floor are its own words', () => {
    const report = ranged({ gear: gear(), conditions: conditions({ floor: 'unknown', assumed: ['floor'] }) })
    expect(findingIn(report, 'floor_load')).toMatchObject({ verdict: 'not_known', wording: 'ask before you place it' })
    expect(told(report, 'floor_load')).toMatchObject({
      worst: undefined,
      turns: [{ input: 'kind of floor', at: ['a slab on the ground'], verdict: 'marginal', wording: 'within the usual allowance' }],
    })
  })

  it('leave out an end at which the tank holds no water above its bed', () => {
    // Inside 90 mm high: filled to 80 mm below the rim it would have 10 mm of water under 30 mm of gravel.
    const shallow = { lengthMm: 900, widthMm: 450, heightMm: 100, glassMm: 6, bottomMm: 10, material: 'glass' as const }
    const subject = {
      gear: gear({ tank: one('Wendlemere', shallow) }),
      conditions: conditions({ substrateDepthMm: 30, waterBelowRimMm: 40, assumed: ['waterBelowRimMm'] }),
    }
    const report = ranged(subject)
    expect(report.findings.flatMap(({ turns = [] }) => turns).filter(({ verdict }) => verdict === 'not_known')).toEqual([])
    // And one that holds none is not made to hold it.
    const dry = { ...subject, conditions: { ...subject.conditions, waterBelowRimMm: 80 } }
    expect(ranged(dry).findings.every(({ turns = [] }) => turns.length === 0)).toBe(true)
  })

  it('tell the worst answer first, and of the same kind what moves more', () => {
    const subject = {
      gear: gear({ heaters: [one('Torvane', { powerW: 100, cordMm: 2600 }, 2)] }),
      conditions: conditions({ coldestRoomC: 16, assumed: ['coldestRoomC', 'warmestRoomC', 'waterBelowRimMm', 'substrateDepthMm'] }),
    }
    for (const { turns = [] } of ranged(subject).findings) {
      const ranks = turns.map(({ verdict }) => ['does_not_fit', 'not_known', 'marginal', 'fits'].indexOf(verdict))
      expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    }
  })
  it('tell an end that moves nothing but the verdict behind one that moves the value', () => {
    // 12 h of light in place of 8 moves no light at the bed; plants of high light do, and both make it marginal.
    const subject = { gear: gear(), conditions: conditions({ assumed: ['lightHoursPerDay', 'plants'] }) }
    expect(says(subject, 'light_level')).toEqual(['kind of plants of high light: marginal', 'hours of light a day 12 h: marginal'])
  })

  it('tell the room that harms before the room that helps, though the cooler one is tried first', () => {
    const subject = {
      gear: gear({ heaters: [one('Torvane', { powerW: 74, cordMm: 2600 }, 2)] }),
      conditions: conditions({ assumed: ['warmestRoomC'] }),
    }
    expect(findingIn(sizingReport(subject), 'heater_stuck').verdict).toBe('marginal')
    expect(says(subject, 'heater_stuck')).toEqual(['warmest room temperature 33 °C: does_not_fit', 'warmest room temperature 22 °C: fits'])
  })

  it('have the worst verdict of every combination, of which one that is not known is none', () => {
    const lower = { gear: gear({ tank: one('Wendlemere', bare) }), conditions: conditions({ assumed: ['waterBelowRimMm'] }) }
    expect(says(lower, 'filter_flow')).toEqual(['water level below the rim 10 mm: not_known'])
    for (const subject of [roomOpen, glassOpen, lower]) {
      const all = everyCorner(subject)
      for (const { check, verdict, worst = verdict } of ranged(subject).findings) {
        const verdicts = [verdict, ...all.flatMap(({ findings }) => findings.find((each) => each.check === check)?.verdict ?? [])]
        const rank = Math.min(...verdicts.filter((each) => each !== 'not_known').map((each) => VERDICTS.indexOf(each)))
        if (Number.isFinite(rank)) expect([check, worst === 'not_known' ? rank > 0 : worst === VERDICTS[rank]]).toEqual([check, true])
      }
    }
  })

  it('of a most are its own ends: the room in a sump by the water that stands in it', () => {
    const subject = {
      gear: gear({ sump: one('Osmere Sump', { totalVolumeL: 66 }) }),
      conditions: conditions({ siphonBelowMm: 30, pipeVolumeL: 1 }),
    }
    const drained = findingIn(ranged(subject), 'drain_down')
    expect(drained.limit?.kind).toBe('at_most')
    const limits = everyCorner(subject).map(({ findings }) => {
      const { limit } = findings.find(({ check }) => check === 'drain_down')!
      return limit?.kind === 'at_most' ? limit.high.value : NaN
    })
    expect([drained.limitRange?.low.value, drained.limitRange?.high.value]).toEqual([Math.min(...limits), Math.max(...limits)])
    expect(drained.limitRange!.low.value).toBeLessThan(drained.limitRange!.high.value)
  })
})

/** Every combination of ends, the stand-in among them. */
function everyCorner(subject: SizingSubject): SizingReport[] {
  let corners: SizingSubject[] = [subject]
  for (const { ends } of openInputs(subject))
    corners = corners.flatMap((corner) => [corner, ...ends.map(({ state }: InputEnd) => state(corner))])
  return corners.map(sizingReport)
}

describe('the three questions', () => {
  it('ask first what bears on what can hurt soonest, and lead to where it is answered', () => {
    const subject = {
      gear: gear({ power: [one('Strip', { outlets: 6 })] }),
      conditions: conditions({ floor: 'unknown', assumed: ['warmestRoomC', 'floor', 'plants', 'circuitProtected'] }),
    }
    const questions = ranged(subject).questions ?? []
    expect(questions.map(({ text }) => text)).toEqual([
      'How warm does the room get on a summer afternoon?',
      'Does a GFCI or residual-current device protect the circuit?',
      'Has the power strip a protective device?',
    ])
    expect(questions[0]?.place).toEqual({ at: 'need', field: 'warmestRoomC' })
    expect(questions[0]?.checks[0]).toBe('heater_stuck')
    expect(questions[2]?.place).toEqual({ at: 'slot', slot: 'protect_circuit' })
  })

  it('ask for the tank where there is none, and for nothing of it', () => {
    const questions = ranged({ gear: gear({ tank: null }), conditions: conditions() }).questions ?? []
    expect(questions.map(({ text }) => text)).toEqual(['Which tank will it be?'])
  })
})
