import { lossW, type HeatLoss } from './heat-loss.ts'

/** The water neither freezes nor boils in these formulas: a room outside these marks is refused long before. */
export const COLDEST_WATER_C = 0
export const HOTTEST_WATER_C = 100
/** 100 K halved 36 times is 1.5e-9 K: below what any verdict or time asks for. */
const HALVINGS = 36

/**
 * Temperature at which a constant heat and the losses balance.
 *
 * Units:  W in, °C out, unrounded. Range: clamped to 0 to 100 °C.
 * Source: bisection; the loss rises with the temperature, so there is one answer. Linearising the evaporation errs by 0.4 K.
 *
 * @example equilibriumC(lossInA22DegreeRoom, 300) // 37.18 for a lidded 75 gallon tank
 */
export function equilibriumC(loss: HeatLoss, heatW: number): number {
  let low = COLDEST_WATER_C
  let high = HOTTEST_WATER_C
  if (lossW(loss, low) >= heatW) return low
  if (lossW(loss, high) <= heatW) return high
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2
    if (lossW(loss, middle) < heatW) low = middle
    else high = middle
  }
  return (low + high) / 2
}
