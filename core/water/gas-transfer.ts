import { pureWaterDensity } from './density.ts'
import { waterViscosity } from './viscosity.ts'

/** Schmidt number to which transfer velocities are told: carbon dioxide in fresh water at 20 °C. */
const TOLD_AT = 600

/** Coefficients of the cubic by kind of water: Wanninkhof, J. Geophys. Res. 97 (1992) 7373, table A1, from memory. */
const SCHMIDT_OXYGEN = {
  fresh: [1800.6, 120.1, 3.7818, 0.047608],
  salt: [1953.4, 128, 3.9918, 0.050091],
} as const

/**
 * Schmidt number of oxygen: viscosity of the water over the diffusivity of the gas.
 *
 * Units:  degrees Celsius; no unit out. Range: 0 to 30 °C; to 35 °C it is carried on. Source: Wanninkhof (1992), from memory.
 *
 * @example schmidtOfOxygen(20, 'fresh') // 530
 */
export function schmidtOfOxygen(celsius: number, water: 'fresh' | 'salt'): number {
  const [a, b, c, d] = SCHMIDT_OXYGEN[water]
  return a - b * celsius + c * celsius ** 2 - d * celsius ** 3
}

/**
 * Speed at which a gas of Schmidt number 600 passes a water surface under wind.
 *
 * Units:  m/s at 10 m height; cm/h out. Range: 0 to 10 m/s. Source: Cole & Caraco, Limnol. Oceanogr. 43 (1998) 647, from memory.
 *
 * @example transferUnderWind(0) // 2.07: a lake on a still day
 */
export const transferUnderWind = (metresPerSecond: number): number => 2.07 + 0.215 * metresPerSecond ** 1.7

/**
 * The same for oxygen in water of a temperature, cm/h: by the square root of the Schmidt numbers, as for a surface that moves.
 *
 * @example oxygenTransfer(2.07, 25, 'fresh') // 2.48
 */
export const oxygenTransfer = (cmPerHourAt600: number, celsius: number, water: 'fresh' | 'salt'): number =>
  cmPerHourAt600 * Math.sqrt(TOLD_AT / schmidtOfOxygen(celsius, water))

/** m/s to cm/h. */
const CM_PER_HOUR = 360_000

/**
 * Speed at which oxygen passes a surface that small eddies renew, cm/h: `k = 0.4·(ε·ν)^¼·Sc^(−½)`.
 *
 * Units:  power that is stirred away near the surface in W for each kg of water, °C; cm/h out. Range: 1e-7 to 1e-2 W/kg.
 * Source: Lamont & Scott, A.I.Ch.E. Journal 16 (1970) 513, from memory.
 *
 * @example stirredTransfer(1e-5, 25, 'fresh') // 12.2
 */
export function stirredTransfer(wattsPerKg: number, celsius: number, water: 'fresh' | 'salt'): number {
  const kinematic = waterViscosity(celsius) / pureWaterDensity(celsius)
  return (0.4 * (wattsPerKg * kinematic) ** 0.25 * CM_PER_HOUR) / Math.sqrt(schmidtOfOxygen(celsius, water))
}
