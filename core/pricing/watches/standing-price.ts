import { addDays, type CivilDate } from '../../dates.ts'
import { CURRENT_DAYS } from '../age.ts'
import { priceViewOf } from '../price-views.ts'
import { shelfDays } from '../regular-price.ts'
import { CLEARANCE_DAYS, saleSpells, type SaleSpell } from '../sale-spells.ts'
import { isAccepted, type Condition, type Sighting } from '../sighting.ts'
import { newcomerTrust, type TrustOf } from '../trust.ts'

/** A price that stands at one store on a day. Minor units as that store prints them. */
export interface StandingPrice {
  condition: Condition
  priceMinor: number
  /** The newest of the sightings behind it; null where it is of the store's own list. */
  sightingId: string | null
  seenOn: CivilDate
  /** Days over which prices of this sort stood without a break that anybody saw; of a regular price the day it was seen. */
  from: CivilDate
  until: CivilDate
  lastDayStated: boolean
  /** Regular prices that were seen there, oldest first: what ends a sale, and what a regular price was before. */
  shelf: Array<{ seenOn: CivilDate; priceMinor: number }>
}

/**
 * What one product costs at one store on a day, as the tiers have it, and the cheapest used one there. At most one price of new goods and one of
 * used ones; none that is older than 60 days, since nobody is sent to a store for it. Doubted, disputed, withdrawn sightings and those found gone are behind none.
 *
 * Sightings must be of one product and store; their order does not matter. A used one is taken to be there for five days, as a clearance is.
 */
export function standingPrices(sightings: readonly Sighting[], asOf: CivilDate, trustOf: TrustOf = newcomerTrust): StandingPrice[] {
  const shelf = shelfDays(sightings, asOf, trustOf).map(({ seenOn, priceMinor }) => ({ seenOn, priceMinor }))
  return [newPrice(sightings, asOf, trustOf), usedPrice(sightings, asOf)].flatMap((price) => (price ? [{ ...price, shelf }] : []))
}

type Price = Omit<StandingPrice, 'shelf'>

function newPrice(sightings: readonly Sighting[], asOf: CivilDate, trustOf: TrustOf): Price | undefined {
  const today = priceViewOf(sightings, asOf, trustOf)?.today
  if (!today || today.age !== 'current') return undefined
  const { priceMinor, condition, seenOn, holdsUntil, lastDayStated, sightingIds } = today
  const isSale = condition !== 'shelf'
  return {
    condition,
    priceMinor,
    sightingId: newestOf(sightings.filter(({ id }) => sightingIds.includes(id))),
    seenOn,
    from: isSale ? startOfRun(saleSpells(sightings, asOf, trustOf)) : seenOn,
    until: isSale && holdsUntil !== null ? holdsUntil : addDays(seenOn, CURRENT_DAYS),
    lastDayStated,
  }
}

/** Where one sale price follows another without a day between, it is one sale. */
function startOfRun(spells: readonly SaleSpell[]): CivilDate {
  let from = spells.at(-1)?.startedOn ?? ''
  for (const spell of spells.toReversed().slice(1)) {
    if (addDays(spell.endsOn, 1) < from) break
    from = spell.startedOn
  }
  return from
}

function usedPrice(sightings: readonly Sighting[], asOf: CivilDate): Price | undefined {
  const used = sightings
    .filter((one) => one.condition === 'used' && one.seenOn <= asOf && isAccepted(one) && !one.goneOn)
    .toSorted((a, b) => b.seenOn.localeCompare(a.seenOn) || a.priceMinor - b.priceMinor || a.id.localeCompare(b.id))
  const [cheapest] = used
  if (!cheapest || addDays(cheapest.seenOn, CLEARANCE_DAYS) < asOf) return undefined
  let from = cheapest.seenOn
  for (const { seenOn } of used) {
    if (addDays(seenOn, CLEARANCE_DAYS + 1) < from) break
    from = seenOn
  }
  const { priceMinor, id, seenOn } = cheapest
  return { condition: 'used', priceMinor, sightingId: id, seenOn, from, until: addDays(seenOn, CLEARANCE_DAYS), lastDayStated: false }
}

function newestOf(behind: readonly Sighting[]): string {
  const [newest] = behind.toSorted((a, b) => b.seenOn.localeCompare(a.seenOn) || b.id.localeCompare(a.id))
  return newest?.id ?? ''
}
