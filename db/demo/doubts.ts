import { addDays, type CivilDate } from '../../core/dates.ts'
import { doubtOf } from '../../core/pricing/doubt.ts'
import type { Sighting } from '../../core/pricing/sighting.ts'
import { CATALOG } from './catalog.ts'
import { CLUB, PEOPLE, type DemoPerson } from './club.ts'
import type { Seeded } from './seeded.ts'

export interface DemoVote {
  sightingId: string
  personId: string
  vote: 'confirm' | 'dispute'
  at: string
}

/** Shares of the sightings that a second member confirms, disputes, or that are taken back, own. */
const CONFIRMED = 0.12
const DISPUTED = 0.008
const WITHDRAWN = 0.004
const DOUBT_CONFIRMED = 0.9
/** Two tags of the last weeks were typed with the decimal in the wrong place; the older one has been disputed since. */
const SLIPS = [
  { name: 'Pellick C-1000', daysAgo: 6, factor: 0.1, disputed: false },
  { name: 'Wendlemere 20 long', daysAgo: 33, factor: 10, disputed: true },
] as const

/** Holds every sighting against the record before it by the club's own rule, and lets other members vote. Oldest first in and out. */
export function doubtAndVotes(sightings: Sighting[], to: CivilDate, random: Seeded): { sightings: Sighting[]; votes: DemoVote[] } {
  const votes: DemoVote[] = []
  const records = new Map<string, Sighting[]>()
  const slips = slipsIn(sightings, to)
  for (const sighting of sightings) {
    const slip = slips.get(sighting.id)
    if (slip) sighting.priceMinor = Math.round(sighting.priceMinor * slip.factor)
    const record = records.get(sighting.productId) ?? []
    sighting.doubt = doubtOf(sighting, record, { currency: CLUB.currency, othersThatDay: [] })
    const vote = slip ? (slip.disputed ? 'dispute' : null) : voteOn(sighting, random)
    if (vote !== null) votes.push(cast(sighting, vote, to, random))
    if (!slip && vote === null) sighting.withdrawn = random.chance(WITHDRAWN)
    record.push(sighting)
    records.set(sighting.productId, record)
  }
  return { sightings, votes }
}

function voteOn(sighting: Sighting, random: Seeded): DemoVote['vote'] | null {
  // What was doubted was true here, but for the slips: a second member says so, or it still waits.
  if (sighting.doubt) return random.chance(DOUBT_CONFIRMED) ? 'confirm' : null
  if (random.chance(DISPUTED)) return 'dispute'
  return random.chance(CONFIRMED) ? 'confirm' : null
}

/** A day later at most, and never after the last day. The manager invited all others, so that nobody votes with or about the manager. */
function cast(sighting: Sighting, vote: DemoVote['vote'], to: CivilDate, random: Seeded): DemoVote {
  const manager = PEOPLE[0]
  const apart = (person: DemoPerson): boolean => person.id !== sighting.reporterId && person.id !== manager?.id
  if (sighting.reporterId === manager?.id) sighting.reporterId = random.pick(PEOPLE.slice(1)).id
  const voter = random.pick(PEOPLE.filter(apart))
  const day = sighting.seenOn < to && random.chance(0.5) ? addDays(sighting.seenOn, 1) : sighting.seenOn
  if (vote === 'confirm') sighting.confirmations += 1
  else sighting.disputes += 1
  return { sightingId: sighting.id, personId: voter.id, vote, at: `${day}T23:15:00.000Z` }
}

function slipsIn(sightings: Sighting[], to: CivilDate): Map<string, (typeof SLIPS)[number]> {
  const found = new Map<string, (typeof SLIPS)[number]>()
  for (const slip of SLIPS) {
    const product = CATALOG.find((one) => one.product.name === slip.name)?.product
    const before = addDays(to, -slip.daysAgo)
    const shelf = sightings.filter((one) => one.productId === product?.id && one.condition === 'shelf' && one.seenOn <= before)
    const last = shelf.findLast((one, index) => repeatsEarlier(one, shelf.slice(0, index)))
    if (last) found.set(last.id, slip)
  }
  return found
}

/** Half a year is as far back as a regular price is known. */
const KNOWN_DAYS = 180

/** True where the last shelf price that was seen there, not long before, was the same: a slip of this one is plain to see. */
function repeatsEarlier(one: Sighting, earlier: Sighting[]): boolean {
  const there = earlier.findLast((before) => before.storeId === one.storeId && before.seenOn < one.seenOn)
  return there?.priceMinor === one.priceMinor && there.seenOn > addDays(one.seenOn, -KNOWN_DAYS)
}
