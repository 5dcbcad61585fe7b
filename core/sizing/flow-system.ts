import { frictionFactor } from './pipe-friction.ts'

/** What a pump has to push the water through. */
export interface FlowSystem {
  /** Height between two open surfaces; none in a closed loop such as a canister's. */
  staticHeadM: number
  boreMm: number
  lengthMm: number
  /** Sum of the loss coefficients of bends, taps, inlet and outlet. */
  fittings: number
  /** Head that media take, m for each (m³/s)². */
  mediaLoss: number
  /** Kinematic viscosity of the water, m²/s. */
  viscosityM2S: number
}

/** Drawn plastic hose, m: White, Fluid Mechanics, table 6.1, from memory. */
const ROUGHNESS_M = 1.5e-6
/** Standard gravity, m/s². */
const GRAVITY = 9.80665
/** L/h to m³/s. */
export const M3_S_PER_LPH = 1 / 3_600_000

/**
 * Head that a flow takes: height, friction in the hoses, fittings and media.
 *
 * Units:  L/h in, m of water out. Range: 0 L/h and above; a flow that stands takes the height alone.
 * Source: Darcy & Weisbach.
 *
 * @example // 3 m of 16 mm hose, fittings of 6, no media
 * systemHeadM(system, 1020.8) // 1.0737
 */
export function systemHeadM({ staticHeadM, boreMm, lengthMm, fittings, mediaLoss, viscosityM2S }: FlowSystem, flowLph: number): number {
  if (!(flowLph > 0)) return staticHeadM
  const flow = flowLph * M3_S_PER_LPH
  const boreM = boreMm / 1000
  const speed = flow / ((Math.PI / 4) * boreM ** 2)
  const friction = frictionFactor((speed * boreM) / viscosityM2S, ROUGHNESS_M / boreM)
  const losses = (friction * lengthMm) / boreMm + fittings
  return staticHeadM + (losses * speed ** 2) / (2 * GRAVITY) + mediaLoss * flow ** 2
}
