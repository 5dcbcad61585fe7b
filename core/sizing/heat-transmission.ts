import type { TankShape } from './tank-geometry.ts'

/**
 * Surface resistances in m²K/W, radiation included: heat flowing sideways, up, down. ISO 6946:2017 table 7 (0.13 seen, the others from memory).
 */
const SIDEWAYS = 0.13
const UPWARD = 0.1
const DOWNWARD = 0.17
/** Water at rest against the panel: 3 to 4 % of the whole. Counted only where a low loss is the unsafe guess. Own, from natural convection. */
const WATER_FILM = 0.005
/** W/(m K). Glass 1.0: EN 572-1; acrylic 0.20 and plywood 0.13: EN ISO 10456, from memory. */
const CONDUCTIVITY = { glass: 1, acrylic: 0.2, plywood: 0.13 } as const
/** A stand's top board. Common practice. */
const BOARD_MM = 18
/** A lid's sheet. Common practice. */
const LID_MM = 4

/** What closes the top. Mesh keeps fish in and no vapour. */
export type Cover = 'open' | 'mesh' | 'glass' | 'plastic'

/**
 * Heat transmission of a side panel to still room air.
 *
 * Units:  millimetres in, W/(m²K) out. Source: ISO 6946 series resistance.
 *
 * @example sideTransmission('glass', 10, false) // 7.1429
 */
export function sideTransmission(material: TankShape['material'], thicknessMm: number, waterFilm: boolean): number {
  return 1 / (SIDEWAYS + thicknessMm / 1000 / CONDUCTIVITY[material] + (waterFilm ? WATER_FILM : 0))
}

/** Heat transmission of the bottom through an 18 mm board. @example bottomTransmission('glass', 10) // 3.1401 */
export function bottomTransmission(material: TankShape['material'], thicknessMm: number): number {
  return 1 / (DOWNWARD + thicknessMm / 1000 / CONDUCTIVITY[material] + BOARD_MM / 1000 / CONDUCTIVITY.plywood)
}

/** Heat transmission of the top, evaporation apart. @example topTransmission('glass') // 9.6154 */
export function topTransmission(cover: Cover): number {
  if (cover === 'open' || cover === 'mesh') return 1 / UPWARD
  return 1 / (UPWARD + LID_MM / 1000 / CONDUCTIVITY[cover === 'glass' ? 'glass' : 'acrylic'])
}
