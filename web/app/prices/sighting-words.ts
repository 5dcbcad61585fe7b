import { sayDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { Problem } from '../client/problem.ts'
import type { BoardRow, SightingRow } from '../../../core/pricing/record.ts'
import { isAccepted, type Condition, type Sighting } from '../../../core/pricing/sighting.ts'

export const CONDITION_WORDS: Record<Condition, string> = { shelf: 'shelf', sale: 'sale', clearance: 'clearance', used: 'used' }
export const EVIDENCE_WORDS: Record<Sighting['evidence'], string> = {
  none: 'none',
  tag: 'price tag',
  receipt: 'receipt',
  page: 'page address',
}

/** Prices below their shelf price carry the dip. */
export const isSale = (condition: Condition): boolean => condition === 'sale' || condition === 'clearance'

/**
 * What stands behind a sighting: how many members, or why it does not count.
 *
 * @example sayState({ withdrawn: false, doubt: null, confirmations: 2, disputes: 0 }) // 'confirmed by 2'
 */
export function sayState(
  sighting: Pick<Sighting, 'withdrawn' | 'doubt' | 'confirmations' | 'disputes' | 'imported'> &
    Partial<Pick<SightingRow, 'withdrawnReason'>>,
): string {
  if (sighting.withdrawn) return sighting.withdrawnReason ? `withdrawn by a manager: ${sighting.withdrawnReason}` : 'withdrawn'
  const { confirmations, disputes } = sighting
  if (disputes > 0 && disputes >= confirmations) return `disputed by ${disputes}, not counted`
  if (!isAccepted(sighting)) return 'waits for a second member'
  if (disputes > 0) return `confirmed by ${confirmations}, disputed by ${disputes}`
  return confirmations > 0 ? `confirmed by ${confirmations}` : sighting.imported ? 'a list' : 'one report'
}

/**
 * Who is behind a price: members who saw it, or a list and those who confirmed it.
 *
 * @example sayBehind(3, true) // 'a list, confirmed by 3 members'
 */
export function sayBehind(members: number, isList: boolean): string {
  if (members === 0) return 'a list'
  if (!isList) return members === 1 ? 'one report' : `${members} members`
  return `a list, confirmed by ${members === 1 ? 'one member' : `${members} members`}`
}

/**
 * How sure the price of a row of the board is: who is behind it, as its product's page says; of one that is disputed, what was said of it. A vote that
 * was given a moment ago counts already.
 */
export function sayRow({ sighting, members }: { sighting: Parameters<typeof sayState>[0]; members?: number | undefined }): string {
  if (members === undefined || sighting.disputes > 0 || !isAccepted(sighting)) return sayState(sighting)
  const { confirmations, imported = false } = sighting
  const behind = Math.max(members, confirmations + (imported ? 0 : 1))
  return sayBehind(behind, imported && behind === confirmations)
}

/**
 * Why one has no vote on a sighting; null where one has.
 *
 * @example noVoteWords({ …, reporterId: 'me' }, 'me') // 'yours'
 */
export function noVoteWords(
  { withdrawn, reporterId, tie, mayVote }: Pick<SightingRow, 'withdrawn' | 'reporterId' | 'tie' | 'mayVote'>,
  personId: string,
): string | null {
  if (withdrawn) return 'withdrawn'
  if (reporterId === personId) return 'yours'
  if (tie) return TIE_WORDS[tie]
  return mayVote ? null : 'not yours to judge'
}

/** Who said so is told to whoever may know. @example goneWords('2026-11-25', 2026) // 'found gone 25 Nov' */
export const goneWords = (goneOn: string, thisYear: number, by: readonly string[] = []): string =>
  `found gone ${sayDate(goneOn, thisYear)}${by.length > 0 ? ` by ${by.join(', ')}` : ''}`

const TIE_WORDS: Record<NonNullable<SightingRow['tie']>, string> = {
  invited_you: 'no vote: who posted it invited you',
  invited_by_you: 'no vote: you invited who posted it',
}

/**
 * Why a word on a sighting was not taken. A vote is never kept for later: without a signal it has to be said again.
 *
 * @example notTakenWords({ status: 409, title: 'Someone was faster', detail: 'It is withdrawn.' }) // 'Your word was not taken. It is withdrawn.'
 */
export const notTakenWords = ({ status, title, detail }: Pick<Problem, 'status' | 'title' | 'detail'>): string =>
  status === 0
    ? 'Not taken: no signal. Your word is not kept; say it again when the signal is back.'
    : `Your word was not taken. ${detail ?? title}`

/**
 * How a board row stands against the regular price at its store. Nothing where it is that price: most are, and a board of repeated words hides the rest.
 *
 * @example sayStanding({ …, regularMinor: 18999, underRegular: 0.2 }, 'USD', 2026) // '20 % under $189.99'
 */
export function sayStanding(
  row: Pick<BoardRow, 'regularMinor' | 'underRegular' | 'over'> & { sighting: Pick<Sighting, 'condition' | 'lastDay' | 'goneOn'> },
  currency: string,
  thisYear: number,
  home = currency,
): string {
  const gone = row.over && row.sighting.goneOn ? goneWords(row.sighting.goneOn, thisYear) : null
  if (row.sighting.condition === 'used') return `used, ${gone ?? 'enters no total'}`
  if (gone !== null) return gone
  if (row.over) return row.sighting.lastDay ? `over since ${sayDate(row.sighting.lastDay, thisYear)}` : 'taken to be over'
  if (row.regularMinor === null || row.underRegular === null) return 'regular price not known'
  const percent = Math.round(Math.abs(row.underRegular) * 100)
  if (percent === 0) return ''
  return `${percent} % ${row.underRegular > 0 ? 'under' : 'over'} ${sayMoney(row.regularMinor, currency, { home })}`
}
