import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { FilterSpec } from '../../../core/catalog/spec.ts'
import { explainFinding } from '../../../core/explanation/explain-finding.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'
import { conditions, gear, group, one } from './sample-build.ts'

const TYPES = ['canister', 'hang_on', 'internal', 'sponge'] as const satisfies ReadonlyArray<FilterSpec['type']>
const mm = (min: number, max: number) => fc.integer({ min, max })
/** A box with panes of any thickness, and one filter printed at about as much as these animals bear: here the verdict turns. */
const nearTheMark = fc
  .record({
    lengthMm: mm(300, 1500),
    widthMm: mm(200, 600),
    heightMm: mm(250, 600),
    perHour: fc.double({ min: 6, max: 16, noNaN: true }),
    filter: fc.record({ type: fc.constantFrom(...TYPES), maxHeadM: fc.double({ min: 0.5, max: 4, noNaN: true }) }, { requiredKeys: [] }),
  })
  .map(({ perHour, filter, ...tank }) => {
    const litres = (tank.lengthMm * tank.widthMm * tank.heightMm) / 1e6
    const spec: FilterSpec = { ...filter, ratedFlowLph: Math.round(perHour * litres) }
    return {
      gear: gear({ tank: one('a tank', tank), filters: [one('Pellick', spec)] }),
      conditions: conditions({ livestock: group('labyrinth') }),
    }
  })

/** "5.1 times an hour to 8.9 times an hour", or the one of them, before these words. */
const endsOf = (reason: string, words: string): number[] =>
  (new RegExp(`([\\d.]+) times an hour(?: to ([\\d.]+) times an hour)? ${words}`).exec(reason) ?? [])
    .slice(1)
    .filter((text) => text !== undefined)
    .map(Number)

it('tells a flow that may be too strong with both its ends, its mark, what is missing and what to do, and never in empty words', () => {
  let open = 0
  fc.assert(
    fc.property(nearTheMark, (subject) => {
      const report = sizingReport(subject)
      const found = report.findings.find(({ check }) => check === 'flow_ceiling')
      if (found?.verdict !== 'not_known') return
      open++
      const { formula, inputs } = explainFinding(found, subject, report.figures)
      for (const reader of [METRIC, US]) {
        const [reason, action] = [sayPhrase(found.reason, reader), sayPhrase(found.action?.text ?? [], reader)]
        // One of them may lie on either side of the mark: that is why it is not known.
        const clean = endsOf(reason, '(?:with clean media|at best)')
        const loaded = endsOf(reason, '(?:with loaded ones|at worst)')
        expect([clean, loaded].some((ends) => Math.min(...ends) <= 6 && Math.max(...ends) > 6)).toBe(true)
        expect(found.value?.value).toBe(Math.max(...clean))
        expect(reason).toContain('Above 6 times an hour these animals tire.')
        expect(action).toMatch(/^Enter what is missing\. Until then /)
        expect(sayPhrase(formula, reader)).toContain('÷ water in the tank')
        expect(inputs.map(({ value }) => sayPhrase(value, reader).trim())).not.toContain('')
      }
      expect(found.missing.length).toBeGreaterThan(0)
      expect(found.margin?.value).toBeLessThan(0)
      expect(inputs.length).toBeGreaterThan(2)
    }),
    { numRuns: 200 },
  )
  // Or it has proven nothing.
  expect(open).toBeGreaterThan(20)
})
