import type { Kind } from '../catalog/kinds.ts'
import { addDays, type CivilDate } from '../dates.ts'
import type { PriceView } from './price-view.ts'
import type { BoardRow, SightingRow } from './record.ts'
import { CLEARANCE_DAYS, SALE_DAYS } from './sale-spells.ts'
import { effectiveCondition } from './effective-condition.ts'
import { isGone } from './gone.ts'
import { isAccepted } from './sighting.ts'
import { membersBehind } from './today.ts'

/** Rows of the board are counted up to here: nobody pages through more, and counting all of a region's would take longer than showing them. */
export const BOARD_COUNTED = 1_000

/** Newest first: by the day it was seen, then by when it was taken, then by id, so that the order is the same everywhere. */
export const newestFirst = (a: SightingRow, b: SightingRow): number =>
  b.seenOn.localeCompare(a.seenOn) || b.receivedAt.localeCompare(a.receivedAt) || (a.id < b.id ? 1 : -1)

/**
 * The board: the newest accepted sighting of each product and store, newest first, and how it stands.
 *
 * `views` are the price views of the same day; `kindOf` gives a product's kind.
 */
export function boardRows(
  sightings: readonly SightingRow[],
  views: readonly PriceView[],
  kindOf: (productId: string) => Kind,
  asOf: CivilDate,
): BoardRow[] {
  const viewByPair = new Map(views.map((view) => [`${view.productId} ${view.storeId}`, view]))
  const newest = new Map<string, SightingRow>()
  for (const sighting of sightings.filter((row) => isAccepted(row) && row.seenOn <= asOf).toSorted(newestFirst)) {
    const pair = `${sighting.productId} ${sighting.storeId}`
    if (!newest.has(pair)) newest.set(pair, sighting)
  }
  return [...newest].map(([pair, sighting]) => boardRow(sighting, kindOf(sighting.productId), viewByPair.get(pair), asOf))
}

/** One row. Used goods are not held against the price of new ones. */
export function boardRow(sighting: SightingRow, kind: Kind, view: PriceView | undefined, asOf: CivilDate): BoardRow {
  const regularMinor = view?.regular?.priceMinor ?? null
  const underRegular = regularMinor === null || sighting.condition === 'used' ? null : 1 - sighting.priceMinor / regularMinor
  return {
    sighting,
    kind,
    regularMinor,
    underRegular,
    members: membersOf(sighting, view),
    over: isGone(sighting.goneOn, asOf) || isOver(sighting, asOf),
  }
}

/** As the product's page has it where this is the price of today there; else those of the sighting itself. */
function membersOf(sighting: SightingRow, view: PriceView | undefined): number {
  const today = view?.today
  return today?.sightingIds.includes(sighting.id) && today.priceMinor === sighting.priceMinor ? today.reporters : membersBehind([sighting])
}

function isOver(sighting: SightingRow, asOf: CivilDate): boolean {
  const condition = effectiveCondition(sighting)
  if (condition !== 'sale' && condition !== 'clearance') return false
  return (sighting.lastDay ?? addDays(sighting.seenOn, condition === 'sale' ? SALE_DAYS : CLEARANCE_DAYS)) < asOf
}
