import type { Check } from './finding.ts'

/**
 * Title of each check and how soon it can hurt: people first, then animals, then things, then money. Own ranking; a smaller rank comes first.
 * A heater that sticks on leads: it is the fault that is seen most and kills all at once.
 */
export const CHECK_FACTS: Record<Check, { title: string; hurtRank: number }> = {
  heater_stuck: { title: 'Heater stuck on', hurtRank: 1 },
  outlet_protection: { title: 'Protective device', hurtRank: 2 },
  electrical_load: { title: 'Power on the circuit', hurtRank: 3 },
  stand_load: { title: 'Stand load', hurtRank: 4 },
  floor_load: { title: 'Floor', hurtRank: 5 },
  stand_footprint: { title: 'Stand size', hurtRank: 6 },
  stand_bedding: { title: 'Bed under the glass', hurtRank: 7 },
  cord_length: { title: 'Cords, drip loop included', hurtRank: 8 },
  outlets: { title: 'Outlets', hurtRank: 9 },
  conditioner_dose: { title: 'Conditioner', hurtRank: 10 },
  heater_holds: { title: 'Heat in the coldest room', hurtRank: 12 },
  warm_room: { title: 'The warmest room', hurtRank: 11 },
  smallest_volume: { title: 'Room for the animals', hurtRank: 13 },
  filter_flow: { title: 'Filter flow', hurtRank: 14 },
  filter_feed: { title: 'Filter against feeding', hurtRank: 15 },
  flow_ceiling: { title: 'Flow not too strong', hurtRank: 16 },
  ammonia_tests: { title: 'Water tests', hurtRank: 17 },
  lid: { title: 'Lid', hurtRank: 18 },
  heater_spare: { title: 'One heater failed', hurtRank: 19 },
  stand_wet: { title: 'Stand and wet', hurtRank: 20 },
  empty_lift: { title: 'Lifting the empty tank', hurtRank: 21 },
  light_level: { title: 'Light at the substrate', hurtRank: 22 },
  light_coverage: { title: 'Light over the length', hurtRank: 23 },
  substrate_depth: { title: 'Substrate depth', hurtRank: 24 },
}
