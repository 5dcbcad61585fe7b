/** A bottom that sticks out over the edge of its stand, for one metre of that edge. */
export interface Overhang {
  outM: number
  thicknessM: number
  /** Of the water above it, Pa. */
  pressurePa: number
  /** Weight of the pane that stands on its end, N for each metre. */
  edgeNPerM: number
}

/**
 * Bending stress in a bottom that sticks out, where it leaves the stand: a strip held there, with the water on it and the pane at its end.
 *
 * Units:  m and Pa in, Pa out, unrounded. Range: a straight, hard edge under a plate that touches it all along. The pane above, which stiffens it like a wall, is
 *         left out: on the safe side.
 * Source: cantilever, `M = p·c²/2 + w·c`, and `σ = 6M/t²` of a strip (any strength-of-materials text; AISC Manual, table 3-23, cases 19 and 22, from memory).
 *
 * @example // 20 mm out, 10 mm thick, 523 mm of water, a pane of 10 mm above
 * overhangStressPa({ outM: 0.02, thicknessM: 0.01, pressurePa: 5130, edgeNPerM: 128 }) // 215 000
 */
export function overhangStressPa({ outM, thicknessM, pressurePa, edgeNPerM }: Overhang): number {
  const momentNm = (pressurePa * outM ** 2) / 2 + edgeNPerM * outM
  return (6 * momentNm) / thicknessM ** 2
}
