import type { LightSpec } from '../catalog/spec.ts'
import { lightPowerW } from './heating.ts'
import { lightAtDepth, photonFlux } from './light-at-depth.ts'
import { lightUtilisation } from './light-utilisation.ts'
import { cornersFrom, type Point } from './plan-outline.ts'
import type { Corner, Situation } from './situation.ts'
import type { Span } from './span.ts'
import { tankOutline, tankPlan } from './tank-plan.ts'
import { COLOURED_UMOL_PER_J, LIGHT_ABOVE_RIM_MM, LUMENS_PER_UMOL_S, LUMENS_PER_WATT } from './typical-ranges.ts'

/** Share of a Lambertian lamp's light that enters still water: the diffuse loss is 0.066 (own, from Fresnel), at right angles 0.02. */
export const ENTERING: Span = { low: 0.93, high: 0.98 }
/** A sheet of glass or plastic lets this through: two faces lose 0.083 at n = 1.52 (own, from Fresnel). */
export const THROUGH_LID = 0.9
/** Clear water with its tint, 1/m. Common practice. */
const ATTENUATION: Span = { low: 0.1, high: 0.5 }
/** Width of a fixture that states none; it moves the result by less than 0.3 %. */
export const FIXTURE_WIDTH_MM = 80

/** Light at the substrate: what the spread of waters and mountings makes of one flux. */
export interface BedLight {
  /** With the least flux that the stated figures allow. */
  dim: Span
  /** With the most. */
  bright: Span
  /** Neither photon flux nor lumens that would tell it are stated somewhere; power stands for them. */
  fluxUnstated: boolean
  /** µmol/m²s at the substrate for each lumen, at the dark end, of the light that sends least of it down. */
  perLumenLow: number
  /** What of `dim` comes from each entry of the lights, in their order. */
  shares: readonly Span[]
}

/** Flux of one fixture at the ends of what is stated. */
function fluxOf(spec: LightSpec, typicalPower: Span): Span {
  const stated = photonFlux(spec)
  if (stated) return stated
  const power = spec.powerW === undefined ? typicalPower : { low: spec.powerW, high: spec.powerW }
  if (spec.spectrum === 'coloured') return { low: power.low * COLOURED_UMOL_PER_J.low, high: power.high * COLOURED_UMOL_PER_J.high }
  return {
    low: (power.low * LUMENS_PER_WATT.low) / LUMENS_PER_UMOL_S.high,
    high: (power.high * LUMENS_PER_WATT.high) / LUMENS_PER_UMOL_S.low,
  }
}

/** Corners of the water's surface from the middle of its area, under which the fixtures hang: from there to every pane. */
export const waterUnder = ({ shape }: Corner): Point[] =>
  cornersFrom(tankOutline(shape, shape.glassMm), tankPlan(shape, shape.glassMm).centre)

/** Both ends of the path from one fixture to the substrate, for 1 µmol/s. */
function pathOf(situation: Situation, corner: Corner, spec: LightSpec): Span {
  const { geometry, shape } = corner
  const water = waterUnder(corner)
  const { waterBelowRimMm } = situation.conditions
  const lid = situation.covers.includes('open') ? 1 : THROUGH_LID
  const end = (aboveRimMm: number, entering: number, attenuationPerM: number) =>
    lightAtDepth({
      fluxUmolS: 1,
      utilisation: lightUtilisation({
        fixtureLengthMm: Math.min(spec.lengthMm ?? shape.lengthMm, shape.lengthMm),
        fixtureWidthMm: Math.min(spec.widthMm ?? FIXTURE_WIDTH_MM, shape.widthMm),
        water,
        aboveWaterMm: waterBelowRimMm + aboveRimMm,
      }),
      entering: entering * lid,
      waterAreaM2: geometry.insidePlanMm2 / 1e6,
      attenuationPerM,
      depthM: (geometry.waterDepthMm - geometry.substrateDepthMm) / 1000,
    })
  return {
    low: end(LIGHT_ABOVE_RIM_MM.high, ENTERING.low, ATTENUATION.high),
    high: end(LIGHT_ABOVE_RIM_MM.low, ENTERING.high, ATTENUATION.low),
  }
}

/** Light at the substrate from all fixtures together; undefined without any. The tank's least certain figure, its glass, moves it by a per cent: its first corner stands for all. */
export function lightAtBed(situation: Situation): BedLight | undefined {
  const corner = situation.corners[0]
  const { lights } = situation.gear
  if (!corner || lights.length === 0) return undefined
  const typicalPower = lightPowerW({ gear: { lights: [{ name: '', quantity: 1, spec: {} }] } }, situation.tank.lengthMm)
  const dim = { low: 0, high: 0 }
  const bright = { low: 0, high: 0 }
  const shares: Span[] = []
  let perLumenLow = Infinity
  const paths = new Map<string, Span>()
  for (const { spec, quantity: count } of lights) {
    const size = `${spec.lengthMm} ${spec.widthMm}`
    const path = paths.get(size) ?? pathOf(situation, corner, spec)
    paths.set(size, path)
    const flux = fluxOf(spec, typicalPower)
    const spread = photonFlux(spec) !== undefined
    perLumenLow = Math.min(perLumenLow, path.low / LUMENS_PER_UMOL_S.high)
    const share = { low: count * flux.low * path.low, high: count * (spread ? flux.high : flux.low) * path.high }
    shares.push(share)
    dim.low += share.low
    dim.high += share.high
    bright.low += count * (spread ? flux.low : flux.high) * path.low
    bright.high += count * flux.high * path.high
  }
  return { dim, bright, fluxUnstated: lights.some(({ spec }) => photonFlux(spec) === undefined), perLumenLow, shares }
}
