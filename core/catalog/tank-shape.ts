/**
 * Plans of tanks that are sold, seen from above. Length and depth are always those of the box around it, outside.
 *
 * - bow-front: a box whose front bulges as one arc; the bow is how far it stands out before the ends.
 * - cylinder: upright and round; length and depth are its diameter.
 * - hexagon: six flat sides, two of them parallel to the wall and half as long as the tank; regular where the depth is 0.866 of the length.
 * - corner, cut front: two backs at a right angle, a short end on each, and a flat front cut across.
 * - corner, quarter round: two backs at a right angle and one arc around their corner; length and depth are its radius.
 */
export const TANK_SHAPES = {
  rectangular: 'Rectangular',
  bow_front: 'Bow-front',
  cylinder: 'Cylinder',
  hexagon: 'Hexagon',
  corner_cut: 'Corner, cut front',
  corner_round: 'Corner, quarter round',
} as const
export type TankForm = keyof typeof TANK_SHAPES

/** All but the plain box. */
export const OTHER_FORMS = ['bow_front', 'cylinder', 'hexagon', 'corner_cut', 'corner_round'] as const satisfies readonly TankForm[]
export type OtherForm = (typeof OTHER_FORMS)[number]

/** In a sentence; empty for a rectangular one, which goes without saying. @example shapeWords('bow_front') // 'bow-front' */
export const shapeWords = (form: TankForm | undefined): string =>
  form === undefined || form === 'rectangular' ? '' : TANK_SHAPES[form].toLowerCase().replace(',', '')
