import { nearWords } from './near-words.ts'
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

const KIND_WORDS = [...new Set(MEANT.flatMap(({ words }) => words))]
const lettersOf = (name: string): string => name.toLowerCase().replace(/[\s_-]/g, '')
const BY_LETTERS: ReadonlyMap<string, Kind> = new Map(KINDS.map((kind) => [lettersOf(KIND_NAMES[kind]), kind]))
/** Named in a message; more is a list that nobody reads. */
const MOST_NEAR = 3
/** A longer text is no misspelt kind, and comparing it would take long. */
const MOST_SIGNS = 60

/**
 * Kinds that a misspelt text may have meant, at most three: those that are nearest as a whole and that most of its words mean, slips forgiven. None for
 * more than 60 signs.
 *
 * @example kindsNear('cansiter fliter') // ['filter']
 * @example kindsNear('pump house') // ['air_pump', 'circulation_pump', 'plumbing']
 */
export function kindsNear(text: string): Kind[] {
  if (text.length > MOST_SIGNS) return []
  const whole = nearWords(lettersOf(text), [...BY_LETTERS.keys()]).flatMap(({ word }) => BY_LETTERS.get(word) ?? [])
  const words = text
    .toLowerCase()
    .split(/[\s_-]+/)
    .filter((word) => word !== '')
  const votes = words.flatMap((word) => {
    const meant = kindsMeant(word)
    return meant.length > 0 ? meant : [...new Set(nearWords(word, KIND_WORDS).flatMap((near) => kindsMeant(near.word)))]
  })
  const countOf = (kind: Kind): number => (whole.includes(kind) ? words.length : 0) + votes.filter((vote) => vote === kind).length
  const named = [...new Set([...whole, ...votes])]
  const most = Math.max(...named.map(countOf))
  return named.filter((kind) => countOf(kind) === most).slice(0, MOST_NEAR)
}
