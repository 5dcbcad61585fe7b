import { describe, expect, it } from 'vitest'
import { footprintM2, plansOf } from '../../../core/sizing/tank-forms.ts'

describe('plans that a tank’s stated figures allow', () => {
  const bows = (lengthMm: number, widthMm: number) => plansOf({ lengthMm, widthMm, shape: 'bow_front' }).plans.map(({ bowMm }) => bowMm)

  it('is the box itself where no shape or a rectangle is stated', () => {
    const box = { lengthMm: 900, widthMm: 400 }
    expect(plansOf(box)).toStrictEqual({ plans: [box], unstated: [] })
    expect(plansOf({ ...box, shape: 'rectangular', bowMm: 90 })).toEqual({ plans: [box], unstated: [] })
  })

  /** Common practice: a bow of a twentieth to a fifth of the length, at most half the depth. */
  it('has a bow from a twentieth of the length to a fifth, half the depth at the most', () => {
    expect(bows(900, 400)).toEqual([45, 180])
    expect(bows(900, 200)).toEqual([45, 100])
    expect(bows(900, 80)).toEqual([40, 40])
    expect(plansOf({ lengthMm: 900, widthMm: 400, shape: 'bow_front', bowMm: 70 })).toEqual({
      plans: [{ lengthMm: 900, widthMm: 400, form: 'bow_front', bowMm: 70 }],
      unstated: [],
    })
  })

  /** Common practice: ends of 0.15 to 0.6 of the shorter back. */
  it('has ends by the shorter back', () => {
    const box = { lengthMm: 700, widthMm: 600 }
    expect(plansOf({ ...box, shape: 'corner_cut' })).toEqual({
      plans: [
        { ...box, form: 'corner_cut', endMm: 90 },
        { ...box, form: 'corner_cut', endMm: 360 },
      ],
      unstated: ['depth of the ends'],
    })
    expect(plansOf({ ...box, shape: 'corner_cut', endMm: 200 }).plans).toEqual([{ ...box, form: 'corner_cut', endMm: 200 }])
  })

  it('needs no more than the box of any other shape', () => {
    const box = { lengthMm: 500, widthMm: 500 }
    expect(plansOf({ ...box, shape: 'cylinder' })).toEqual({ plans: [{ ...box, form: 'cylinder' }], unstated: [] })
  })
})

/** By hand: a square without a corner of half its side less the end, (600 − 90)² / 2 and (600 − 360)² / 2; a disc is π·r². */
it('covers as much as its plan does', () => {
  const cut = footprintM2({ lengthMm: 600, widthMm: 600, shape: 'corner_cut' })
  expect(cut.low).toBeCloseTo(0.36 - 0.13005, 9)
  expect(cut.high).toBeCloseTo(0.36 - 0.0288, 9)
  const disc = footprintM2({ lengthMm: 500, widthMm: 500, shape: 'cylinder' })
  expect(disc.low).toBeCloseTo(Math.PI * 0.0625, 9)
  expect(disc.high).toBe(disc.low)
})
