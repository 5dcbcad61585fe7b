import type { Kysely, Transaction } from 'kysely'
import { civilDateAt } from '../../core/dates.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { SightingRow } from '../../core/pricing/record.ts'
import { isAccepted } from '../../core/pricing/sighting.ts'
import type { Done, Notice, NoticeAnswer } from '../../core/pricing/watches/notice.ts'
import { ok, refuse, type Result } from '../../core/result.ts'
import type { Database } from '../../db/database.ts'
import { mayFindGone } from '../../db/gone-limit.ts'
import { answerNotice, clearAnswer, findNotice } from '../../db/notices.ts'
import { seenPricesOfPairs } from '../../db/seen-prices.ts'
import { idSaidThere, joinGone, markGone, unmarkGone } from '../../db/sighting-gone.ts'
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
export async function answerOwn(c: Ctx, id: string, answer: NoticeAnswer, sightingId: string): Promise<Answered> {
  const [db, viewer] = [c.get('db'), signedIn(c)]
  // Mark and answer are one: a mark whose answer was not kept could not be taken back.
  if (answer === 'gone') return transact(db, (trx) => answerGone(c, trx, id))
  const notice = await findNotice(db, viewer, id)
  if (!notice) return refuse(NO_NOTICE)
  // Sent once more, its own answer lost: what it posted stands.
  if (notice.withdrawn && !(await isPosted(c, notice, sightingId))) return refuse(WITHDRAWN)
  const told = await sayStillThere(c, notice, sightingId)
  return told.ok ? keepAnswer(c, db, id, answer, told.value) : told
}

type Answered = Result<{ notice: Notice; done: Done }, SaidRefusal>

async function keepAnswer(c: Ctx, db: Kysely<Database>, id: string, answer: NoticeAnswer, done: Done): Promise<Answered> {
  const answered = await answerNotice(db, signedIn(c), id, answer, new Date(c.get('deps').clock()))
  return answered ? ok({ notice: answered, done }) : refuse(NO_NOTICE)
}

async function answerGone(c: Ctx, trx: Transaction<Database>, id: string): Promise<Answered> {
  const notice = await findNotice(trx, signedIn(c), id)
  if (!notice) return refuse(NO_NOTICE)
  if (notice.withdrawn) return refuse(WITHDRAWN)
  if (notice.sightingId !== null && notice.answer !== 'gone') {
    const may = await mayFindGone(trx, signedIn(c), new Date(c.get('deps').clock()))
    if (!may.ok) return may
  }
  return keepAnswer(c, trx, id, 'gone', await sayGone(c, trx, notice))
}

/**
 * Takes "gone" back: pressed by mistake, it would leave a good price out. What another notice of one's own says to be gone too stays said.
 * "Still there" stays, since what it posted is withdrawn where sightings are.
 */
export async function takeBackGone(c: Ctx, id: string): Promise<Result<Notice, SaidRefusal>> {
  const viewer = signedIn(c)
  return transact(c.get('db'), async (trx): Promise<Result<Notice, SaidRefusal>> => {
    const notice = await findNotice(trx, viewer, id)
    if (!notice) return refuse(NO_NOTICE)
    if (notice.answer !== 'gone') return ok(notice)
    await unmarkGone(trx, viewer, id)
    const cleared = await clearAnswer(trx, viewer, id)
    return cleared ? ok(cleared) : refuse(NO_NOTICE)
  })
}

const NO_NOTICE: SaidRefusal = { code: 'not_found', message: 'There is no such notice.' }

const WITHDRAWN: SaidRefusal = {
  code: 'withdrawn',
  message: 'The report behind this notice was withdrawn since you were told. If you see the price at the store, post it as a new one.',
}

const sightingBehind = async (c: Ctx, db: Kysely<Database>, { sightingId }: Notice): Promise<SightingRow | undefined> =>
  sightingId === null ? undefined : findSighting(db, signedIn(c), sightingId)

/** The store's day now. */
async function todayAt(c: Ctx, db: Kysely<Database>, storeId: string): Promise<string> {
  const store = await findStore(db, storeId)
  return civilDateAt(c.get('deps').clock(), store?.timeZone ?? 'UTC')
}

/** A price of the own list is the store's to say: an answer to it is kept, and posts nothing. */
async function sayStillThere(c: Ctx, notice: Notice, id: string): Promise<Result<Done, SaidRefusal>> {
  if (notice.sightingId === null) return ok('listed')
  // A later answer takes the place of an earlier one.
  if (notice.answer === 'gone') await takeBackGone(c, notice.id)
  if (await isPosted(c, notice, id)) return ok('posted')
  const db = c.get('db')
  const [today, behind] = [await todayAt(c, db, notice.storeId), await sightingBehind(c, db, notice)]
  if (behind && behind.seenOn === today && !behind.withdrawn && !behind.goneOn) {
    if (behind.reporterId === signedIn(c).id) return ok('said')
    if (behind.mayVote) return confirm(c, behind.id)
  }
  // Two presses at one moment, of two notices or on two devices, are one word: both post it under the id that came first.
  const first = await idSaidThere(db, signedIn(c), notice, today, id)
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
async function sayGone(c: Ctx, trx: Transaction<Database>, notice: Notice): Promise<Done> {
  if (notice.sightingId === null) return 'listed'
  const [viewer, today, behind] = [signedIn(c), await todayAt(c, trx, notice.storeId), await sightingBehind(c, trx, notice)]
  if (notice.condition === 'used') {
    if (!behind || !isAccepted(behind)) return 'passed'
    await markGone(trx, viewer, notice.id, [behind.id], today)
    return 'sold'
  }
  const now = await priceNow(trx, notice, today)
  const stands = now !== undefined && now.priceMinor === notice.priceMinor && now.condition === notice.condition
  if (stands) await markGone(trx, viewer, notice.id, [notice.sightingId, ...now.sightingIds], today)
  // Said before, of this notice or of another of the same price: what it did stands.
  else if (!(await joinGone(trx, viewer, notice.id, notice.sightingId))) return 'passed'
  return (await priceNow(trx, notice, today)) === undefined ? 'emptied' : 'ended'
}

async function priceNow(trx: Transaction<Database>, { productId, storeId }: Notice, today: string): Promise<PriceView['today']> {
  const [view] = await seenPricesOfPairs(trx, [{ productId, storeId }], today)
  return view?.today
}

async function confirm(c: Ctx, id: string): Promise<Result<Done, SaidRefusal>> {
  const voted = await transact(c.get('db'), (trx) => voteOnSighting(trx, signedIn(c), id, 'confirm'))
  return voted.ok ? ok('confirmed') : refuse(voted.refusal)
}
