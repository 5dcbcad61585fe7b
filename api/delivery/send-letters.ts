import { noteLetterTaken, noteOutcome, takeDueNotices, takeLetterTurns } from '../../db/notice-deliveries.ts'
import { digestLetter } from '../../web/pages/digest-letter.ts'
import { saidByServer } from '../mail/said-by-server.ts'
import { stopUrlOf } from '../mail/stop-link.ts'
import { stillNews, toldOf, WATCHES_PATH, type Round } from './postman.ts'

/** Somebody who watches twenty things reads one mail and not twenty. */
const EVERY_MS = 3_600_000
/** Of a round; the others have theirs half a minute later. */
const MOST_PEOPLE = 20
/** A mail of a hundred deals is read by nobody; the rest is told by number. */
const MOST_LISTED = 30

/** Writes to everyone whose hour has come: one letter with all that is new. */
export async function sendLetters(round: Round): Promise<void> {
  if (round.sendLetter === null) return
  const turns = await takeLetterTurns(round.db, { now: round.now, everyMs: EVERY_MS, most: MOST_PEOPLE })
  for (const turn of turns) if (!round.stopping()) await sendOne(round, turn)
}

async function sendOne(
  round: Round,
  { personId, address, confirmedAt }: { personId: string; address: string; confirmedAt: Date },
): Promise<void> {
  const { db, now, origin, place, sendLetter, linkKey } = round
  const notices = await stillNews(round, await takeDueNotices(db, personId, 'email', now), 'email')
  if (notices.length === 0 || sendLetter === null) return
  const ids = notices.map(({ id }) => id)
  const stopUrl = stopUrlOf(origin, linkKey, { personId, address, confirmedAt })
  const deals = notices.slice(0, MOST_LISTED).map((notice) => {
    const { what, where, path } = toldOf(round, notice)
    return { what, where, url: origin + path, listed: notice.listed }
  })
  const letter = digestLetter({ place, deals, more: notices.length - deals.length, watchesUrl: origin + WATCHES_PATH, stopUrl })
  try {
    await sendLetter({ ...letter, place, to: address, stopUrl })
  } catch (error) {
    const said = saidByServer(error)
    round.log.warn({ said }, 'a mail was not taken')
    const reason = `the mail server did not take it (${said})`
    await noteOutcome(db, ids, 'email', { state: 'failed', reason, nextTryAt: new Date(now.getTime() + EVERY_MS) })
    return noteLetterTaken(db, personId, false, now)
  }
  await noteOutcome(db, ids, 'email', { state: 'sent' })
  await noteLetterTaken(db, personId, true, now)
}
