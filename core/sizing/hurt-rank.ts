import type { Check } from './finding.ts'

/**
 * What can hurt soonest first: people, then animals, then things, then money. Own ranking.
 * A heater that sticks on leads: it is the fault that is seen most and kills all at once. A sump that runs over does so at the first power cut, where the mains are.
 */
const HURT_FIRST: readonly Check[] = [
  'heater_stuck',
  'outlet_protection',
  'electrical_load',
  'drain_down',
  'stand_load',
  'floor_load',
  'glass_pane',
  'stand_footprint',
  'stand_bedding',
  'tipping',
  'cord_length',
  'outlets',
  'conditioner_dose',
  'warm_room',
  'heater_holds',
  'smallest_volume',
  'surface_oxygen',
  'filter_flow',
  'filter_feed',
  'flow_ceiling',
  'salinity_drift',
  'circulation',
  'skimmer_size',
  'weekly_change',
  'ammonia_tests',
  'lid',
  'heater_spare',
  'stand_wet',
  'empty_lift',
  'light_level',
  'light_coverage',
  'substrate_depth',
]

/** The last of those that hurt people or take the tank down with its house: mains, water on the floor, what stands and bears. Own. */
const LAST_OF_HARM: Check = 'tipping'

/** Whether a check is of what hurts people or brings the tank down. @example isOfHarm('floor_load') // true */
export const isOfHarm = (check: Check): boolean => hurtRankOf(check) <= hurtRankOf(LAST_OF_HARM)

/** Place of a check in that order, from 1. @example hurtRankOf('heater_stuck') // 1 */
export const hurtRankOf = (check: Check): number => HURT_FIRST.indexOf(check) + 1
