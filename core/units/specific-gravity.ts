import { seaWaterDensity } from '../water/density.ts'

/** Both waters at this temperature: a specific gravity means nothing without it. Hydrometers of the hobby are marked for it. Common practice. */
const AT_CELSIUS = 25
/** Where the density of sea water was fitted. */
const MOST_SALINITY = 42

/**
 * Specific gravity of sea water, both waters at 25 °C.
 *
 * Units:  practical salinity (about g/kg) in, a ratio out, unrounded. Range: 0 to 42; beyond it the slope at the end goes on.
 * Source: the ratio of two densities of UNESCO EOS-80 (water/density.ts).
 *
 * @example specificGravity(35) // 1.0264
 */
export function specificGravity(salinity: number): number {
  const inside = Math.min(Math.max(salinity, 0), MOST_SALINITY)
  const fresh = seaWaterDensity(0, AT_CELSIUS)
  const slope = (seaWaterDensity(MOST_SALINITY, AT_CELSIUS) - seaWaterDensity(MOST_SALINITY - 1, AT_CELSIUS)) / fresh
  return seaWaterDensity(inside, AT_CELSIUS) / fresh + (salinity - inside) * slope
}

/**
 * Salinity of a specific gravity, both waters at 25 °C: the other way round, by Newton's method.
 *
 * Units:  a ratio in, practical salinity out. Range: 1 to 1.032; outside it the straight line at the end goes on.
 * Source: own inversion of `specificGravity`.
 *
 * @example salinityOfGravity(1.0264) // 35.05
 */
export function salinityOfGravity(gravity: number): number {
  let salinity = (gravity - 1) * ROUGHLY_PER_GRAVITY
  // The curve is almost straight: three steps come to the last digit, and no more than that is ever worth it.
  for (let step = 0; step < 6; step++) {
    const slope = (specificGravity(salinity + STEP) - specificGravity(salinity)) / STEP
    salinity -= (specificGravity(salinity) - gravity) / slope
  }
  return salinity
}

/** 35 g/kg is 1.0264. */
const ROUGHLY_PER_GRAVITY = 1326
const STEP = 1e-3
