import type { Transaction } from 'kysely'
import { civilDateAt } from '../../core/dates.ts'
import type { SightingRow } from '../../core/pricing/record.ts'
import type { Notice, NoticeAnswer } from '../../core/pricing/watches/notice.ts'
import { ok, refuse, type Result } from '../../core/result.ts'
import type { Database } from '../../db/database.ts'
import { answerNotice, clearAnswer, findNotice, lastSaidThere, othersSayGone, votedBeforeGone } from '../../db/notices.ts'
import { findSighting } from '../../db/sightings.ts'
import { takeBackVote, voteOnSighting } from '../../db/sighting-votes.ts'
import { findStore } from '../../db/stores.ts'
import type { Viewer } from '../../db/viewer.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import type { SaidRefusal } from '../http/refusal.ts'
import { takeSighting } from '../sightings/post.ts'
import { transact } from '../transact.ts'

/** What an answer did to the record, so that the screen can say it. */
export type Done = 'posted' | 'confirmed' | 'disputed' | 'kept'

/**
 * Keeps what somebody found at the store, and tells it to the record by the rules that hold there. "Still there" confirms a report of today that is
 * somebody else's, and else posts the price as seen today. "Gone" disputes a report that is taken to hold still; where that is one's own, or of
 * somebody who is no second person, the answer is kept and the record stays as it is.
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
  const before = answer === 'gone' ? await votedBefore(c, notice) : null
  const told = answer === 'gone' ? await sayGone(c, notice) : await sayStillThere(c, notice, sightingId)
  if (!told.ok) return told
  const answered = await answerNotice(db, viewer, id, answer, new Date(c.get('deps').clock()), before)
  return answered ? ok({ notice: answered, done: told.value }) : refuse(NO_NOTICE)
}

/**
 * Takes "gone" back, with the dispute that it brought: pressed by mistake, it would leave a good price out. What one had voted
 * before is one's vote again. The dispute stays while another notice of one's own says that the same report is gone. "Still there" stays, since what it posted is
 * withdrawn where sightings are.
 */
export async function takeBackGone(c: Ctx, id: string): Promise<Result<Notice, SaidRefusal>> {
  const [db, viewer] = [c.get('db'), signedIn(c)]
  const notice = await findNotice(db, viewer, id)
  if (!notice) return refuse(NO_NOTICE)
  if (notice.answer !== 'gone' || notice.answeredAt === null) return ok(notice)
  const behind = await sightingBehind(c, notice)
  // What counts is the day on which it was pressed: only then could it dispute, and what it brought goes with it on any later day.
  const wasOver = notice.until !== null && notice.until < (await dayAt(c, notice.storeId, Date.parse(notice.answeredAt)))
  return transact(db, async (trx): Promise<Result<Notice, SaidRefusal>> => {
    const stays = behind?.myVote !== 'dispute' || wasOver || (await othersSayGone(trx, viewer, notice))
    if (!stays) await voteAsBefore(trx, viewer, behind.id)
    const cleared = await clearAnswer(trx, viewer, id)
    return cleared ? ok(cleared) : refuse(NO_NOTICE)
  })
}

async function votedBefore(c: Ctx, notice: Notice): Promise<'confirm' | 'dispute' | null> {
  if (notice.sightingId === null) return null
  const earlier = await votedBeforeGone(c.get('db'), signedIn(c), notice.sightingId)
  return earlier === undefined ? ((await sightingBehind(c, notice))?.myVote ?? null) : earlier
}

async function voteAsBefore(trx: Transaction<Database>, viewer: Viewer, sightingId: string): Promise<void> {
  const before = await votedBeforeGone(trx, viewer, sightingId)
  if (before) await voteOnSighting(trx, viewer, sightingId, before)
  else await takeBackVote(trx, viewer, sightingId)
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
  if (notice.sightingId === null) return ok('kept')
  if (await isPosted(c, notice, id)) return ok('posted')
  const today = await todayAt(c, notice.storeId)
  if (await isAnsweredOn(c, notice, today)) return ok('kept')
  const behind = await sightingBehind(c, notice)
  if (behind && behind.seenOn === today && !behind.withdrawn) {
    if (behind.reporterId === signedIn(c).id) return ok('kept')
    if (behind.mayVote) return vote(c, behind.id, 'confirm')
  }
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
  return taken.ok ? ok('posted') : taken
}

/** Whether this answer was taken before, its own answer lost: the day may be another one by now, and what was posted stays as it was. */
async function isPosted(c: Ctx, { productId, storeId }: Notice, id: string): Promise<boolean> {
  const stored = await findSighting(c.get('db'), signedIn(c), id)
  return stored?.reporterId === signedIn(c).id && stored.productId === productId && stored.storeId === storeId
}

/** Said once a day is enough, to whichever notice of the price: pressing again would post one's own word beside one's own word. */
async function isAnsweredOn(c: Ctx, notice: Notice, today: string): Promise<boolean> {
  const at = await lastSaidThere(c.get('db'), signedIn(c), notice)
  return at !== null && (await dayAt(c, notice.storeId, at.getTime())) === today
}

/** A last day belongs to a sale or a clearance: a shelf tag with its "was" price is told as it was. */
const mayEnd = (condition: Notice['condition']): boolean => condition === 'sale' || condition === 'clearance'

async function sayGone(c: Ctx, notice: Notice): Promise<Result<Done, SaidRefusal>> {
  const behind = await sightingBehind(c, notice)
  const isOver = notice.until !== null && notice.until < (await todayAt(c, notice.storeId))
  return behind?.mayVote === true && !isOver ? vote(c, behind.id, 'dispute') : ok('kept')
}

async function vote(c: Ctx, id: string, kind: 'confirm' | 'dispute'): Promise<Result<Done, SaidRefusal>> {
  const voted = await transact(c.get('db'), (trx) => voteOnSighting(trx, signedIn(c), id, kind))
  return voted.ok ? ok(kind === 'confirm' ? 'confirmed' : 'disputed') : refuse(voted.refusal)
}
