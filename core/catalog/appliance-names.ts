/** What is plugged in at the tank beside heater, filter and light. Apart from the other kinds' names: these are all that the engine tells. */
export const APPLIANCE_NAMES = {
  chiller: 'Chiller',
  air_pump: 'Air pump',
  circulation_pump: 'Circulation pump',
  skimmer: 'Skimmer',
  co2: 'CO2 system',
  uv: 'UV clarifier',
  battery_backup: 'Battery backup',
} as const

/** Begins with a word that is written in capitals wherever it stands. */
const CAPITALS = /^[A-Z][A-Z0-9]/

/** A name inside a sentence. @example nameInText('CO2 system') // 'CO2 system' @example nameInText('Test kit') // 'test kit' */
export const nameInText = (name: string): string => (CAPITALS.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1))
