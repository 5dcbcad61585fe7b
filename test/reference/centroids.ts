/**
 * Areas and centroids of plane figures as statics texts tabulate them (Hibbeler, Engineering Mechanics: Statics, inside back cover; Beer & Johnston, Vector
 * Mechanics, figure 5.8A), from memory. Lengths in units of the radius or side.
 */
export const HALF_DISC = { area: Math.PI / 2, fromDiameter: 4 / (3 * Math.PI) }
export const QUARTER_DISC = { area: Math.PI / 4, fromEitherRadius: 4 / (3 * Math.PI) }
/** Base 1, height 1: a third of the height from the base. */
export const TRIANGLE = { area: 1 / 2, fromBase: 1 / 3 }
/** Regular hexagon of side 1: area 3√3/2, height √3 over flats. */
export const HEXAGON = { area: (3 * Math.sqrt(3)) / 2, round: 6, overFlats: Math.sqrt(3), overCorners: 2 }

/** Segment of a circle, angle 2α at the centre: area r²(α − sin α cos α), centroid (2r sin³α)/(3(α − sin α cos α)) from the centre. */
export const segment = (alpha: number) => {
  const shape = alpha - Math.sin(alpha) * Math.cos(alpha)
  return { area: shape, fromCentre: (2 * Math.sin(alpha) ** 3) / (3 * shape) }
}
