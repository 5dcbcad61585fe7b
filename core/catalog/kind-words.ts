import { KIND_NAMES, KINDS, type Kind } from './kinds.ts'

/** What people type for a kind beside its name: the trade's other words, and what the thing is for. */
export const KIND_SEARCH_WORDS: Record<Kind, readonly string[]> = {
  tank: ['aquarium', 'glass'],
  kit: ['set', 'bundle', 'starter'],
  stand: ['cabinet', 'table', 'frame'],
  mat: ['pad', 'foam', 'levelling', 'leveling'],
  lid: ['cover', 'hood', 'canopy', 'top'],
  filter: ['canister', 'hang-on', 'hob', 'sponge', 'return'],
  filter_media: ['media', 'carbon', 'floss', 'rings', 'sponge', 'cartridge'],
  sump: ['refugium', 'below', 'underneath'],
  heater: ['heating', 'thermostat'],
  chiller: ['cooler', 'cooling'],
  light: ['lamp', 'led', 'lighting'],
  air_pump: ['air', 'bubbler', 'airstone', 'aerator'],
  circulation_pump: ['powerhead', 'wavemaker', 'wave', 'flow', 'stream'],
  skimmer: ['protein', 'foam'],
  co2: ['carbon', 'dioxide', 'gas', 'diffuser', 'regulator'],
  uv: ['ultraviolet', 'sterilizer', 'steriliser', 'clarifier'],
  substrate: ['gravel', 'sand', 'soil', 'aquasoil'],
  hardscape: ['rock', 'stone', 'wood', 'driftwood', 'decor', 'ornament'],
  background: ['backdrop', 'film', 'poster'],
  conditioner: ['dechlorinator', 'dechlorinate', 'chlorine', 'chloramine'],
  ammonia_source: ['ammonia', 'ammonium', 'cycling'],
  bacteria: ['starter', 'culture', 'cycling', 'seeding'],
  salt_mix: ['salt', 'marine', 'reef', 'sea'],
  ro_unit: ['ro', 'rodi', 'osmosis', 'purifier', 'membrane'],
  test_kit: ['test', 'drops', 'strips'],
  refractometer: ['hydrometer', 'salinity', 'gravity'],
  thermometer: ['temperature', 'probe'],
  timer: ['clock', 'switch', 'schedule'],
  power: ['strip', 'gfci', 'rcd', 'outlet', 'socket', 'adapter'],
  battery_backup: ['battery', 'ups', 'outage', 'blackout'],
  plumbing: ['hose', 'pipe', 'tubing', 'valve', 'bulkhead', 'fitting', 'overflow'],
  tool: ['siphon', 'net', 'bucket', 'scraper', 'tweezers', 'scissors', 'vacuum'],
  food: ['feed', 'flakes', 'pellets', 'frozen'],
  plant: ['moss', 'fern', 'crypt', 'stem'],
  livestock: ['fish', 'shrimp', 'snail', 'coral', 'animal'],
  service: ['delivery', 'installation', 'drilling', 'maintenance', 'setup'],
}

/** Shorter beginnings would mean half the kinds. */
const LEAST_LETTERS = 3

const MEANT = KINDS.map((kind) => ({
  kind,
  words: [...KIND_NAMES[kind].toLowerCase().split(/[\s-]+/), ...KIND_SEARCH_WORDS[kind]],
}))

/**
 * Kinds that a typed word means: the whole word, one letter more or less at its end ("heaters"), or at least three letters of its beginning.
 *
 * @example kindsMeant('powerhead') // ['circulation_pump']
 * @example kindsMeant('dechlor') // ['conditioner']
 */
export function kindsMeant(word: string): Kind[] {
  const typed = word.toLowerCase()
  const bare = typed.length > LEAST_LETTERS ? typed.replace(/s$/, '') : typed
  const means = (known: string): boolean => known === typed || known === bare || (bare.length >= LEAST_LETTERS && known.startsWith(bare))
  return MEANT.filter(({ words }) => words.some(means)).map(({ kind }) => kind)
}
