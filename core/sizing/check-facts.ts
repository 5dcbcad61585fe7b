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
  glass_pane: { title: 'Glass against the water', hurtRank: 6 },
  stand_footprint: { title: 'Stand size', hurtRank: 7 },
  stand_bedding: { title: 'Bed under the glass', hurtRank: 8 },
  tipping: { title: 'Tipping over', hurtRank: 9 },
  cord_length: { title: 'Cords, drip loop included', hurtRank: 10 },
  outlets: { title: 'Outlets', hurtRank: 11 },
  conditioner_dose: { title: 'Conditioner', hurtRank: 12 },
  heater_holds: { title: 'Heat in the coldest room', hurtRank: 14 },
  warm_room: { title: 'The warmest room', hurtRank: 13 },
  smallest_volume: { title: 'Room for the animals', hurtRank: 15 },
  surface_oxygen: { title: 'Oxygen through the surface', hurtRank: 16 },
  filter_flow: { title: 'Filter flow', hurtRank: 17 },
  filter_feed: { title: 'Filter against feeding', hurtRank: 18 },
  flow_ceiling: { title: 'Flow not too strong', hurtRank: 19 },
  salinity_drift: { title: 'Salinity between top-ups', hurtRank: 20 },
  circulation: { title: 'Movement of the water', hurtRank: 21 },
  skimmer_size: { title: 'Skimmer', hurtRank: 22 },
  weekly_change: { title: 'Weekly water change', hurtRank: 23 },
  ammonia_tests: { title: 'Water tests', hurtRank: 24 },
  lid: { title: 'Lid', hurtRank: 25 },
  heater_spare: { title: 'One heater failed', hurtRank: 26 },
  stand_wet: { title: 'Stand and wet', hurtRank: 27 },
  empty_lift: { title: 'Lifting the empty tank', hurtRank: 28 },
  light_level: { title: 'Light at the substrate', hurtRank: 29 },
  light_coverage: { title: 'Light over the length', hurtRank: 30 },
  substrate_depth: { title: 'Substrate depth', hurtRank: 31 },
}
