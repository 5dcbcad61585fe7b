import { MM_PER_INCH } from '../units/factors.ts'

/** Length, depth and height. */
type Sides = readonly [length: number, width: number, height: number]

/** Outside, inches. In the order of their names in common-sizes.ts. */
const INCHES: readonly Sides[] = [
  [16, 8, 10],
  [20, 10, 12],
  [24, 12, 12],
  [20, 10, 18],
  [24, 12, 16],
  [30, 12, 12],
  [24, 12, 20],
  [30, 12, 18],
  [36, 18, 12],
  [48, 13, 12],
  [30, 12, 22],
  [36, 12, 20],
  [36, 18, 16],
  [48, 13, 16],
  [36, 18, 18],
  [48, 13, 21],
  [48, 24, 12],
  [36, 18, 24],
  [48, 18, 21],
  [48, 18, 24],
  [72, 18, 18],
  [48, 24, 24],
  [72, 18, 21],
  [72, 18, 28],
  [72, 24, 24],
]

/** Outside, centimetres. In the order of their names in common-sizes.ts. */
const CENTIMETRES: readonly Sides[] = [
  [30, 20, 20],
  [30, 30, 30],
  [40, 25, 25],
  [45, 30, 30],
  [50, 30, 30],
  [60, 30, 36],
  [60, 40, 30],
  [70, 35, 40],
  [75, 40, 45],
  [80, 35, 40],
  [90, 45, 45],
  [100, 40, 50],
  [110, 45, 45],
  [120, 40, 50],
  [120, 50, 50],
  [150, 50, 60],
  [150, 60, 60],
]

const scaled =
  (mm: number) =>
  (sides: Sides): number[] =>
    sides.map((side) => Math.round(side * mm))

/**
 * Outside sides of the sizes that the trade names, mm, those in inches first. Apart from their names, which only a search and a form read: the engine weighs less for it.
 *
 * Source: the trade's common outside dimensions, common practice; makers differ by a centimetre, so a product's own figures come before these.
 */
export const COMMON_OUTSIDES = [...INCHES.map(scaled(MM_PER_INCH)), ...CENTIMETRES.map(scaled(10))]
