import { listDuePushPeople, noteOutcome, takeDueNotices, type DueNotice } from '../../db/notice-deliveries.ts'
import { forgetSubscription, listSubscriptions, noteReached, type Subscription } from '../../db/push-devices.ts'
import { loggable } from '../http/log.ts'
import { sendPush, type PushNews } from '../push/push-message.ts'
import { vapidKeyOf, type VapidKey } from '../push/vapid-key.ts'
import { stillNews, toldOf, WATCHES_PATH, type Round } from './postman.ts'

const MOST_PEOPLE = 40
/** Side by side, so that one push service that hangs for its fifteen seconds holds up few. */
const AT_ONCE = 5
const MINUTE_MS = 60_000
const LONGEST_WAIT_MS = 60 * MINUTE_MS
/** Named on a screen that several deals share. */
const MOST_NAMED = 3

/** Sends everyone with devices what is new, as one message each. */
export async function sendPushes(round: Round): Promise<void> {
  if (!round.origin.startsWith('https:')) return
  const people = await listDuePushPeople(round.db, round.now, MOST_PEOPLE)
  const key = vapidKeyOf(round.linkKey)
  for (let first = 0; first < people.length && !round.stopping(); first += AT_ONCE)
    await Promise.all(people.slice(first, first + AT_ONCE).map((personId) => sendTo(round, key, personId)))
}

/** One deal is told with its store; of several, the first few. */
function newsOf(round: Round, notices: readonly DueNotice[]): PushNews {
  const told = notices.map((notice) => ({ ...toldOf(round, notice), id: notice.id }))
  const [first] = told
  if (told.length === 1 && first) return { title: first.what, body: first.where, path: first.path, tag: first.id }
  const body = told.slice(0, MOST_NAMED).map(({ what }) => what).join('\n') // prettier-ignore
  return { title: `${told.length} deals on what you watch`, body, path: WATCHES_PATH, tag: first?.id ?? 'deals' }
}

/** Waits a minute, two, four … up to an hour; longer where every service that failed asks for longer, up to six. */
function nextTry(nowMs: number, tries: number, waits: ReadonlyArray<string | null>): Date {
  const own = Math.min(LONGEST_WAIT_MS, MINUTE_MS * 2 ** (tries - 1))
  const asked = Math.min(6 * LONGEST_WAIT_MS, ...waits.map((text) => waitOf(text, nowMs)))
  return new Date(nowMs + Math.max(own, asked))
}

/** RFC 9110, 10.2.3: seconds, or a day and time. */
function waitOf(retryAfter: string | null, nowMs: number): number {
  if (retryAfter === null) return 0
  if (/^\d{1,9}$/.test(retryAfter)) return Number(retryAfter) * 1_000
  const at = Date.parse(retryAfter)
  return Number.isNaN(at) ? 0 : at - nowMs
}

async function sendTo(round: Round, key: VapidKey, personId: string): Promise<void> {
  const { db, now } = round
  const subscriptions = await listSubscriptions(db, personId)
  const notices = await stillNews(round, await takeDueNotices(db, personId, 'push', now), 'push')
  if (notices.length === 0) return
  const ids = notices.map(({ id }) => id)
  const news = newsOf(round, notices)
  const ends = await Promise.all(subscriptions.map((one) => sendToDevice(round, key, one, news)))
  // One that is reached is enough: trying again for another would tell the first one twice.
  if (ends.some(({ end }) => end === 'reached')) return noteOutcome(db, ids, 'push', { state: 'sent' })
  const failed = ends.filter(({ end }) => end === 'failed')
  if (failed.length === 0) return noteOutcome(db, ids, 'push', { state: 'given_up', reason: 'no device is left' })
  const tries = Math.max(...notices.map((notice) => notice.tries))
  const nextTryAt = nextTry(now.getTime(), tries, failed.map(({ retryAfter }) => retryAfter)) // prettier-ignore
  return noteOutcome(db, ids, 'push', { state: 'failed', reason: failed[0]?.reason ?? 'not reached', nextTryAt })
}

interface End {
  end: 'reached' | 'gone' | 'failed'
  retryAfter: string | null
  reason: string
}

/** RFC 8030, 7.3 and 8.1: 404 and 410 end a subscription; whatever else is no success may pass. */
async function sendToDevice(round: Round, key: VapidKey, to: Subscription, news: PushNews): Promise<End> {
  const { db, now, origin, reach } = round
  const sent = await sendPush(to, news, { key, subject: origin, nowMs: round.clock() }, reach).catch((error: unknown) => {
    const { name, code } = loggable(error)
    round.log.warn({ err: { name, code } }, 'a push service was not reached')
    return { status: 0, retryAfter: null, name }
  })
  if (sent.status === 404 || sent.status === 410) {
    await forgetSubscription(db, to)
    return { end: 'gone', retryAfter: null, reason: '' }
  }
  const reached = sent.status >= 200 && sent.status < 300
  await noteReached(db, to, reached, now)
  const reason = 'name' in sent ? `the push service was not reached (${sent.name})` : `the push service answered ${sent.status}`
  return { end: reached ? 'reached' : 'failed', retryAfter: sent.retryAfter, reason }
}
