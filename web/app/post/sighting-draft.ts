import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Store } from '../../../core/catalog/store.ts'
import { addDays, daysBetween, isCivilDate, sayDate, yearOf, type CivilDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { OLDEST_SIGHTING_DAYS } from '../../../core/pricing/check-sighting.ts'
import { ABOVE_ITS_TAG, isAboveItsTag } from '../../../core/pricing/printed-regular.ts'
import type { Condition, Sighting } from '../../../core/pricing/sighting.ts'
import type { SightingBody } from '../client/sightings.ts'
import { readMoney, spellMoney } from '../parts/figure.ts'
import type { Unsent } from './unsent.ts'

/** A sighting as it is typed. */
export interface SightingDraft {
  product: { id: string; name: string; kind: Kind | null } | null
  storeId: string
  price: string
  condition: Condition
  regular: string
  lastDay: string
  seenOn: CivilDate
  evidence: Sighting['evidence']
  note: string
  /** Id of a refused one that this one stands in for. */
  replaces: string | null
}

export const emptySighting = (today: CivilDate, storeId: string): SightingDraft => ({
  product: null, storeId, price: '', condition: 'shelf', regular: '', lastDay: '', seenOn: today, evidence: 'none', note: '', replaces: null,
}) // prettier-ignore

/** A refused sighting back in the form, to be mended. */
export function draftOfUnsent({ sighting, productName }: Unsent, currency: string): SightingDraft {
  return {
    product: { id: sighting.productId, name: productName, kind: null },
    storeId: sighting.storeId,
    price: spellMoney(sighting.priceMinor, currency),
    condition: sighting.condition,
    regular: spellMoney(sighting.printedRegularMinor, currency),
    lastDay: sighting.lastDay ?? '',
    seenOn: sighting.seenOn,
    evidence: sighting.evidence,
    note: sighting.note ?? '',
    replaces: sighting.id,
  }
}

/** A sale or a clearance has a last day; a shelf price and used goods have none. */
export const mayEnd = (condition: Condition): boolean => condition === 'sale' || condition === 'clearance'

/** A sale announced for longer than a year is a misread date; the server refuses it too. */
const LONGEST_SALE_DAYS = 366

export interface SightingReading {
  /** Null while a field is missing or wrong. */
  body: Omit<SightingBody, 'id'> | null
  priceMinor: number | null
  regularMinor: number | null
  faults: Partial<Record<'product' | 'store' | 'price' | 'regular' | 'lastDay' | 'seenOn', string>>
}

function lastDayFault(draft: SightingDraft): string | undefined {
  if (!mayEnd(draft.condition) || draft.lastDay === '') return undefined
  if (!isCivilDate(draft.lastDay)) return 'This is not a day. Leave it out if none is printed.'
  if (draft.lastDay < draft.seenOn) return 'The sale’s last day is before the day it was seen. Check the two dates.'
  return draft.lastDay > addDays(draft.seenOn, LONGEST_SALE_DAYS) ? 'The last day is more than a year away. Check the year.' : undefined
}

/**
 * What the form holds, with a sentence for each field that stops it.
 *
 * Errors: no product, no store, no price or a price of 0, a day in the future or more than two years ago, a last day before the day it was seen.
 */
export function readSighting(draft: SightingDraft, currency: string, today: CivilDate): SightingReading {
  const faults: SightingReading['faults'] = {}
  const price = readMoney(draft.price, currency, 'Price', 1)
  const regular = readMoney(draft.regular, currency, 'Regular price', 1)
  if (!draft.product) faults.product = 'Choose the product first.'
  if (draft.storeId === '') faults.store = 'Choose the store you stand in.'
  if (price.fault !== null) faults.price = price.fault
  else if (price.value === null) faults.price = 'Write the price on the tag.'
  if (regular.fault !== null) faults.regular = regular.fault
  else if (isAboveItsTag({ condition: draft.condition, priceMinor: price.value ?? 0, printedRegularMinor: regular.value }))
    faults.regular = ABOVE_ITS_TAG
  const last = lastDayFault(draft)
  if (last) faults.lastDay = last
  if (!isCivilDate(draft.seenOn)) faults.seenOn = 'This is not a day. Write the day you saw it.'
  else if (draft.seenOn > today) faults.seenOn = `This day is in the future. Today is ${sayDate(today, yearOf(today))}.`
  else if (daysBetween(draft.seenOn, today) > OLDEST_SIGHTING_DAYS) faults.seenOn = 'This is more than two years ago. Check the year.'
  const complete = Object.keys(faults).length === 0 && draft.product !== null && price.value !== null
  return {
    body: complete ? bodyOf(draft, draft.product?.id ?? '', price.value ?? 0, regular.value) : null,
    priceMinor: price.value,
    regularMinor: regular.value,
    faults,
  }
}

const bodyOf = (
  draft: SightingDraft,
  productId: string,
  priceMinor: number,
  printedRegularMinor: number | null,
): Omit<SightingBody, 'id'> => ({
  productId,
  storeId: draft.storeId,
  condition: draft.condition,
  priceMinor,
  printedRegularMinor,
  seenOn: draft.seenOn,
  lastDay: mayEnd(draft.condition) && draft.lastDay !== '' ? draft.lastDay : null,
  evidence: draft.evidence,
  note: draft.note.trim() === '' ? null : draft.note.trim(),
})

/** A store's first word or two, as people call it: what a button has room for. @example shortName('Saltcote Pet & Pond') // 'Saltcote' */
export function shortName(name: string): string {
  const words = name.split(/\s+/)
  const first = words[0] ?? name
  return name.length <= 16 ? name : first.length < 4 || /^(the|old|new|le|la)$/i.test(first) ? words.slice(0, 2).join(' ') : first
}

/** What the one filled button says: with its figure as soon as there is one. */
export function postWords(reading: SightingReading, store: Pick<Store, 'name'> | undefined, currency: string, home: string): string {
  if (reading.priceMinor === null) return 'Post the price'
  const said = sayMoney(reading.priceMinor, currency, { home })
  return store ? `Post ${said} at ${shortName(store.name)}` : `Post ${said}`
}
