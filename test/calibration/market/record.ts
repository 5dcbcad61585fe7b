import { addDays, type CivilDate } from '../../../core/dates.ts'
import { doubtOf } from '../../../core/pricing/doubt.ts'
import { isAccepted, type Sighting } from '../../../core/pricing/sighting.ts'
import { trust, type ReporterVotes } from '../../../core/pricing/trust.ts'
import type { Random } from '../random.ts'
import type { MarketTruth } from './parameters.ts'
import type { Report } from './reports.ts'

/** How others vote: on what is held back, and on the rest. A member who looks again confirms what is right and disputes what is not. */
const VOTES_ON_DOUBTED = 0.45
const VOTES_ON_OTHERS = 0.12
const DISPUTES_OF_WRONG = 0.25
type Votes = Pick<Sighting, 'confirmations' | 'disputes'>
/** A day more than a year is looked at. */
const DOUBT_DAYS = 366

/** A UUIDv7 made of its day and its place in the record. */
function idOf(day: CivilDate, index: number): string {
  const ms = Date.parse(`${day}T12:00:00Z`).toString(16).padStart(12, '0')
  const tail = index.toString(16).padStart(12, '0')
  return `${ms.slice(0, 8)}-${ms.slice(8)}-7000-8000-${tail}`
}

/** What others said of each member, as the last night's snapshot has it. */
function nightlyTrust(): { of: (member: number, day: number) => number; count: (member: number, votes: Votes) => void } {
  const soFar = new Map<number, ReporterVotes>()
  let [night, known] = [Number.NEGATIVE_INFINITY, new Map<number, ReporterVotes>()]
  return {
    of: (member, day) => {
      if (day > night) [night, known] = [day, new Map(soFar)]
      const { confirmed, disputed } = known.get(member) ?? { confirmed: 0, disputed: 0 }
      return trust(confirmed, disputed)
    },
    count: (member, { confirmations, disputes }) => {
      if (confirmations + disputes === 0) return
      const { confirmed, disputed } = soFar.get(member) ?? { confirmed: 0, disputed: 0 }
      const right = disputes < confirmations
      soFar.set(member, { confirmed: confirmed + (right ? 1 : 0), disputed: disputed + (right ? 0 : 1) })
    },
  }
}

/**
 * The record as the service would keep it: each report goes through the rule of doubt with what was there before it, oldest first, and is
 * confirmed or disputed by others as they come by.
 */
export function recordOf(truth: MarketTruth, reports: readonly Report[], dateOf: (day: number) => CivilDate, random: Random): Sighting[] {
  const ofProduct: Sighting[][] = truth.products.map(() => [])
  const sightings: Sighting[] = []
  const members = nightlyTrust()
  const today = new Map<string, Array<{ product: number; name: string; priceMinor: number }>>()
  reports.forEach((report, index) => {
    const seenOn = dateOf(report.day)
    const candidate = {
      productId: truth.products[report.product]?.id as string,
      storeId: truth.storeIds[report.store] as string,
      condition: report.condition,
      priceMinor: report.priceMinor,
      printedRegularMinor: report.printedRegularMinor,
      seenOn,
    }
    const place = `${seenOn}/${candidate.storeId}`
    const others = (today.get(place) ?? []).filter(({ product }) => product !== report.product)
    const before = withinYear(ofProduct[report.product] as Sighting[], seenOn)
    const doubt = doubtOf(candidate, before, { currency: 'USD', othersThatDay: others, trust: members.of(report.reporter, report.day) })
    const votes = votesOn(report, doubt !== null, random)
    members.count(report.reporter, votes)
    const sighting: Sighting = {
      ...candidate,
      id: idOf(seenOn, index),
      lastDay: report.lastDay === null ? null : dateOf(report.lastDay),
      evidence: 'none',
      note: null,
      reporterId: `member-${report.reporter}`,
      receivedAt: `${seenOn}T12:00:00.000Z`,
      doubt,
      withdrawn: false,
      ...votes,
    }
    before.push(sighting)
    sightings.push(sighting)
    if (isAccepted(sighting))
      today.set(place, [...(today.get(place) ?? []), { product: report.product, name: candidate.productId, priceMinor: report.priceMinor }])
  })
  return sightings
}

/** Drops what is older than the year that the rule of doubt looks at: it would only be passed over, thousands of times. */
function withinYear(sightings: Sighting[], day: CivilDate): Sighting[] {
  const since = addDays(day, -DOUBT_DAYS)
  const old = sightings.findIndex(({ seenOn }) => seenOn >= since)
  sightings.splice(0, old < 0 ? sightings.length : old)
  return sightings
}

function votesOn({ right }: Report, doubted: boolean, random: Random): Votes {
  const voted = random()
  if (right) return { confirmations: voted < (doubted ? VOTES_ON_DOUBTED : VOTES_ON_OTHERS) ? 1 : 0, disputes: 0 }
  return { confirmations: 0, disputes: voted < DISPUTES_OF_WRONG ? 1 : 0 }
}
