import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explainFinding } from '../../../core/explanation/explain-finding.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { Check } from '../../../core/sizing/finding.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { anyGear, anyRoom } from '../sizing/any-subject.ts'
import { conditions, gear, group } from '../sizing/sample-build.ts'

/** A number as it is printed: its value, and what one of its last digit is. Percents are hundredths, and of a bottle its millilitres count. */
interface Printed {
  value: number
  lastDigit: number
}

function printed(text: string): Printed {
  const [, millilitres] = / fl oz \((.* mL)\)/.exec(text) ?? []
  const found = /^(\u2212?)([\d,]+)(?:\.(\d+))?( %)?/.exec(millilitres ?? text.trim())
  if (found === null) throw new Error(`No number: ${text}`)
  const [, minus, whole = '', fraction = '', percent] = found
  const share = percent === undefined ? 1 : 0.01
  const value = Number(`${whole.replaceAll(',', '')}.${fraction || '0'}`) * share
  return { value: minus === '' ? value : -value, lastDigit: 10 ** -fraction.length * share }
}

/** The left side as somebody with a pocket calculator takes it: products and quotients first, then sums. */
const byHand = (side: string): number =>
  side
    .split(' + ')
    .map((term) =>
      term.split(/ (?=[×÷] )/).reduce((product, factor, index) => {
        if (index === 0) return printed(factor).value
        const { value } = printed(factor.slice(2))
        return factor.startsWith('÷') ? product / value : product * value
      }, 1),
    )
    .reduce((sum, each) => sum + each, 0)

/** Every "… = …" of a text, from the last stop before it. */
const equationsOf = (text: string): Array<{ left: string; right: string }> =>
  [...text.matchAll(/(?:^|[:;.] )(\u2212?\d[^:;=]*?) = (\u2212?\d[^;]*)/g)].map(([, left = '', right = '']) => ({ left, right }))

interface Told {
  check: Check
  text: string
  reading: string
}

function toldOf(subject: SizingSubject, reader: ReaderUnits): Told[] {
  const { findings, figures } = sizingReport(subject)
  return findings.flatMap((finding) => {
    const { formula, inputs } = explainFinding(finding, subject, figures)
    const reading = sayPhrase([...finding.reason, finding.value ?? '', ' ', ...(finding.limit ? Object.values(finding.limit) : [])], reader)
    return [formula, ...inputs.map(({ value }) => value)].map((phrase) => ({
      check: finding.check,
      text: sayPhrase(phrase, reader),
      reading,
    }))
  })
}

/** What is printed to one digit is exact to half of it: a sum of several may be a digit off, and as much again for each further term; a twentieth for the factors. */
const allowance = (left: string, { lastDigit }: Printed): number => lastDigit * Math.max(1, left.split(' + ').length / 2) * 1.05

const misreckoned = (told: readonly Told[]): string[] =>
  told.flatMap(({ text }) =>
    equationsOf(text)
      .filter(({ left, right }) => Math.abs(byHand(left) - printed(right).value) > allowance(left, printed(right)))
      .map(({ left, right }) => `${left} = ${right}, by hand ${byHand(left)}`),
  )

const READERS: ReadonlyArray<[string, ReaderUnits]> = [
  ['metric', METRIC],
  ['US', US],
]

/** Sums of the heat lost, that do not come to what the finding holds the heaters against. */
const besideTheFinding = (told: readonly Told[]): string[] =>
  told.flatMap(({ check, text, reading }) => {
    const [, all] = check === 'heater_holds' ? (/ W \+ .* = ([\d,]+ W)$/.exec(text.replaceAll('\u00a0', ' ')) ?? []) : []
    return all === undefined || reading.replaceAll('\u00a0', ' ').includes(all) ? [] : [`${text}: ${reading}`]
  })

describe('what an explanation reckons with its figures', () => {
  it.each(READERS)('comes out by hand within its last printed digit, of any build in any room, in %s units', (_, reader) => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        const told = toldOf({ gear: someGear, conditions: room }, reader)
        expect(misreckoned(told)).toEqual([])
        expect(besideTheFinding(told)).toEqual([])
      }),
      { numRuns: 60 },
    )
  })

  it.each(READERS)(
    'is there for mass, floor, tipping, heat, light, oxygen, flow, film, water changes, current, dose and bed, and ends in the figure of the finding, in %s units',
    (_, reader) => {
      const shrimps = { gear: gear(), conditions: conditions({ livestock: group('labyrinth') }) }
      const told = [...toldOf({ gear: gear(), conditions: conditions() }, reader), ...toldOf(shrimps, reader)]
      const reckoned = told.filter(({ text }) => equationsOf(text).length > 0)
      expect(new Set(reckoned.map(({ check }) => check))).toEqual(
        new Set([
          'stand_load',
          'floor_load',
          'tipping',
          'heater_holds',
          'filter_flow',
          'filter_feed',
          'flow_ceiling',
          'weekly_change',
          'electrical_load',
          'heater_stuck',
          'heater_spare',
          'warm_room',
          'surface_oxygen',
          'light_level',
          'light_coverage',
          'conditioner_dose',
          'substrate_depth',
        ]),
      )
      for (const check of ['filter_flow', 'flow_ceiling', 'weekly_change'] as const)
        for (const { text, reading } of reckoned.filter((each) => each.check === check)) expect(reading).toContain(text.split(' = ')[1])
      expect(misreckoned(told)).toEqual([])
    },
  )

  it('counts what a sump loses, with a line of its own', () => {
    const spec = { lengthMm: 600, widthMm: 380, heightMm: 400, wallMm: 6, operatingVolumeL: 42 }
    const told = toldOf({ gear: gear({ sump: { name: 'Osmere Sump', quantity: 1, spec } }), conditions: conditions() }, METRIC)
    expect(besideTheFinding(told)).toEqual([])
    expect(misreckoned(told)).toEqual([])
    const sums = told.filter(({ check, text }) => check === 'heater_holds' && text.split(' + ').length === 5)
    expect(sums).toHaveLength(1)
  })

  it('is found out where it does not', () => {
    expect(besideTheFinding([{ check: 'heater_holds', text: '62 W + 7 W = 69 W', reading: 'loses up to 149 W' }])).toHaveLength(1)
    expect(misreckoned([{ check: 'weekly_change', text: '9.7 mg/L ÷ 40 mg/L = 26 %', reading: '' }])).toHaveLength(1)
    expect(misreckoned([{ check: 'stand_load', text: '57.3 kg of tank + 79.4 kg + 220.2 kg of water = 356.8 kg', reading: '' }])).toEqual(
      [],
    )
    expect(misreckoned([{ check: 'electrical_load', text: 'For hours: 120 V × 15 A × 0.8 = 1,450 W', reading: '' }])).toHaveLength(1)
  })
})
