/** 0 °C in kelvin. */
const ZERO_C_K = 273.15

/** Pressure of water vapour, atm, in the form that goes with the solubility: Benson & Krause (1984), from memory. */
const vapourAtm = (kelvin: number): number => Math.exp(11.8571 - 3840.7 / kelvin - 216961 / kelvin ** 2)

/**
 * Oxygen that water holds in balance with moist air.
 *
 * Units:  degrees Celsius, practical salinity (about g/kg), pressure in atmospheres; mg/L out, unrounded.
 * Range:  0 to 40 °C, salinity 0 to 40, 0.5 to 1.1 atm.
 * Errors: none.
 * Source: Benson & Krause, Limnol. Oceanogr. 29 (1984) 620, as the U.S. Geological Survey uses it; the correction for pressure from memory.
 *
 * @example oxygenSaturation(25) // 8.263
 * @example oxygenSaturation(25, 35) // 6.772
 */
export function oxygenSaturation(celsius: number, salinity = 0, atm = 1): number {
  const t = celsius + ZERO_C_K
  const fresh = -139.34411 + 1.575701e5 / t - 6.642308e7 / t ** 2 + 1.2438e10 / t ** 3 - 8.621949e11 / t ** 4
  const salt = salinity * (1.7674e-2 - 10.754 / t + 2140.7 / t ** 2)
  const atSeaLevel = Math.exp(fresh - salt)
  if (atm === 1) return atSeaLevel
  const vapour = vapourAtm(t)
  const theta = 9.75e-4 - 1.426e-5 * celsius + 6.436e-8 * celsius ** 2
  return (atSeaLevel * atm * (1 - vapour / atm) * (1 - theta * atm)) / ((1 - vapour) * (1 - theta))
}

/**
 * Mean pressure of the air at a height above the sea, atm.
 *
 * Units:  metres. Range: 0 to 11 000 m. Source: ICAO standard atmosphere, from memory.
 *
 * @example atmospheresAt(1600) // 0.8243
 */
export const atmospheresAt = (metres: number): number => (1 - 2.25577e-5 * metres) ** 5.25588
