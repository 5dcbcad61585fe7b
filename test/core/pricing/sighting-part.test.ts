import { describe, expect, it } from 'vitest'
import { sightingPart } from '../../../core/pricing/sighting-part.ts'
import { uuidV7 } from '../../../core/uuid-v7.ts'

describe('the part of a year', () => {
  it('holds the published example of RFC 9562, appendix A.6, made on 22 February 2022', () => {
    const { name, from, to } = sightingPart(2022)
    const made = '017f22e2-79b0-7cc3-98c4-dc0c0c07398f'
    expect(name).toBe('sighting_2022')
    expect(from <= made && made < to).toBe(true)
  })
  it('begins with the first millisecond of the year and ends with the last', () => {
    for (const year of [1970, 2000, 2024, 2025, 2100]) {
      const { from, to } = sightingPart(year)
      const [first, last] = [Date.UTC(year, 0, 1), Date.UTC(year + 1, 0, 1) - 1]
      expect(from <= uuidV7(first, new Uint8Array(10))).toBe(true)
      if (first > 0) expect(uuidV7(first - 1, new Uint8Array(10).fill(255)) < from).toBe(true)
      expect(uuidV7(last, new Uint8Array(10).fill(255)) < to).toBe(true)
      expect(sightingPart(year + 1).from).toBe(to)
    }
  })
})
