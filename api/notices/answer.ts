import { civilDateAt } from '../../core/dates.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { SightingRow } from '../../core/pricing/record.ts'
import { isAccepted } from '../../core/pricing/sighting.ts'
import type { Done, Notice, NoticeAnswer } from '../../core/pricing/watches/notice.ts'
import { ok, refuse, type Result } from '../../core/result.ts'
import { answerNotice, clearAnswer, findNotice, othersSayGone } from '../../db/notices.ts'
import { seenPricesOfPairs } from '../../db/seen-prices.ts'
import { idSaidThere, markGone, unmarkGone } from '../../db/sighting-gone.ts'
import { voteOnSighting } from '../../db/sighting-votes.ts'
import { findSighting } from '../../db/sightings.ts'
import { findStore } from '../../db/stores.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import type { SaidRefusal } from '../http/refusal.ts'
import { takeSighting } from '../sightings/post.ts'
import { transact } from '../transact.ts'

/**
 * Keeps what somebody found at the store, and tells it to the record. "Still there" confirms a report of today that is somebody else's, and else posts the
 * price as seen today. "Gone" is an observation like a sighting and no judgment of the report: it counts whoever reported it, one's own too, where the price is
 * today's in the record.
 */
export async function answerOwn(
  c: Ctx,
  id: string,
  answer: NoticeAnswer,
  sightingId: string,
): Promise<Result<{ notice: Notice; done: Done }, SaidRefusal>> {
  const [db, viewer] = [c.get('db'), signedIn(c)]
  const notice = await findNotice(db, viewer, id)
  if (!notice) return refuse(NO_NOTICE)
  const told = answer === 'gone' ? await sayGone(c, notice) : await sayStillThere(c, notice, sightingId)
  if (!told.ok) return told
  const answered = await answerNotice(db, viewer, id, answer, new Date(c.get('deps').clock()))
  return answered ? ok({ notice: answered, done: told.value }) : refuse(NO_NOTICE)
}

/**
 * Takes "gone" back: pressed by mistake, it would leave a good price out. It stays said while another notice of one's own says that the same price is gone.
 * "Still there" stays, since what it posted is withdrawn where sightings are.
 */
export async function takeBackGone(c: Ctx, id: string): Promise<Result<Notice, SaidRefusal>> {
  const [db, viewer] = [c.get('db'), signedIn(c)]
  const notice = await findNotice(db, viewer, id)
  if (!notice) return refuse(NO_NOTICE)
  if (notice.answer !== 'gone' || notice.answeredAt === null) return ok(notice)
  // Whatever day it is by now: what was said on the day on which it was pressed goes with it.
  const until = await dayAt(c, notice.storeId, Date.parse(notice.answeredAt))
  return transact(db, async (trx): Promise<Result<Notice, SaidRefusal>> => {
    if (!(await othersSayGone(trx, viewer, notice))) await unmarkGone(trx, viewer, notice, { since: notice.seenOn, until })
    const cleared = await clearAnswer(trx, viewer, id)
    return cleared ? ok(cleared) : refuse(NO_NOTICE)
  })
}

const NO_NOTICE: SaidRefusal = { code: 'not_found', message: 'There is no such notice.' }

const sightingBehind = async (c: Ctx, { sightingId }: Notice): Promise<SightingRow | undefined> =>
  sightingId === null ? undefined : findSighting(c.get('db'), signedIn(c), sightingId)

/** The store's day at an instant. */
async function dayAt(c: Ctx, storeId: string, ms: number): Promise<string> {
  const store = await findStore(c.get('db'), storeId)
  return civilDateAt(ms, store?.timeZone ?? 'UTC')
}

const todayAt = (c: Ctx, storeId: string): Promise<string> => dayAt(c, storeId, c.get('deps').clock())

/** A price of the own list is the store's to say: an answer to it is kept, and posts nothing. */
async function sayStillThere(c: Ctx, notice: Notice, id: string): Promise<Result<Done, SaidRefusal>> {
  if (notice.sightingId === null) return ok('listed')
  // A later answer takes the place of an earlier one.
  if (notice.answer === 'gone') await takeBackGone(c, notice.id)
  if (await isPosted(c, notice, id)) return ok('posted')
  const today = await todayAt(c, notice.storeId)
  const behind = await sightingBehind(c, notice)
  if (behind && behind.seenOn === today && !behind.withdrawn && !behind.goneOn) {
    if (behind.reporterId === signedIn(c).id) return ok('said')
    if (behind.mayVote) return confirm(c, behind.id)
  }
  // Two presses at one moment, of two notices or on two devices, are one word: both post it under the id that came first.
  const first = await idSaidThere(c.get('db'), signedIn(c), notice, today, id)
  return first !== id && (await isPosted(c, notice, first)) ? ok('said') : postAgain(c, notice, behind, first, today)
}

/** The price as seen today, as its tag was told. */
async function postAgain(
  c: Ctx,
  notice: Notice,
  behind: SightingRow | undefined,
  id: string,
  today: string,
): Promise<Result<Done, SaidRefusal>> {
  const { productId, storeId, condition, priceMinor, until, lastDayStated } = notice
  const lastDay = lastDayStated && until !== null && until >= today ? until : null
  const printedRegularMinor = condition === 'used' ? null : (behind?.printedRegularMinor ?? null)
  const fields = {
    id,
    productId,
    storeId,
    condition: behind?.condition ?? condition,
    priceMinor,
    printedRegularMinor,
    seenOn: today,
    lastDay,
  }
  const taken = await takeSighting(c, { ...fields, lastDay: mayEnd(fields.condition) ? lastDay : null, evidence: 'none', note: null })
  if (taken.ok) return ok(taken.value.repeated ? 'said' : 'posted')
  // What came first under this id may tell another last day, of another notice.
  return taken.refusal.code === 'id_taken' && (await isPosted(c, notice, id)) ? ok('said') : taken
}

/** Whether this answer was taken before, its own answer lost: the day may be another one by now, and what was posted stays as it was. */
async function isPosted(c: Ctx, { productId, storeId }: Notice, id: string): Promise<boolean> {
  const stored = await findSighting(c.get('db'), signedIn(c), id)
  return stored?.reporterId === signedIn(c).id && stored.productId === productId && stored.storeId === storeId
}

/** A last day belongs to a sale or a clearance: a shelf tag with its "was" price is told as it was. */
const mayEnd = (condition: Notice['condition']): boolean => condition === 'sale' || condition === 'clearance'

/**
 * What was told of as a sale is over from that day on, and the regular price returns; without one, or where the regular price itself is gone, nothing is known of
 * today. What is no longer today's price is not changed by its being gone.
 */
async function sayGone(c: Ctx, notice: Notice): Promise<Result<Done, SaidRefusal>> {
  if (notice.sightingId === null) return ok('listed')
  const [today, behind] = [await todayAt(c, notice.storeId), await sightingBehind(c, notice)]
  if (notice.condition === 'used') return behind && isAccepted(behind) ? mark(c, [behind.id], today, 'sold') : ok('passed')
  const now = await priceNow(c, notice, today)
  const stands = now !== undefined && now.priceMinor === notice.priceMinor && now.condition === notice.condition
  // Sent once more, its own answer lost: what it did stands.
  const isRepeat = notice.answer === 'gone' && behind?.goneOn != null
  if (!stands && !isRepeat) return ok('passed')
  if (stands) await mark(c, [notice.sightingId, ...now.sightingIds], today, 'emptied')
  return ok((await priceNow(c, notice, today)) === undefined ? 'emptied' : 'ended')
}

async function mark(c: Ctx, sightingIds: readonly string[], today: string, done: Done): Promise<Result<Done, SaidRefusal>> {
  return transact(c.get('db'), async (trx): Promise<Result<Done, SaidRefusal>> => {
    await markGone(trx, signedIn(c), sightingIds, today)
    return ok(done)
  })
}

async function priceNow(c: Ctx, { productId, storeId }: Notice, today: string): Promise<PriceView['today']> {
  const [view] = await seenPricesOfPairs(c.get('db'), [{ productId, storeId }], today)
  return view?.today
}

async function confirm(c: Ctx, id: string): Promise<Result<Done, SaidRefusal>> {
  const voted = await transact(c.get('db'), (trx) => voteOnSighting(trx, signedIn(c), id, 'confirm'))
  return voted.ok ? ok('confirmed') : refuse(voted.refusal)
}
