import type { Cover } from './heat-transmission.ts'

/**
 * Three readings of one tank's heat loss. One estimate cannot serve all questions: too high a loss is safe for choosing a heater and unsafe for a
 * heater stuck on.
 */
export interface HeatEnd {
  /** Relative humidity of the room, 0 to 1. */
  humidity: number
  /** ASHRAE activity factor of the surface. */
  activity: number
  /** Share of the open surface's evaporation that a lid lets out. */
  lidLeak: number
  /** Back and bottom against something that keeps heat in; the water film counted. */
  insulated: boolean
}

/** Choosing a heater: dry winter air, the evaporation measured over quiet pools (74 % of the F = 1 equation: ASHRAE Trans. 104 (1998) pt 1A), every side free. */
export const HIGH_LOSS: HeatEnd = { humidity: 0.25, activity: 0.74, lidLeak: 0.2, insulated: false }

/** Running cost: between the ends. Activity 0.5 is ASHRAE's figure for an unoccupied pool (from memory); 50 % humidity and 0.15 are common practice. */
export const USUAL_LOSS: HeatEnd = { humidity: 0.5, activity: 0.5, lidLeak: 0.15, insulated: false }

/** Heater stuck on, and summer: humid air, a still surface, a tight lid (`withLidOn`), back and bottom insulated. */
export const LOW_LOSS: HeatEnd = { humidity: 0.7, activity: 0.5, lidLeak: 0.1, insulated: true }

/** Whether vapour leaves through it as from an open tank. */
export const isLoose = (cover: Cover): boolean => cover === 'open' || cover === 'mesh'

/**
 * The cover that counts where too low a loss is the unsafe guess: a sheet of glass laid on an open tank or on mesh, since anybody may do so. A lid of its own
 * stays as it is.
 *
 * @example withLidOn('open') // 'glass'
 */
export const withLidOn = (cover: Cover): Cover => (isLoose(cover) ? 'glass' : cover)

/** Share of the open surface's evaporation that leaves under this cover. Lids 0.10 to 0.20: common practice. */
export const evaporationShare = (end: HeatEnd, cover: Cover): number => (isLoose(cover) ? 1 : end.lidLeak)
