import { addDays, type CivilDate } from '../dates.ts'
import { dayPrices, type DayPrice } from './day-price.ts'
import { effectiveCondition } from './effective-condition.ts'
import { foundGone } from './gone.ts'
import { shelfDays } from './regular-price.ts'
import { isAccepted, type SeenPrice, type Sighting } from './sighting.ts'
import { newcomerTrust, type TrustOf } from './trust.ts'

/** Days after the day it was seen for which an undated price is taken to hold (design rule 2). */
export const SALE_DAYS = 7
export const CLEARANCE_DAYS = 5

/** What a spell is made of: a price that was seen, and the last day that its tag may have told. */
export type DatedPrice = SeenPrice & Pick<Sighting, 'lastDay'>

/** One run of a sale or clearance price at one store. Ten reports of one weekend are one spell. */
export interface SaleSpell<Seen extends DatedPrice = Sighting> {
  condition: 'sale' | 'clearance'
  priceMinor: number
  startedOn: CivilDate
  lastSeenOn: CivilDate
  /** Last day, inclusive: as printed, else by the rule; earlier where a later shelf price or another sale ended it. */
  endsOn: CivilDate
  /** True when the last day was printed and nothing cut it short. */
  lastDayStated: boolean
  /** First day on which it was found gone; null where it was not, or was seen again. */
  goneOn: CivilDate | null
  sightings: Seen[]
}

const isSale = (sighting: DatedPrice): boolean => ['sale', 'clearance'].includes(effectiveCondition(sighting))

/**
 * The sale spells of one product at one store up to a day, oldest first.
 *
 * A report at the same price, no later than the day after the spell's last day, lengthens it. A shelf price of a later day ends it; a shelf
 * price of the same day does not, since a tag and its sale sticker are often reported side by side. Another sale price ends it and begins a new one.
 */
export function saleSpells<Seen extends DatedPrice>(
  sightings: readonly Seen[],
  asOf: CivilDate,
  trustOf: TrustOf = newcomerTrust,
): Array<SaleSpell<Seen>> {
  const sales = sightings.filter((sighting) => sighting.seenOn <= asOf && isAccepted(sighting) && isSale(sighting))
  const shelf = shelfDays(sightings, asOf, trustOf).map(({ seenOn }) => seenOn)
  const spells: Array<SaleSpell<Seen>> = []
  for (const day of dayPrices(sales, trustOf, ({ priceMinor }) => priceMinor)) {
    const running = spells.at(-1)
    const shelfBetween = running && shelf.some((seenOn) => seenOn > running.lastSeenOn && seenOn < day.seenOn)
    const goesOn = running && !shelfBetween && running.priceMinor === day.priceMinor && day.seenOn <= addDays(running.endsOn, 1)
    if (goesOn) spells[spells.length - 1] = spellOf([...running.sightings, ...day.sightings], day, running.startedOn)
    else spells.push(spellOf(day.sightings, day, day.seenOn))
  }
  return spells.map((spell, index) =>
    cutShort(
      spell,
      [...shelf, spells[index + 1]?.startedOn].filter((seenOn) => seenOn !== undefined && seenOn > spell.lastSeenOn),
    ),
  )
}

function spellOf<Seen extends DatedPrice>(sightings: Seen[], newest: DayPrice<Seen>, startedOn: CivilDate): SaleSpell<Seen> {
  const condition = newest.sightings.some((sighting) => effectiveCondition(sighting) === 'sale') ? 'sale' : 'clearance'
  const stated = statedLastDay(sightings, newest)
  const byRule = addDays(newest.seenOn, condition === 'sale' ? SALE_DAYS : CLEARANCE_DAYS)
  return {
    condition,
    priceMinor: newest.priceMinor,
    startedOn,
    lastSeenOn: newest.seenOn,
    endsOn: stated ?? byRule,
    lastDayStated: stated !== null,
    goneOn: foundGone(sightings),
    sightings,
  }
}

/** What the newest report that printed a last day says; the earlier one where two of a day differ. One that is past when the price was seen again is void. */
function statedLastDay(sightings: readonly DatedPrice[], newest: Pick<DayPrice, 'priceMinor' | 'seenOn'>): CivilDate | null {
  const stated = sightings
    .filter((sighting) => sighting.priceMinor === newest.priceMinor && sighting.lastDay !== null && sighting.lastDay >= newest.seenOn)
    .map(({ seenOn, lastDay }) => ({ seenOn, lastDay: lastDay as CivilDate }))
    .sort((a, b) => (a.seenOn === b.seenOn ? a.lastDay.localeCompare(b.lastDay) : b.seenOn.localeCompare(a.seenOn)))
  return stated[0]?.lastDay ?? null
}

function cutShort<Seen extends DatedPrice>(spell: SaleSpell<Seen>, enders: Array<CivilDate | undefined>): SaleSpell<Seen> {
  const first = enders.filter((seenOn) => seenOn !== undefined).sort()[0]
  if (first === undefined || first > spell.endsOn) return spell
  return { ...spell, endsOn: addDays(first, -1), lastDayStated: false }
}
