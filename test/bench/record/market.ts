import { createHash } from 'node:crypto'

/** What a region's record is made of: its goods, its places, its people. */
export const PRODUCTS = 20_000
export const STORES = 400
export const MEMBERS = 2_000
/** Stores that carry one product. */
const CARRIED_BY = 8
/** Flattens who is popular: the first product has a two-hundredth of all sightings, the first hundred a fifth. */
const FLATNESS = 30
/** The day on which the record ends, at noon UTC. */
export const LAST_NOON_MS = Date.UTC(2026, 10, 26, 12)
const DAY_MS = 86_400_000

/** A sighting as COPY takes it, and who voted on it. */
export interface Line {
  id: string
  productIndex: number
  storeIndex: number
  condition: 'shelf' | 'sale' | 'used'
  priceMinor: number
  printedRegularMinor: number | null
  seenOn: string
  lastDay: string | null
  reporterIndex: number
  receivedAtMs: number
  doubted: boolean
  withdrawn: boolean
  confirmations: number
  disputes: number
}

/** An id that says its number: the same in every record. */
export const idOf = (head: string, index: number): string => `${head}-0000-4000-8000-${index.toString(16).padStart(12, '0')}`

/** Chance that is the same for the same words: 32 bits of SHA-256 would cost a minute a million, so numbers are mixed instead. */
function chance(a: number, b: number, c: number): number {
  let mixed = Math.imul(a ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(b + 0x7f4a7c15, 0xc2b2ae35) ^ Math.imul(c + 0x165667b1, 0x27d4eb2f)
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d)
  mixed = Math.imul(mixed ^ (mixed >>> 12), 0x297a2d39)
  return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32
}

const bulk = Math.log((PRODUCTS + FLATNESS) / FLATNESS)
const popular = (share: number): number => Math.min(PRODUCTS - 1, Math.floor(FLATNESS * (Math.exp(share * bulk) - 1)))

/** A shelf price that moves about twice a year, and a sale of ten days in three of ten windows of sixty. */
function priceOf(product: number, store: number, day: number): { regular: number; depth: number; saleDaysLeft: number } {
  const level = Math.floor((day + chance(product, store, 1) * 180) / 180)
  const regular = Math.round(
    (1_000 + product * 3) * (0.9 + 0.2 * chance(product, store, 2)) * (1 + 0.05 * (chance(product, store, 100 + level) - 0.4)),
  )
  const into = (day + Math.floor(chance(product, store, 3) * 60)) % 60
  const window = Math.floor((day + Math.floor(chance(product, store, 3) * 60)) / 60)
  const onSale = into < 10 && chance(product, store, 500 + window) < 0.3
  return { regular, depth: onSale ? 0.1 + 0.05 * Math.floor(4 * chance(product, store, 900 + window)) : 0, saleDaysLeft: 9 - into }
}

function phoneId(atMs: number, index: number): string {
  const hex = createHash('md5').update(String(index)).digest('hex')
  const time = atMs.toString(16).padStart(12, '0')
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hex.slice(0, 3)}-8${hex.slice(3, 6)}-${hex.slice(6, 18)}`
}

const dayOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10)

/** One of `total` sightings over so many days, oldest first: what stood on the tag, now and then late, doubted, withdrawn, voted on, or used goods. */
export function lineAt(index: number, total: number, days: number): Line {
  const receivedAtMs = LAST_NOON_MS - DAY_MS * days + Math.floor(((index + 1) / total) * days * DAY_MS)
  const late = chance(index, 11, total) < 0.05 ? 1 + Math.floor(20 * chance(index, 12, total)) : 0
  const seenMs = receivedAtMs - late * DAY_MS
  const productIndex = popular(chance(index, 13, total))
  const storeIndex = (productIndex * 7 + Math.floor(CARRIED_BY * chance(index, 14, total)) * 53) % STORES
  const { regular, depth, saleDaysLeft } = priceOf(productIndex, storeIndex, Math.floor(seenMs / DAY_MS))
  const used = chance(index, 15, total) < 0.02
  const vote = chance(index, 16, total)
  return {
    id: phoneId(receivedAtMs, index),
    productIndex,
    storeIndex,
    condition: used ? 'used' : depth > 0 ? 'sale' : 'shelf',
    priceMinor: Math.round(regular * (used ? 0.5 : 1 - depth)),
    printedRegularMinor: depth > 0 && !used && chance(index, 17, total) < 0.5 ? regular : null,
    seenOn: dayOf(seenMs),
    lastDay: depth > 0 && !used && chance(index, 18, total) < 0.4 ? dayOf(seenMs + saleDaysLeft * DAY_MS) : null,
    reporterIndex: Math.floor(MEMBERS * chance(index, 19, total) ** 2),
    receivedAtMs,
    doubted: chance(index, 20, total) < 0.01,
    withdrawn: chance(index, 21, total) < 0.02,
    confirmations: vote < 0.12 ? 1 : vote < 0.15 ? 2 : 0,
    disputes: vote > 0.99 ? 1 : 0,
  }
}
