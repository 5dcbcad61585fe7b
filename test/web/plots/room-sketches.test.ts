import { describe, expect, it } from 'vitest'
import { METRIC, US } from '../../../core/units/say.ts'
import { FLOOR_OPTIONS, LIE_OPTIONS } from '../../../web/app/quotes/room-words.ts'
import { joistFigures } from '../../../web/plots/joist-sketch.ts'
import { outletPlace, outletSketch } from '../../../web/plots/outlet-sketch.ts'

describe('the sketches beside the questions about the room', () => {
  it('tell four floors and four ways to lie apart', () => {
    expect(new Set(FLOOR_OPTIONS.map(({ picture }) => picture)).size).toBe(4)
    expect(new Set(LIE_OPTIONS.map(({ picture }) => picture)).size).toBe(4)
  })
  it('leave it to the words beside them to be read out', () => {
    for (const { picture, label, says } of [...FLOOR_OPTIONS, ...LIE_OPTIONS]) {
      expect(picture).toContain('aria-hidden="true"')
      expect(`${label} ${says}`.length).toBeGreaterThan(20)
    }
  })
  it.each([FLOOR_OPTIONS, LIE_OPTIONS])('always allow not to know', (...options) => {
    expect(options.at(-1)).toMatchObject({ value: 'unknown', label: 'I don’t know' })
  })
})

describe('the figures of the joists', () => {
  it('stand one under the other where there is no room beside, with letters of the same size', () => {
    const [wide, narrow] = [joistFigures({ id: 'j', width: 340 }), joistFigures({ id: 'j', width: 208 })]
    expect(wide).toContain('viewBox="0 0 328 110"')
    expect(narrow).toContain('viewBox="0 0 164 220"')
    expect(narrow.match(/font-size="\d+"/g)).toEqual(wide.match(/font-size="\d+"/g))
  })
})

describe('the outlet', () => {
  it('is drawn to one scale up and along', () => {
    const at = outletPlace({ heightMm: 600, distanceMm: 1200 })
    const low = outletPlace({ heightMm: 0, distanceMm: 600 })
    // own arithmetic: 600 mm up are as long as the 600 mm by which one stands farther than the other
    expect(low.y - at.y).toBeCloseTo(at.x - low.x, 6)
  })
  it('stands behind a break where it is too far for the drawing', () => {
    expect(outletPlace({ heightMm: 300, distanceMm: 600 }).broken).toBe(false)
    const far = outletPlace({ heightMm: 300, distanceMm: 10_000 }, 208)
    expect(far.broken).toBe(true)
    expect(far.x).toBeLessThan(208)
  })
  it("says both distances in the reader's units", () => {
    expect(outletSketch({ heightMm: 300, distanceMm: 600 }, { id: 'o', reader: METRIC })).toMatch(/>30 cm<.*>60 cm<|>60 cm<.*>30 cm</)
    expect(outletSketch({ heightMm: 304.8, distanceMm: 609.6 }, { id: 'o', reader: US })).toContain('24 in along the wall')
  })
  it('stays on its sheet at the limits of what may be entered', () => {
    for (const [heightMm, distanceMm] of [
      [0, 0],
      [2500, 0],
      [0, 10_000],
      [2500, 10_000],
    ] as const) {
      const at = outletPlace({ heightMm, distanceMm }, 208)
      expect(at.x + 8 <= 208 && at.y - 7 >= 0 && at.y <= 104).toBe(true)
    }
  })
})
