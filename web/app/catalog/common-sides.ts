import type { CommonSize } from '../../../core/catalog/common-sizes.ts'
import { MM_PER_INCH } from '../../../core/units/factors.ts'

/** The sides of a tank's form, as they are typed there. */
export type Sides = Record<'lengthMm' | 'widthMm' | 'heightMm', string>
const SIDES = ['lengthMm', 'widthMm', 'heightMm'] as const

const said = (size: CommonSize, mm: number): string => (size.system === 'us' ? `${Math.round(mm / MM_PER_INCH)} in` : `${mm / 10} cm`)

/**
 * As the trade measures them, with the unit, so that no rounding to the reader's own changes them.
 *
 * @example sidesOf(commonSize('us-20-long')!).lengthMm // '30 in'
 */
export const sidesOf = (size: CommonSize): Sides => ({
  lengthMm: said(size, size.lengthMm),
  widthMm: said(size, size.widthMm),
  heightMm: said(size, size.heightMm),
})

/** Whether filling in a size takes nothing from anybody: every side is empty, or still what the size before filled in. */
export function mayFill(spec: Record<string, string>, before: CommonSize | null): boolean {
  const ours = before && sidesOf(before)
  return SIDES.every((side) => {
    const text = (spec[side] ?? '').trim()
    return text === '' || text === ours?.[side]
  })
}

/** Whether the sides are those of the size already. */
export const hasSides = (spec: Record<string, string>, size: CommonSize): boolean => {
  const wanted = sidesOf(size)
  return SIDES.every((side) => spec[side] === wanted[side])
}
