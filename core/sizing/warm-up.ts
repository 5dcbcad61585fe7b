import { equilibriumC } from './equilibrium.ts'
import { lossW, type HeatLoss } from './heat-loss.ts'
import type { ThermalCase } from './heating.ts'
import { over } from './span.ts'

/** Closer to the balance than this, the water is as good as there and never passes it. */
const NEVER_WITHIN_K = 0.005
/** Even number of Simpson steps; 16 agree with an adaptive solver to 1e-5 of the hours. */
const STEPS = 16
const SECONDS_PER_HOUR = 3600

/**
 * Hours in which a constant heat takes the water from one temperature to another, warming or cooling; undefined where it never gets there.
 *
 * Units:  °C, W and J/K in, hours out, unrounded.
 * Source: `C dT/dt = P − Q(T)`, integrated by Simpson over `ln |T_balance − T|`, in which the integrand is smooth.
 *
 * @example hoursBetween(loss, 1_073_386, 300, 18, 25) // 9.37 for a lidded 75 gallon tank in a room of 18 °C
 */
export function hoursBetween(loss: HeatLoss, capacityJPerK: number, heatW: number, fromC: number, toC: number): number | undefined {
  if (fromC === toC) return 0
  const balanceC = equilibriumC(loss, heatW)
  const before = balanceC - fromC
  const after = balanceC - toC
  if (Math.sign(before) !== Math.sign(after) || Math.abs(after) < NEVER_WITHIN_K || Math.abs(after) >= Math.abs(before)) return undefined
  const start = Math.log(Math.abs(before))
  const span = start - Math.log(Math.abs(after))
  let sum = 0
  for (let i = 0; i <= STEPS; i++) {
    const distance = Math.sign(before) * Math.exp(start - (span * i) / STEPS)
    const slopeWPerK = (heatW - lossW(loss, balanceC - distance)) / distance
    sum += (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2) / slopeWPerK
  }
  return (capacityJPerK * sum * span) / (3 * STEPS * SECONDS_PER_HOUR)
}

const hoursOver = (cases: readonly ThermalCase[], heatW: number, fromC: number, toC: number) =>
  over(cases, ({ loss, capacityJPerK }) => hoursBetween(loss, capacityJPerK, heatW, fromC, toC) ?? Infinity)

/** Hours in the case that gets there first; undefined where none does. @example leastHours(heating.cold, 0, 25, 21) // 9.6 */
export function leastHours(cases: readonly ThermalCase[], heatW: number, fromC: number, toC: number): number | undefined {
  const { low } = hoursOver(cases, heatW, fromC, toC)
  return Number.isFinite(low) ? low : undefined
}

/** Hours in the case that gets there last; undefined where one never does. @example mostHours(heating.cold, 300, 18, 25) // 11.2 */
export function mostHours(cases: readonly ThermalCase[], heatW: number, fromC: number, toC: number): number | undefined {
  const { high } = hoursOver(cases, heatW, fromC, toC)
  return Number.isFinite(high) ? high : undefined
}
