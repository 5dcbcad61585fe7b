import { describe, expect, it } from 'vitest'
import { measureOfShape, missingMeasure } from '../../../core/sizing/missing-measure.ts'
import { METRIC, sayPhrase, US } from '../../../core/units/say.ts'

const box = { lengthMm: 900, widthMm: 400 }

describe('what a tank’s shape needs and nobody stated', () => {
  it('is the bow of a bow-front, with the range that stands for it', () => {
    const missing = missingMeasure({ ...box, shape: 'bow_front' })
    expect(missing?.key).toBe('bowMm')
    const words = sayPhrase(missing?.text ?? [], METRIC).replace(/\u00a0/g, ' ')
    // 0.05 and 0.2 of the length: 45 and 180 mm (common practice, typical-ranges.ts).
    expect(words).toMatch(/^The bow is not stated: .* from 45 mm to 18 cm, and a verdict that turns in between stays not known\.$/)
    expect(sayPhrase(missing?.text ?? [], US)).toMatch(/from 1.*in to 7.*in/)
  })
  it('is the depth of the ends of a corner with a cut front', () => {
    expect(missingMeasure({ ...box, shape: 'corner_cut' })?.key).toBe('endMm')
  })
  it('is nothing where it is stated, and nothing for a shape that its box describes', () => {
    expect(missingMeasure({ ...box, shape: 'bow_front', bowMm: 80 })).toBeNull()
    expect(missingMeasure({ ...box, shape: 'corner_cut', endMm: 150 })).toBeNull()
    for (const shape of [undefined, 'rectangular', 'cylinder', 'hexagon', 'corner_round'] as const)
      expect(missingMeasure({ ...box, ...(shape ? { shape } : {}) }), shape).toBeNull()
  })
})

it('knows which shapes ask for more than their box', () => {
  expect([measureOfShape('bow_front'), measureOfShape('corner_cut')]).toEqual(['bowMm', 'endMm'])
  for (const shape of [undefined, 'rectangular', 'cylinder', 'hexagon', 'corner_round']) expect(measureOfShape(shape), shape).toBeNull()
})
