import fc from 'fast-check'
import { expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { SizingReport } from '../../../core/sizing/report.ts'
import { parseQuantity } from '../../../core/units/parse.ts'
import type { ReaderUnits, Unit } from '../../../core/units/quantity.ts'
import { METRIC, US } from '../../../core/units/say.ts'
import { conditions, gear, one } from './sample-build.ts'

/** A figure as the form reads it from somebody who types it. */
function typed(text: string, unit: Unit, reader: ReaderUnits): number {
  const read = parseQuantity(text, unit, reader)
  if (!read.ok) throw new Error(`${text}: ${read.refusal.words}`)
  return read.value
}

/** One tank and room as two people write it down: quarter inches, gallons, pounds and half degrees Celsius are whole in both hands. */
interface Written {
  length: string
  depth: string
  height: string
  below: string
  rated: string
  flow: string
  cold: string
  warm: string
}

function build(written: Written, reader: ReaderUnits): SizingReport {
  const mm = (text: string) => typed(text, 'mm', reader)
  const tank = one('Wendlemere', {
    ...gear().tank!.spec,
    lengthMm: mm(written.length),
    widthMm: mm(written.depth),
    heightMm: mm(written.height),
  })
  const stand = one('Thornby', {
    ...gear().stand!.spec,
    topLengthMm: mm(written.length),
    topWidthMm: mm(written.depth),
    ratedLoadKg: typed(written.rated, 'kg', reader),
  })
  const filter = gear().filters[0]!
  const filters = [{ ...filter, spec: { ...filter.spec, ratedFlowLph: typed(written.flow, 'L/h', reader) } }]
  const room = { coldestRoomC: typed(written.cold, 'degC', reader), warmestRoomC: typed(written.warm, 'degC', reader) }
  return sizingReport({ gear: gear({ tank, stand, filters }), conditions: conditions({ ...room, waterBelowRimMm: mm(written.below) }) })
}

const quarters = (min: number, max: number) => fc.integer({ min: min * 4, max: max * 4 }).map((count) => count / 4)
const halves = (min: number, max: number) => fc.integer({ min: min * 2, max: max * 2 }).map((count) => count / 2)
const plain = (value: number): string => String(Number(value.toFixed(8)))

const anyTank = fc.record({
  length: quarters(16, 72),
  depth: quarters(10, 24),
  height: quarters(12, 26),
  below: quarters(1, 3),
  rated: fc.integer({ min: 100, max: 2000 }),
  flow: fc.integer({ min: 60, max: 800 }),
  cold: halves(8, 22),
  warm: halves(22, 33),
})

it('gives the same verdicts and values for a tank typed in inches, gallons, pounds and °F as in centimetres, litres, kilograms and °C', () => {
  fc.assert(
    fc.property(anyTank, ({ length, depth, height, below, rated, flow, cold, warm }) => {
      const fahrenheit = (celsius: number) => plain(celsius * 1.8 + 32)
      const inUs = build(
        {
          length: plain(length),
          depth: `${plain(depth)} in`,
          height: plain(height),
          below: `${plain(below)}"`,
          rated: `${rated} lb`,
          flow: plain(flow),
          cold: fahrenheit(cold),
          warm: `${fahrenheit(warm)} °F`,
        },
        US,
      )
      const inMetric = build(
        {
          length: plain(length * 2.54),
          depth: `${plain(depth * 2.54)} cm`,
          height: plain(height * 2.54),
          below: `${plain(below * 25.4)} mm`,
          rated: plain(rated * 0.45359237),
          flow: plain(flow * 3.785411784),
          cold: plain(cold),
          warm: `${plain(warm)} °C`,
        },
        METRIC,
      )
      expect(inUs.findings.length).toBe(inMetric.findings.length)
      for (const finding of inMetric.findings) {
        const other = inUs.findings.find(({ check }) => check === finding.check)
        const step = 10 ** -(finding.value?.digits ?? 0)
        // A figure that rounding leaves on the limit may be told on either side of it; typed as it is, none is further off than its last digit.
        if (Math.abs(finding.margin?.value ?? Infinity) > step)
          expect([finding.check, other?.verdict]).toEqual([finding.check, finding.verdict])
        if (finding.value) expect(Math.abs((other?.value?.value ?? NaN) - finding.value.value)).toBeLessThanOrEqual(step * 1.01)
      }
    }),
    { numRuns: 200 },
  )
})
