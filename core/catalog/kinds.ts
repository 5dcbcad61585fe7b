/** The kinds of product of this release, in the order a build is put together. */
export const KINDS = [
  'tank',
  'kit',
  'stand',
  'mat',
  'lid',
  'filter',
  'heater',
  'light',
  'substrate',
  'conditioner',
  'ammonia_source',
  'test_kit',
  'thermometer',
  'power',
] as const
export type Kind = (typeof KINDS)[number]

/** What a build must cover. Every kind but the kit fills exactly one. */
export const SLOTS = [
  'hold_water',
  'cover',
  'filter',
  'heat',
  'light',
  'read_temperature',
  'carry_tank',
  'bed_glass',
  'substrate',
  'treat_water',
  'feed_cycle',
  'test_water',
  'protect_circuit',
] as const
export type Slot = (typeof SLOTS)[number]

export const SLOT_OF: Record<Exclude<Kind, 'kit'>, Slot> = {
  tank: 'hold_water',
  lid: 'cover',
  filter: 'filter',
  heater: 'heat',
  light: 'light',
  thermometer: 'read_temperature',
  stand: 'carry_tank',
  mat: 'bed_glass',
  substrate: 'substrate',
  conditioner: 'treat_water',
  ammonia_source: 'feed_cycle',
  test_kit: 'test_water',
  power: 'protect_circuit',
}

export const KIND_NAMES: Record<Kind, string> = {
  tank: 'Tank',
  kit: 'Kit',
  stand: 'Stand',
  mat: 'Mat',
  lid: 'Lid',
  filter: 'Filter',
  heater: 'Heater',
  light: 'Light',
  substrate: 'Substrate',
  conditioner: 'Conditioner',
  ammonia_source: 'Ammonia source',
  test_kit: 'Test kit',
  thermometer: 'Thermometer',
  power: 'Power',
}

/** What a slot does: for the advisor, whose answer may be a product, a part of a kit, or nothing. */
export const SLOT_NAMES: Record<Slot, string> = {
  hold_water: 'Hold water',
  cover: 'Cover',
  filter: 'Filter',
  heat: 'Heat',
  light: 'Light',
  read_temperature: 'Temperature',
  carry_tank: 'Carry the tank',
  bed_glass: 'Bed the glass',
  substrate: 'Substrate',
  treat_water: 'Treat tap water',
  feed_cycle: 'Feed the cycle',
  test_water: 'Test water',
  protect_circuit: 'Protect the circuit',
}

/** The thing that a slot is filled with, in the words of someone who buys it: for the customer's page and paper. */
export const SLOT_PLAIN_NAMES: Record<Slot, string> = {
  hold_water: 'Tank',
  cover: 'Lid',
  filter: 'Filter',
  heat: 'Heater',
  light: 'Light',
  read_temperature: 'Thermometer',
  carry_tank: 'Stand',
  bed_glass: 'Mat',
  substrate: 'Substrate',
  treat_water: 'Tap water conditioner',
  feed_cycle: 'Ammonia to start the filter',
  test_water: 'Water tests',
  protect_circuit: 'Shock-protected power strip',
}
