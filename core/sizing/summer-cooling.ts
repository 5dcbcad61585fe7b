import { lossW, type HeatLoss } from './heat-loss.ts'

/** Air that a small fan moves over the surface, m/s. Common practice. */
export const FAN_AIR_MPS = 1
/** Still and moving air in the ASHRAE form, `0.089 + 0.0782·V`: HVAC Applications, natatoriums, from memory. */
const STILL = 0.089
const MOVING = 0.0782

/**
 * An open tank with a fan across it. Only the vapour is counted: the air also takes heat from the surface or gives it some, which is less.
 *
 * Units:  m/s. Range: 0 to 2 m/s. Errors: none. Source: ASHRAE form, from memory.
 *
 * @example fanned(open, 0).vapourWPerPa === open.vapourWPerPa // true
 */
export const fanned = (open: HeatLoss, airMps: number = FAN_AIR_MPS): HeatLoss => ({
  ...open,
  vapourWPerPa: (open.vapourWPerPa * (STILL + MOVING * airMps)) / STILL,
})

/**
 * Heat that a chiller must take out to hold a temperature; nothing where the losses hold it.
 *
 * Units:  W, °C. Range: as `lossW`. Source: the heat balance.
 *
 * @example coolingNeededW(loss, 60, 26) // 60 W less what the tank loses at 26 °C
 */
export const coolingNeededW = (loss: HeatLoss, heatW: number, heldC: number): number => Math.max(0, heatW - lossW(loss, heldC))
