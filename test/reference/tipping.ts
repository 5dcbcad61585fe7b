/**
 * Bodies about to tip over an edge of their base, as statics texts work them. From memory.
 */

/** Hibbeler, Engineering Mechanics: Statics, example 8.1: a crate of 20 kg, 0.8 m wide; 80 N at 0.2 m above the floor, 30° downwards, at its side. */
export const CRATE = {
  kg: 20,
  halfWidthMm: 400,
  push: { newtons: 80, downwardsDeg: 30, heightMm: 200 },
  normalN: 236,
  /** The floor's push acts so far from the middle: the crate is about to tip only at 400 mm. */
  normalAtMm: -9.08,
}

/** A uniform block on a slope tips where tan θ is its width over its height: 1 : 2 is 26.565°. */
export const BLOCK_ON_SLOPE = { width: 1, height: 2, degrees: 26.565 }
/** A solid cone has its centre at a quarter of its height: one four times as high as its radius tips at 45°. */
export const CONE_ON_SLOPE = { radius: 1, height: 4, degrees: 45 }
/** A uniform block pushed at its upper edge tips at W·b/(2h). */
export const BLOCK_PUSHED = { kg: 100, widthMm: 500, heightMm: 2000, newtons: (100 * 9.80665 * 500) / (2 * 2000) }

/** A hemisphere of radius 1 on which a cylinder of the same material stands, 1 high: centre (π·1.5 + 2π/3·5/8)/(π + 2π/3) = 1.15 above the lowest point. */
export const CYLINDER_ON_HEMISPHERE = {
  cylinder: { kg: Math.PI, heightMm: 1.5 },
  hemisphere: { kg: (2 * Math.PI) / 3, heightMm: 5 / 8 },
  centreMm: 1.15,
}
