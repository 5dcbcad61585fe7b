import { describe, expect, it } from 'vitest'
import * as ranges from '../../../core/sizing/typical-ranges.ts'

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null

/** Every range under a name, with the name; a table without any is an error. */
function spansOf(name: string, value: unknown): Array<[string, number, number]> {
  if (!isRecord(value)) return []
  if (typeof value['low'] === 'number' && typeof value['high'] === 'number') return [[name, value['low'], value['high']]]
  const entries = Object.entries(value)
  if (entries.length === 0) throw new Error(`${name} is empty`)
  return entries.flatMap(([key, each]) => spansOf(`${name}.${key}`, each))
}

describe('what stands for a spec that nobody entered', () => {
  const spans = Object.entries(ranges)
    .filter(([name]) => name === name.toUpperCase())
    .flatMap(([name, value]) => spansOf(name, value))

  it.each(spans)('%s runs from %s up to %s', (_name, low, high) => {
    expect(low).toBeGreaterThan(0)
    expect(high).toBeGreaterThanOrEqual(low)
  })

  it('has figures of the loss in filters, from few fittings to many and from rinsed to full', () => {
    expect(ranges.FITTINGS.few).toBeLessThan(ranges.FITTINGS.usual)
    expect(ranges.FITTINGS.usual).toBeLessThan(ranges.FITTINGS.many)
    expect(ranges.MEDIA_LOSS.clean).toBeLessThan(ranges.MEDIA_LOSS.loaded)
  })

  /** Common practice: a whole kind is as wide as its narrowest and widest. */
  it('takes of a filter of no stated kind all that any kind has', () => {
    for (const table of [ranges.FILTER_POWER_W, ranges.MEDIA_L, ranges.MEDIA_L_PER_LPH]) {
      const { unknown, ...kinds } = table
      expect(unknown.low).toBe(Math.min(...Object.values(kinds).map(({ low }) => low)))
      expect(unknown.high).toBe(Math.max(...Object.values(kinds).map(({ high }) => high)))
    }
  })
})

/** Common practice: by the height, or two fifths of the length where that is more. */
describe('the glass of a tank that states none', () => {
  it.each([
    [300, 250, 3, 6],
    [625, 200, 3, 6],
    [626, 200, 4, 8],
    [300, 251, 4, 8],
    [1000, 400, 4, 8],
    [1001, 400, 5, 12],
    [1000, 401, 5, 12],
    [1250, 500, 5, 12],
    [1251, 500, 8, 15],
    [1250, 501, 8, 15],
    [1550, 620, 8, 15],
    [1551, 620, 10, 25],
    [1550, 621, 10, 25],
  ])('%s mm long and %s mm high: %s to %s mm', (lengthMm, heightMm, low, high) => {
    expect(ranges.typicalGlassMm(lengthMm, heightMm)).toEqual({ low, high })
  })
})

/** Common practice: 16 kg of open frame to 70 kg of cabinet under a tank of a metre. */
it('weighs a stand by the length of its tank', () => {
  const { low, high } = ranges.typicalStandMassKg(1000)
  expect(low).toBeCloseTo(16, 9)
  expect(high).toBeCloseTo(70, 9)
})
