import type { Sighting } from './sighting.ts'

/** Prior Beta(2, 1): a newcomer counts two thirds, above a coin and below anyone with a record. */
const PRIOR_CONFIRMED = 2
const PRIOR_DISPUTED = 1

/**
 * Trust of a reporter: mean of Beta(2 + confirmed, 1 + disputed), between 0 and 1. It settles ties and how far a price may be off before it waits, and nothing else.
 *
 * Units: counts of sightings. Check value: 9/11 for 7 confirmed and 1 disputed.
 *
 * @example trust(7, 1) // 0.8181818181818182
 */
export const trust = (confirmed: number, disputed: number): number =>
  (PRIOR_CONFIRMED + confirmed) / (PRIOR_CONFIRMED + confirmed + PRIOR_DISPUTED + disputed)

/** Weight of a reporter, looked up by id. */
export type TrustOf = (reporterId: string) => number

/** Everyone counts alike: what holds where no snapshot of trust is at hand. */
export const newcomerTrust: TrustOf = () => trust(0, 0)

/** What others said of a reporter's sightings: how many of these were confirmed, how many disputed. */
export interface ReporterVotes {
  confirmed: number
  disputed: number
}

/** Trust of each reporter whose sightings others voted on; anybody else is a newcomer. @example trustFrom({ ada: { confirmed: 7, disputed: 1 } })('ada') // 0.818… */
export const trustFrom =
  (votes: Readonly<Record<string, ReporterVotes>>): TrustOf =>
  (reporterId) => {
    const own = Object.hasOwn(votes, reporterId) ? votes[reporterId] : undefined
    return trust(own?.confirmed ?? 0, own?.disputed ?? 0)
  }

/**
 * Trust by reporter from the sightings at hand. A sighting counts once however many votes it has, so that one popular price does not make
 * a reputation; withdrawn ones count as nothing.
 */
export function trustByReporter(
  sightings: ReadonlyArray<Pick<Sighting, 'reporterId' | 'confirmations' | 'disputes' | 'withdrawn'>>,
): TrustOf {
  const counts = new Map<string, ReporterVotes>()
  for (const { reporterId, confirmations, disputes, withdrawn } of sightings) {
    if (withdrawn || confirmations + disputes === 0) continue
    const count = counts.get(reporterId) ?? { confirmed: 0, disputed: 0 }
    if (disputes >= confirmations) count.disputed += 1
    else count.confirmed += 1
    counts.set(reporterId, count)
  }
  return trustFrom(Object.fromEntries(counts))
}
