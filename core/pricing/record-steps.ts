import { addDays, type CivilDate } from '../dates.ts'
import { COUNTED_DAYS } from './age.ts'
import { effectiveCondition } from './effective-condition.ts'
import { productGone } from './gone.ts'
import { regularPrice, shelfDays } from './regular-price.ts'
import { saleSpells } from './sale-spells.ts'
import { isAccepted, type Condition, type Sighting } from './sighting.ts'
import { newcomerTrust, type TrustOf } from './trust.ts'

/** A shelf price and the days it stood, both inclusive. */
export interface RecordStep {
  from: CivilDate
  until: CivilDate
  priceMinor: number
}
/** A dip: a sale, its days, and its depth against the regular price then. */
export interface RecordDip extends RecordStep {
  condition: 'sale' | 'clearance'
  /** Null where no regular price was known then. */
  regularMinor: number | null
  /** 1 − price ÷ regular; null likewise. */
  depth: number | null
}
/** A marker: one sighting. */
export interface RecordPoint {
  sightingId: string
  seenOn: CivilDate
  priceMinor: number
  condition: Condition
  /** False for one that waits, is disputed or withdrawn: it is drawn apart or not at all. */
  accepted: boolean
}

/** The price record of one product at one store, ready to be drawn. */
export interface RecordSteps {
  storeId: string
  steps: RecordStep[]
  dips: RecordDip[]
  points: RecordPoint[]
}

/**
 * Steps, dips and markers of one product, by store id. A shelf price stands until the next one, and no longer than the 180 days for which
 * it counts, nor than it was found to be there; a gap after that is a gap in the drawing.
 *
 * Units: minor units as each store prints them. The last `until` is never later than `asOf`.
 */
export function recordSteps(sightings: readonly Sighting[], asOf: CivilDate, trustOf: TrustOf = newcomerTrust): RecordSteps[] {
  const seen = sightings.filter((sighting) => sighting.seenOn <= asOf && !sighting.withdrawn)
  return [...Map.groupBy(seen, ({ storeId }) => storeId)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([storeId, ofStore]) => ({
      storeId,
      steps: shelfSteps(ofStore, asOf, trustOf),
      dips: dipsOf(ofStore, asOf, trustOf),
      points: ofStore.map(pointOf).sort((a, b) => a.seenOn.localeCompare(b.seenOn) || (a.sightingId < b.sightingId ? -1 : 1)),
    }))
}

function shelfSteps(ofStore: readonly Sighting[], asOf: CivilDate, trustOf: TrustOf): RecordStep[] {
  const days = shelfDays(ofStore, asOf, trustOf)
  const gone = productGone(ofStore, asOf)
  const steps: RecordStep[] = []
  days.forEach(({ seenOn, priceMinor }, index) => {
    const next = days[index + 1]?.seenOn
    const counted = addDays(seenOn, COUNTED_DAYS)
    const found = next === undefined && gone !== null && gone > seenOn ? [addDays(gone, -1)] : []
    const until = [counted, asOf, ...found, ...(next ? [addDays(next, -1)] : [])].sort()[0] as CivilDate
    const last = steps.at(-1)
    if (last && last.priceMinor === priceMinor && addDays(last.until, 1) === seenOn) last.until = until
    else steps.push({ from: seenOn, until, priceMinor })
  })
  return steps
}

function dipsOf(ofStore: readonly Sighting[], asOf: CivilDate, trustOf: TrustOf): RecordDip[] {
  return saleSpells(ofStore, asOf, trustOf).map(({ condition, priceMinor, startedOn, endsOn, lastSeenOn, goneOn }) => {
    const regularMinor = regularPrice(ofStore, lastSeenOn, trustOf)?.priceMinor ?? null
    const found = goneOn !== null && goneOn > lastSeenOn ? [addDays(goneOn, -1)] : goneOn === null ? [] : [lastSeenOn]
    const until = [endsOn, asOf, ...found].sort()[0] as CivilDate
    return {
      from: startedOn,
      until,
      priceMinor,
      condition,
      regularMinor,
      depth: regularMinor === null ? null : 1 - priceMinor / regularMinor,
    }
  })
}

const pointOf = (sighting: Sighting): RecordPoint => ({
  sightingId: sighting.id,
  seenOn: sighting.seenOn,
  priceMinor: sighting.priceMinor,
  condition: effectiveCondition(sighting),
  accepted: isAccepted(sighting),
})
