import { atmospheresAt, oxygenSaturation } from '../water/dissolved-oxygen.ts'
import { oxygenTransfer, stirredTransfer, transferUnderWind } from '../water/gas-transfer.ts'
import { ammoniaOfFeed, OXYGEN_G_PER_N } from '../water/nitrogen.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import type { Span } from './span.ts'

/** What animals must find by night, mg/L: U.S. EPA, Ambient Water Quality Criteria for Dissolved Oxygen (1986), warm-water fish, one-day minimum; from memory. */
export const LEAST_OXYGEN_MG_L = 5
/** Oxygen that animals breathe for each gram of feed, g: Timmons & Ebeling, Recirculating Aquaculture, from memory. */
const BREATHED_G_PER_G: Span = { low: 0.3, high: 0.5 }
const HOURS = 24
/** 1 cm/h through 1 m² is 0.01 m³/h, and 1 mg/L is 1 g/m³. */
const CM_PER_M = 100

/** Oxygen that a day's feed costs, g for each gram: breathed and nitrified. @example oxygenOfFeed().low // 0.489 */
export function oxygenOfFeed(): Span {
  const nitrified = ammoniaOfFeed(1) * OXYGEN_G_PER_N
  return { low: BREATHED_G_PER_G.low + nitrified, high: BREATHED_G_PER_G.high + nitrified }
}

/** A water surface: m², °C, m above the sea, at the sea where nobody says. */
export interface Surface {
  areaM2: number
  waterC: number
  water: 'fresh' | 'salt'
  altitudeM?: number | undefined
}

/**
 * Oxygen that a surface takes up in a day while the water holds the least that animals must find, g.
 *
 * Units:  m², °C, cm/h; g a day out. Range: water of 0 to 35 °C. Errors: none; nothing is taken up where the water holds no more than that least.
 * Source: film model; saturation by Benson & Krause.
 *
 * @example surfaceOxygen({ areaM2: 0.524, waterC: 25, water: 'fresh' }, 2.48) // 1.02
 */
export function surfaceOxygen({ areaM2, waterC, water, altitudeM = 0 }: Surface, cmPerHour: number): number {
  const lacking = oxygenSaturation(waterC, SALINITY[water], atmospheresAt(altitudeM)) - LEAST_OXYGEN_MG_L
  return Math.max(0, lacking) * (cmPerHour / CM_PER_M) * areaM2 * HOURS
}

/** Transfer through a surface that nothing stirs, as in a power cut, cm/h: a lake on a still day (Cole & Caraco, from memory). */
export const stillTransfer = ({ waterC, water }: Surface): number => oxygenTransfer(transferUnderWind(0), waterC, water)

/** Bore that a filter's return leaves by where none is stated, mm. Common practice. */
const RETURN_BORE_MM = 16
/** Share of a return's power that ends in the eddies under the surface: pointed down or aside, and pointed at it. Own. */
const SURFACE_SHARE: Span = { low: 0.01, high: 0.1 }
/** L/h to m³/s. */
const M3_S_PER_LPH = 1 / 3_600_000

/** Power of a jet, `½·ρ·Q·v²`, W, of a flow in L/h through a bore in mm. @example jetPowerW(1200, 16) // 0.457 */
export function jetPowerW(flowLph: number, boreMm: number = RETURN_BORE_MM): number {
  const flow = flowLph * M3_S_PER_LPH
  const speed = flow / ((Math.PI / 4) * (boreMm / 1000) ** 2)
  return 0.5 * 1000 * flow * speed ** 2
}

/**
 * Transfer through a surface that a return stirs, cm/h, from one pointed away to one pointed at it; never less than a still one's.
 *
 * Units:  W, kg. Source: Lamont & Scott's small eddies; what share of the power reaches the surface is our own.
 */
export function stirredBy(surface: Surface, powerW: number, waterKg: number): Span {
  const at = (share: number): number =>
    Math.max(stillTransfer(surface), stirredTransfer((powerW * share) / waterKg, surface.waterC, surface.water))
  return { low: at(SURFACE_SHARE.low), high: at(SURFACE_SHARE.high) }
}
