import { latentHeatKjKg } from '../water/latent-heat.ts'
import { saturationPressurePa } from '../water/vapour-pressure.ts'
import { evaporationShare, type HeatEnd } from './heat-ends.ts'
import { bottomTransmission, sideTransmission, topTransmission, type Cover } from './heat-transmission.ts'
import type { TankGeometry, TankShape } from './tank-geometry.ts'

/** 0.089 kW/(m² kPa) of the ASHRAE form without air movement, in W/(m² Pa). HVAC Applications, natatoriums. */
const EVAPORATION_W_M2_PA = 0.089

const MM2_PER_M2 = 1e6
const SECONDS_PER_DAY = 86_400

/** A tank in a room: its loss is a function of the water's temperature alone. */
export interface HeatLoss {
  sideWPerK: number
  bottomWPerK: number
  topWPerK: number
  /** The three together. */
  dryWPerK: number
  /** Heat carried off by vapour, per pascal above the room's vapour pressure. */
  vapourWPerPa: number
  roomC: number
  roomVapourPa: number
}

/**
 * Reckons a tank's losses in a room once, so that they can be asked for at many temperatures.
 *
 * Units:  geometry in mm, room in °C; W/K and W/Pa out.
 * Source: conduction by ISO 6946; evaporation by the ASHRAE form `w = A·F·(p_w − p_a)·0.089/Y`, which takes `A·F·(p_w − p_a)·0.089` of heat.
 *         The surface resistances already hold radiation.
 *
 * @example // 48 × 18 × 21 in, 10 mm glass, open
 * heatLoss(shape, geometry, 'open', USUAL_LOSS, 20) // sideWPerK 11.816, bottomWPerK 1.750, topWPerK 5.243
 */
export function heatLoss(shape: TankShape, geometry: TankGeometry, cover: Cover, end: HeatEnd, roomC: number): HeatLoss {
  const wetHeightMm = geometry.waterDepthMm + shape.bottomMm
  const roundMm = geometry.outsideRoundMm - (end.insulated ? geometry.outsideBackMm : 0)
  const topM2 = geometry.insidePlanMm2 / MM2_PER_M2
  const bottomM2 = end.insulated ? 0 : geometry.outsidePlanMm2 / MM2_PER_M2
  const sideWPerK = (sideTransmission(shape.material, shape.glassMm, end.insulated) * roundMm * wetHeightMm) / MM2_PER_M2
  const bottomWPerK = bottomTransmission(shape.material, shape.bottomMm) * bottomM2
  const topWPerK = topTransmission(cover) * topM2
  return {
    sideWPerK,
    bottomWPerK,
    topWPerK,
    dryWPerK: sideWPerK + bottomWPerK + topWPerK,
    vapourWPerPa: EVAPORATION_W_M2_PA * end.activity * topM2 * evaporationShare(end, cover),
    roomC,
    roomVapourPa: end.humidity * saturationPressurePa(roomC),
  }
}

/**
 * The same tank in another room.
 *
 * Units: humidity 0 to 1, °C. @example inRoom(loss, 0.5, 20).roomVapourPa // 1169.4
 */
export const inRoom = (loss: HeatLoss, humidity: number, roomC: number): HeatLoss => ({
  ...loss,
  roomC,
  roomVapourPa: humidity * saturationPressurePa(roomC),
})

/** Air of a room, its saturation pressure reckoned once for whatever humidity it may have. */
export interface Room {
  roomC: number
  saturationPa: number
}

/** @example roomAt(20) // { roomC: 20, saturationPa: 2338.8 } */
export const roomAt = (roomC: number): Room => ({ roomC, saturationPa: saturationPressurePa(roomC) })

/**
 * Heat that holds a water temperature, as a function of the room: for many rooms and one water.
 *
 * Units: humidity 0 to 1, °C, W, as `lossW`. @example lossByRoom(loss, 0.5, 25)(roomAt(20)) // 140.70
 */
export function lossByRoom({ dryWPerK, vapourWPerPa }: HeatLoss, humidity: number, waterC: number): (room: Room) => number {
  const waterPa = saturationPressurePa(waterC)
  return ({ roomC, saturationPa }) => dryWPerK * (waterC - roomC) + vapourWPerPa * Math.max(0, waterPa - humidity * saturationPa)
}

/** Heat carried off by vapour at a water temperature, W. Water that would condense gives nothing back. */
export function vapourLossW(loss: HeatLoss, waterC: number): number {
  return loss.vapourWPerPa * Math.max(0, saturationPressurePa(waterC) - loss.roomVapourPa)
}

/**
 * Heat that must be put in to hold a water temperature; negative where the room warms the water.
 *
 * Units:  °C in, W out, unrounded. Range: 0 to 100 °C of water.
 *
 * @example lossW(openTankInA20DegreeRoom, 25) // 140.70
 */
export function lossW(loss: HeatLoss, waterC: number): number {
  return loss.dryWPerK * (waterC - loss.roomC) + vapourLossW(loss, waterC)
}

/** Water that leaves as vapour in a day, litres. @example evaporationLPerDay(openTankInA20DegreeRoom, 25) // 1.651 */
export function evaporationLPerDay(loss: HeatLoss, waterC: number): number {
  return (vapourLossW(loss, waterC) * SECONDS_PER_DAY) / (latentHeatKjKg(waterC) * 1000)
}
