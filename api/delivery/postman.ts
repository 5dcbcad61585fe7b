import type { Kysely } from 'kysely'
import type { Logger } from 'pino'
import { sayDeal } from '../../core/pricing/watches/say-deal.ts'
import { yearOf, type CivilDate } from '../../core/dates.ts'
import type { Database } from '../../db/database.ts'
import { noteOutcome, type Channel, type DueNotice } from '../../db/notice-deliveries.ts'
import type { Reach } from '../outside/guarded-request.ts'
import type { SendLetter } from '../mail/transport.ts'

/** What carries notices out of the house. */
export interface Postman {
  db: Kysely<Database>
  clock: () => number
  log: Logger
  linkKey: Uint8Array
  /** Of this site, as readers open it; null: there is no address that a link may point to, and nothing goes out. */
  origin: string | null
  sendLetter: SendLetter | null
  /** A test's own resolver and port. */
  reach?: Reach
  /** True from the moment the service was asked to stop: what is not begun is left for the next start. */
  stopping: () => boolean
}

/** One round: where, when, and by whose calendar. */
export interface Round extends Postman {
  origin: string
  place: string
  today: CivilDate
  now: Date
}

/** What a reader is shown of a deal, and where it leads. */
export const toldOf = (round: Round, notice: DueNotice): { what: string; where: string; path: string } => ({
  ...sayDeal(notice, yearOf(round.today)),
  path: `/prices/${notice.productId}`,
})
export const WATCHES_PATH = '/watches'

/** Those of which there is still something to tell; the others are noted as told otherwise. */
export async function stillNews(round: Round, notices: DueNotice[], channel: Channel): Promise<DueNotice[]> {
  const moot = notices.filter(({ settled, lastDay }) => settled || (lastDay !== null && lastDay < round.today))
  await noteOutcome(
    round.db,
    moot.map(({ id }) => id),
    channel,
    { state: 'given_up', reason: 'seen already, or over' },
  )
  return notices.filter((notice) => !moot.includes(notice))
}
