import { saturationPressurePa, saturationSlopePaPerK } from '../water/vapour-pressure.ts'
import { lossW, type HeatLoss } from './heat-loss.ts'

/** The water neither freezes nor boils in these formulas: a room outside these marks is refused long before. */
export const COLDEST_WATER_C = 0
export const HOTTEST_WATER_C = 100
/** A step below it is far below what any verdict or time asks for. */
const NEAR_ENOUGH_K = 1e-9

/**
 * Temperature at which a constant heat and the losses balance.
 *
 * Units:  W in, °C out, unrounded. Range: clamped to 0 to 100 °C.
 * Source: Newton's method from the hot side, where it cannot overshoot: the loss rises with the temperature, and ever faster. It begins where the panes alone
 *         would balance the heat; five steps are the rule. Linearising the evaporation errs by 0.4 K.
 *
 * @example equilibriumC(lossInA22DegreeRoom, 300) // 37.18 for a lidded 75 gallon tank
 */
export function equilibriumC(loss: HeatLoss, heatW: number): number {
  if (lossW(loss, COLDEST_WATER_C) >= heatW) return COLDEST_WATER_C
  if (lossW(loss, HOTTEST_WATER_C) <= heatW) return HOTTEST_WATER_C
  const { dryWPerK, roomC, vapourWPerPa, roomVapourPa } = loss
  let waterC = Math.min(HOTTEST_WATER_C, roomC + heatW / dryWPerK)
  let byK: number
  do {
    const pressurePa = saturationPressurePa(waterC)
    const excessPa = pressurePa - roomVapourPa
    const isWet = excessPa > 0
    const overW = dryWPerK * (waterC - roomC) + (isWet ? vapourWPerPa * excessPa : 0) - heatW
    byK = overW / (dryWPerK + (isWet ? vapourWPerPa * saturationSlopePaPerK(waterC, pressurePa) : 0))
    waterC -= byK
  } while (byK > NEAR_ENOUGH_K)
  return waterC
}
