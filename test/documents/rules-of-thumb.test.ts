import { describe, expect, it } from 'vitest'
import { COMMON_SIZES } from '../../core/catalog/common-sizes.ts'
import { rowOf, rulesOf, rulesOfThumb } from './rules-of-thumb.ts'

describe('the document of rules of thumb', () => {
  const text = rulesOfThumb()

  it('has every common size and no figure that is none', () => {
    for (const { label } of COMMON_SIZES) expect(text).toContain(`| ${label} |`)
    expect(text).not.toMatch(/NaN|Infinity|undefined/)
  })

  it('explains every disagreement that it shows', () => {
    const table = text.split('## Why they part')
    const apart = (table[0] ?? '').match(/\| (?:more|less) (?=\|)/g) ?? []
    const sentences = (table[1] ?? '').match(/^- .+, \d+ (?:W|L\/h|lm) against \d+ to \d+: .+ \d.*\.$/gm) ?? []
    expect(apart.length).toBeGreaterThan(20)
    expect(sentences.length).toBe(apart.length)
    expect(new Set(sentences).size).toBe(sentences.length)
  })

  /** Common practice: 3 to 5 W a US gallon, 4 to 10 turnovers; a 75 gallon label by hand. */
  it('multiplies the rules out', () => {
    const size = COMMON_SIZES.find(({ id }) => id === 'us-75')
    expect(size && rulesOf(size)).toMatchObject({ watts: { low: 225, high: 375 }, flow: { low: 1136, high: 2839 } })
  })

  it('wants more of everything for a larger tank of the same shape', () => {
    const size = { id: 'x', label: 'x', system: 'metric' as const, labelVolumeL: 0, lengthMm: 600, widthMm: 300, heightMm: 300 }
    const larger = rowOf({ ...size, lengthMm: 900, widthMm: 450, heightMm: 450 })
    for (const figure of ['watts', 'flow', 'lumens'] as const) expect(larger[figure]).toBeGreaterThan(rowOf(size)[figure])
  })
})
