import { exactly, type Span } from './span.ts'
import { LUMENS_PER_UMOL_S } from './typical-ranges.ts'
import type { LightSpec } from '../catalog/spec.ts'

/** Photosynthetic photon flux through a square metre under water. */
export interface LightPath {
  /** µmol/s that leave the fixtures. */
  fluxUmolS: number
  /** Share of it that falls on the water. */
  utilisation: number
  /** Share that enters it: what surface and lid let through. */
  entering: number
  waterAreaM2: number
  /** Attenuation per metre: clear water 0.1 to 0.5 with its tint. */
  attenuationPerM: number
  /** From the surface to the plant. */
  depthM: number
}

/**
 * Mean light at a depth.
 *
 * Units:  µmol/s, m², 1/m, m in; µmol/m²s out, unrounded. A mean over the area, not its darkest corner.
 * Source: Beer–Lambert; utilisation by configuration factors.
 *
 * @example lightAtDepth({ fluxUmolS: 3000 / 70, utilisation: 0.9532, entering: 0.97, waterAreaM2: 0.52429, attenuationPerM: 0.5, depthM: 0.43 }) // 60.96
 */
export function lightAtDepth({ fluxUmolS, utilisation, entering, waterAreaM2, attenuationPerM, depthM }: LightPath): number {
  return ((fluxUmolS * utilisation * entering) / waterAreaM2) * Math.exp(-attenuationPerM * depthM)
}

/** Photon flux of one fixture: as stated, or from its white light; lumens of coloured light tell nothing of it. Undefined where neither is stated. @example photonFlux({ luminousFluxLm: 2800 }) // { low: 35, high: 46.7 } */
export function photonFlux(spec: LightSpec): Span | undefined {
  if (spec.photonFluxUmolS !== undefined) return exactly(spec.photonFluxUmolS)
  // The eye hardly sees red and blue: at 450 nm a µmol/s is 6.9 lm, at 660 nm 7.6, of white light 60 to 80 (CIE V(λ), own).
  if (spec.luminousFluxLm === undefined || spec.spectrum === 'coloured') return undefined
  return { low: spec.luminousFluxLm / LUMENS_PER_UMOL_S.high, high: spec.luminousFluxLm / LUMENS_PER_UMOL_S.low }
}
