import { KINDS, SLOT_OF, type Kind, type Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { Action, Check } from '../../../core/sizing/finding.ts'
import type { ReaderUnits, Unit } from '../../../core/units/quantity.ts'
import { sayQuantity } from '../../../core/units/say.ts'

/** What a finding asks for, and by which check, so that a product can be tried against it. */
export type Want = NonNullable<Action['want']> & { check?: Check }

/** Kinds whose products fill a slot; a kit may hold the water. @example kindsFor('hold_water') // ['tank', 'kit'] */
export function kindsFor(slot: Slot): Kind[] {
  return KINDS.filter((kind) => (kind === 'kit' ? slot === 'hold_water' : SLOT_OF[kind] === slot))
}

/** Limits that name a stand's top by the word a tank uses for its own side. */
const SPEC_KEYS: Record<string, string[]> = { lengthMm: ['lengthMm', 'topLengthMm'], widthMm: ['widthMm', 'topWidthMm'] }

function stated(product: Product, key: string): number | undefined {
  const spec = product.spec as Record<string, unknown>
  for (const name of SPEC_KEYS[key] ?? [key]) {
    const value = spec[name]
    if (typeof value === 'number') return value
  }
  return undefined
}

/**
 * Whether a product would settle what a finding asks for. `unstated`: its maker does not say, so it may.
 *
 * @example meetsWant(heater100W, { slot: 'heat', quantity: 2, minimum: { powerW: 80 }, maximum: { powerW: 120 } }) // 'yes'
 */
export function meetsWant(product: Product, want: Want): 'yes' | 'no' | 'unstated' {
  if (product.kind === 'kit' || SLOT_OF[product.kind] !== want.slot) return 'no'
  const least = Object.entries(want.minimum).map(([key, limit]) => [stated(product, key), limit, 1] as const)
  const most = Object.entries(want.maximum ?? {}).map(([key, limit]) => [stated(product, key), limit, -1] as const)
  const limits = [...least, ...most]
  const top = want.top === undefined ? want.top : product.kind === 'stand' ? (product.spec.top ?? null) : null
  if (top && top !== want.top) return 'no'
  if (limits.some(([value, limit, sign]) => value !== undefined && limit !== undefined && (value - limit) * sign < 0)) return 'no'
  return top === null || limits.some(([value]) => value === undefined) ? 'unstated' : 'yes'
}

/** A kind as one asks for it: one of them, and several. */
const ASKED_FOR: Record<Kind, readonly [one: string, several: string]> = {
  tank: ['a tank', 'tanks'], kit: ['a kit', 'kits'], stand: ['a stand', 'stands'], mat: ['a mat', 'mats'], lid: ['a lid', 'lids'], filter: ['a filter', 'filters'],
  heater: ['a heater', 'heaters'], light: ['a light', 'lights'], substrate: ['substrate', 'packs of substrate'], conditioner: ['a conditioner', 'packs of conditioner'],
  ammonia_source: ['an ammonia source', 'packs of ammonia source'], test_kit: ['a test kit', 'test kits'], thermometer: ['a thermometer', 'thermometers'],
  power: ['a power strip', 'power strips'], filter_media: ['filter media', 'packs of filter media'], sump: ['a sump', 'sumps'], chiller: ['a chiller', 'chillers'], air_pump: ['an air pump', 'air pumps'],
  circulation_pump: ['a circulation pump', 'circulation pumps'], skimmer: ['a skimmer', 'skimmers'], co2: ['a CO2 system', 'CO2 systems'], uv: ['a UV clarifier', 'UV clarifiers'],
  hardscape: ['hardscape', 'pieces of hardscape'], background: ['a background', 'backgrounds'], bacteria: ['bacteria', 'packs of bacteria'], salt_mix: ['salt mix', 'packs of salt mix'],
  ro_unit: ['a reverse-osmosis unit', 'reverse-osmosis units'], refractometer: ['a refractometer', 'refractometers'], timer: ['a timer', 'timers'],
  battery_backup: ['a battery backup', 'battery backups'], plumbing: ['a plumbing part', 'plumbing parts'], tool: ['a tool', 'tools'], food: ['food', 'packs of food'],
  plant: ['a plant', 'plants'], livestock: ['livestock', 'animals'], service: ['a service', 'services'],
} // prettier-ignore

/** What the press on a finding does. @example sayFind('heater', 3) // 'Find 3 heaters' */
export function sayFind(kind: Kind, quantity: number): string {
  const [one, several] = ASKED_FOR[kind]
  return quantity > 1 ? `Find ${quantity} ${several}` : `Find ${one}`
}

/** The same for what is bought in packs, as many as it takes. @example sayFindPacks('substrate') // 'Find packs of substrate' */
export const sayFindPacks = (kind: Kind): string => `Find ${ASKED_FOR[kind][1]}`

const WANT_WORDS: Record<string, { unit: Unit; what: string }> = {
  powerW: { unit: 'W', what: '' }, ratedFlowLph: { unit: 'L/h', what: ' rated flow' }, ratedLoadKg: { unit: 'kg', what: ' stated load' }, luminousFluxLm: { unit: 'lm', what: '' },
  cordMm: { unit: 'mm', what: ' cord' }, lengthMm: { unit: 'mm', what: ' long' }, totalVolumeL: { unit: 'L', what: ' to the rim' }, widthMm: { unit: 'mm', what: ' deep' }, outlets: { unit: 'count', what: ' outlets' },
} // prettier-ignore

/** The limits in words: "2 of them, at least 80 W, at most 120 W". */
export function sayWant(want: Want, reader: ReaderUnits): string {
  const say = (key: string, value: number) => {
    const words = WANT_WORDS[key]
    return words ? `${sayQuantity({ value, unit: words.unit, digits: 0 }, reader)}${words.what}` : String(value)
  }
  const parts = [
    ...(want.quantity > 1 ? [`${want.quantity} of them`] : []),
    ...Object.entries(want.minimum).map(([key, value]) => `at least ${say(key, value)}`),
    ...Object.entries(want.maximum ?? {}).map(([key, value]) => `at most ${say(key, value)}`),
    ...(want.top ? ['a full board on top'] : []),
  ]
  return parts.join(', ')
}
