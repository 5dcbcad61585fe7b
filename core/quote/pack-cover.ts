import type { Slot } from '../catalog/kinds.ts'
import type { Product } from '../catalog/product.ts'
import type { Conditions } from '../sizing/conditions.ts'
import { waterSpan } from '../sizing/filter-flow.ts'
import type { Gear } from '../sizing/gear.ts'
import { situationOf } from '../sizing/situation.ts'
import { over, type Span } from '../sizing/span.ts'
import { disinfectantIn } from '../sizing/tap-water.ts'
import { packVolumeL } from '../sizing/substrate-depth.ts'
import { SALT_G_PER_L } from '../sizing/typical-ranges.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'

/** What is bought by the pack: litres of bed, litres of tap water treated, litres of sea water made. */
export const PACK_SLOTS = ['substrate', 'treat_water', 'salt'] as const satisfies readonly Slot[]
export type PackSlot = (typeof PACK_SLOTS)[number]
export const isPackSlot = (slot: Slot): slot is PackSlot => PACK_SLOTS.some((one) => one === slot)

/** A bed is as good as the wanted one from nine tenths of it: beds are not level. Own, as in the check of its depth. A dose has no such room. */
const ENOUGH: Record<PackSlot, number> = { substrate: 0.9, treat_water: 1, salt: 1 }

/**
 * Litres that a build needs of something bought by the pack, for the largest tank that its stated figures allow.
 *
 * Units:  L: bed over the inside floor, else water in use. Null without a tank, and where nothing of it is needed: fresh water needs no salt, water without a
 *         disinfectant no conditioner, a bed of no depth no substrate.
 * Source: footprint times depth; water in use (geometry).
 *
 * @example packNeedL('substrate', { gear, conditions }) // 22.3 for 50 mm in a tank of 90 × 45 cm
 */
export function packNeedL(slot: PackSlot, subject: { gear: Gear; conditions: Conditions }): number | null {
  const { conditions } = subject
  if (slot === 'salt' && conditions.livestock.water !== 'salt') return null
  if (slot === 'treat_water' && disinfectantIn(subject) === 'none') return null
  const situation = situationOf(subject)
  if (!situation.ok) return null
  const floorM2 = over(situation.value.corners, ({ geometry }) => geometry.insidePlanMm2 / 1e6).high
  const litres = slot === 'substrate' ? floorM2 * conditions.substrateDepthMm : waterSpan(situation.value).high
  return litres > 0 ? litres : null
}

/**
 * Litres that one pack is good for, at the low end of what its label leaves open; undefined where it states too little.
 *
 * @example packGivesL({ kind: 'salt_mix', spec: { packMassKg: 4, gramsPerL: 38 } }) // { low: 105.26, high: 105.26 }
 */
export function packGivesL(product: Pick<Product, 'kind' | 'spec'>): Span | undefined {
  const of = product as Product
  switch (of.kind) {
    case 'substrate':
      return packVolumeL(of.spec)
    case 'conditioner': {
      const { packVolumeMl, doseMlPerL } = of.spec
      return packVolumeMl === undefined || doseMlPerL === undefined ? undefined : exact(packVolumeMl / doseMlPerL)
    }
    case 'salt_mix': {
      const { packMassKg, gramsPerL } = of.spec
      if (packMassKg === undefined) return undefined
      if (gramsPerL !== undefined) return exact((packMassKg * 1000) / gramsPerL)
      return { low: (packMassKg * 1000) / SALT_G_PER_L.high, high: (packMassKg * 1000) / SALT_G_PER_L.low }
    }
    default:
      return undefined
  }
}
const exact = (litres: number): Span => ({ low: litres, high: litres })

/** How far the chosen packs go. */
export interface PackCover {
  neededL: number
  /** Null where a chosen pack does not say. */
  givenL: number | null
  /** 0 where there is enough. */
  missingL: number
  /** Too little to do without more. */
  short: boolean
}

const KIND_OF = { substrate: 'substrate', treat_water: 'conditioner', salt: 'salt_mix' } as const

/** What is needed, given and missing of something bought by the pack; null where nothing of it is needed. */
export function packCover(slot: PackSlot, subject: { gear: Gear; conditions: Conditions }): PackCover | null {
  const neededL = packNeedL(slot, subject)
  if (neededL === null) return null
  const { gear } = subject
  const chosen = { substrate: gear.substrates, treat_water: gear.conditioners, salt: gear.salts ?? [] }[slot]
  let givenL: number | null = 0
  for (const { spec, quantity: count } of chosen) {
    const one = packGivesL({ kind: KIND_OF[slot], spec })
    givenL = givenL === null || one === undefined ? null : givenL + one.low * count
  }
  const missingL = givenL === null ? 0 : Math.max(0, neededL - givenL)
  return { neededL, givenL, missingL, short: givenL !== null && givenL < neededL * ENOUGH[slot] }
}

const WORDS: Record<PackSlot, { needed: string; given: string }> = {
  substrate: { needed: 'for the bed', given: 'chosen' },
  treat_water: { needed: 'of water to treat', given: 'treated' },
  salt: { needed: 'of salt water to mix', given: 'made' },
}
const litres = (value: number) => quantity(value, 'L', value < 10 ? 1 : 0)

/**
 * The same in words: "22 L for the bed, 20 L chosen, 2.3 L missing". A reserve is not told: it is what the packs come in.
 *
 * @example sayPackCover('salt', { neededL: 237, givenL: 105, missingL: 132, short: true }) // ['237 L of salt water to mix', '105 L made', '132 L missing']
 */
export function sayPackCover(slot: PackSlot, { neededL, givenL, missingL, short }: PackCover): Phrase {
  const { needed, given } = WORDS[slot]
  const asked = phrase`${litres(neededL)} ${needed}`
  if (givenL === null) return phrase`${asked}; how far a pack goes is not stated`
  return short ? phrase`${asked}, ${litres(givenL)} ${given}, ${litres(missingL)} missing` : phrase`${asked}, ${litres(givenL)} ${given}`
}
