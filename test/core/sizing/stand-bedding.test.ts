import { describe, expect, it } from 'vitest'
import type { MatSpec, StandSpec, TankSpec } from '../../../core/catalog/spec.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { actionOf, inRoundTank, isMadeInRoundTank, reasonOf } from './round-tank.ts'
import { one } from './sample-build.ts'

/** 1020 × 420 mm of flat glass on a full board. */
const on = (stand: StandSpec | null, mat: MatSpec | null, tank: Partial<TankSpec> = {}) => {
  const spec: TankSpec = {
    lengthMm: 1020,
    widthMm: 420,
    heightMm: 460,
    glassMm: 10,
    bottomMm: 10,
    material: 'glass',
    style: 'rimless',
    ...tank,
  }
  const changes: Partial<Gear> = {
    tank: one('Wendlemere', spec),
    stand: stand && one('Thornby', stand),
    mat: mat && one('Thornby mat', mat),
  }
  return inRoundTank('stand_bedding', changes)
}
const BOARD: StandSpec = { top: 'full' }
const MAT: MatSpec = { lengthMm: 1020, widthMm: 420, thicknessMm: 6 }

describe('a mat under flat glass', () => {
  // Common practice: it may be cut 6 mm small so as not to show.
  it.each([
    [1014, 414, 'fits'],
    [1013.9, 414, 'does_not_fit'],
    [1014, 413.9, 'does_not_fit'],
  ])('of %s × %s mm: %s', (lengthMm, widthMm, verdict) => {
    const found = on(BOARD, { ...MAT, lengthMm, widthMm })
    expect(found).toMatchObject({ verdict, source: { tag: 'common_practice' }, missing: [] })
    expect(found.caution).toMatch(/A full tank that falls can kill/)
    if (verdict === 'fits') {
      expect([reasonOf(found), found.action]).toEqual(['Flat glass on a full mat.', null])
    } else {
      expect(reasonOf(found)).toBe('The mat is smaller than the tank: its edges, which carry the most, would lie hollow.')
      expect(actionOf(found)).toBe('Add a closed-cell mat as large as the tank.')
      expect(found.action?.want).toEqual({ slot: 'bed_glass', quantity: 1, minimum: { lengthMm: 1014, widthMm: 414 } })
    }
  })

  it('is missed where there is none', () => {
    const found = on(BOARD, null)
    expect(found.verdict).toBe('does_not_fit')
    expect(reasonOf(found)).toBe("The tank's bottom is flat glass: a grain of sand under it is enough to crack it. It wants a mat.")
    expect(found.action?.want).toEqual({ slot: 'bed_glass', quantity: 1, minimum: { lengthMm: 1014, widthMm: 414 } })
  })

  it('is not known where a side of it is not stated', () => {
    for (const mat of [{ lengthMm: 1020 }, { widthMm: 420 }]) {
      const found = on(BOARD, mat)
      expect(found).toMatchObject({ verdict: 'not_known', missing: ['size of the mat'] })
      expect(reasonOf(found)).toBe('The size of the mat is not stated.')
      expect(actionOf(found)).toBe("Enter the mat's length and depth.")
    }
  })

  it('is cut to the plan of a tank that is no rectangle', () => {
    const tank: Partial<TankSpec> = { lengthMm: 500, widthMm: 500, shape: 'cylinder' }
    expect(reasonOf(on(BOARD, { lengthMm: 500, widthMm: 500 }, tank))).toBe(
      "Flat glass on a full mat, cut to the tank's plan or left standing out.",
    )
    expect(reasonOf(on(BOARD, MAT, { shape: 'rectangular' }))).toBe('Flat glass on a full mat.')
  })

  it('is judged without a stand too, and not at all without either', () => {
    expect(on(null, MAT).verdict).toBe('fits')
    expect(isMadeInRoundTank('stand_bedding', { stand: null, mat: null })).toBe(false)
    expect(isMadeInRoundTank('stand_bedding', { stand: one('Thornby', BOARD), mat: null })).toBe(true)
  })
})

it('refuses flat glass on an open frame, mat or none', () => {
  for (const mat of [MAT, null]) {
    const found = on({ top: 'perimeter' }, mat)
    expect(found.verdict).toBe('does_not_fit')
    expect(reasonOf(found)).toBe("The stand is an open frame and the tank's bottom is flat glass: it needs a full board under all of it.")
    expect(actionOf(found)).toBe('Choose a stand with a full top, and a mat.')
    expect(found.action?.want).toEqual({ slot: 'carry_tank', quantity: 1, minimum: {}, top: 'full' })
  }
})

it('leaves a framed tank without a mat', () => {
  const bare = on({ top: 'perimeter' }, null, { style: 'rimmed' })
  expect([bare.verdict, reasonOf(bare), bare.action]).toEqual(['fits', 'The tank stands on its own frame: no mat.', null])
  const lain = on(BOARD, MAT, { style: 'rimmed' })
  expect([lain.verdict, reasonOf(lain), actionOf(lain)]).toEqual([
    'marginal',
    'The tank stands on its own frame; a mat under it may press on the floating bottom.',
    'Leave the mat out, unless the maker asks for one.',
  ])
})

it('asks for the style where nobody states it', () => {
  const found = on(BOARD, MAT, { style: undefined })
  expect(found).toMatchObject({ verdict: 'not_known', missing: ['style of the tank: rimmed or rimless'] })
  expect(reasonOf(found)).toBe('Nobody has stated whether the tank has a frame under it. Flat glass wants a mat, a framed tank wants none.')
  expect(actionOf(found)).toBe("Enter the tank's style.")
})
