import { sql, type Kysely } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { ToldOfDeal } from '../core/pricing/watches/say-deal.ts'
import type { Database } from './database.ts'

export type Channel = 'email' | 'push'

/** A notice that is to go out now, and whether there still is anything to tell. */
export interface DueNotice extends ToldOfDeal {
  id: string
  productId: string
  /** How often it was tried, this time included. */
  tries: number
  /** Looked at in the application, or found gone. */
  settled: boolean
  dealUntil: CivilDate
}

/** A deal of the day before yesterday is no news: what was not handed over by then never is. */
const NEWS_MS = 86_400_000
/** Longer than the slowest try; what has no outcome by then was cut off. */
const LEASE_MS = 10 * 60_000
const CUT_OFF = 'cut off'
const CUT_OFF_TWICE = 'cut off twice'

const ago = (now: Date, ms: number): Date => new Date(now.getTime() - ms)

/** Puts down what is to go out: each notice of the last day to whoever had an address confirmed, or a device, by then and has not looked at it. */
export async function planDeliveries(db: Kysely<Database>, channels: readonly Channel[], now: Date): Promise<void> {
  const fresh = sql`notice.told_at > ${ago(now, NEWS_MS)} and notice.seen_at is null and person.disabled_at is null`
  if (channels.includes('email'))
    await sql`insert into notice_delivery (notice_id, channel, next_try_at)
      select notice.id, 'email', ${now}::timestamptz from person_mail
      join person on person.id = person_mail.person_id join notice on notice.person_id = person_mail.person_id
      where ${fresh} and notice.told_at >= person_mail.confirmed_at on conflict do nothing`.execute(db)
  if (channels.includes('push'))
    await sql`insert into notice_delivery (notice_id, channel, next_try_at)
      select distinct notice.id, 'push', ${now}::timestamptz from push_device
      join person on person.id = push_device.person_id join notice on notice.person_id = push_device.person_id
      where ${fresh} and notice.told_at >= push_device.created_at on conflict do nothing`.execute(db)
}

/** Ends what is no news any more, what was cut off twice, and what belongs to somebody who was disabled. */
export async function giveUpOld(db: Kysely<Database>, now: Date): Promise<void> {
  await sql`update notice_delivery set state = 'given_up', reason = coalesce(reason, 'never tried')
    from notice join person on person.id = notice.person_id
    where notice.id = notice_delivery.notice_id and notice_delivery.state in ('waiting', 'failed') and notice_delivery.next_try_at <= ${now}
      and (notice.told_at <= ${ago(now, NEWS_MS)} or notice_delivery.reason = ${CUT_OFF_TWICE} or person.disabled_at is not null)`.execute(
    db,
  )
}

/** The due part of what goes out over one way, for `sql`. */
const due = (channel: Channel, now: Date) =>
  sql`notice_delivery.channel = ${channel} and notice_delivery.state in ('waiting', 'failed') and notice_delivery.next_try_at <= ${now}
    and notice_delivery.reason is distinct from ${CUT_OFF_TWICE}`

/**
 * Whose letter may go now: something is due, and the last went an hour ago or more; who never had one comes first, then who had none the longest. Taking the turn uses the hour up, whatever comes of it, so that
 * a mail server that refuses is asked once an hour and two services side by side write one letter.
 */
export async function takeLetterTurns(
  db: Kysely<Database>,
  { now, everyMs, most }: { now: Date; everyMs: number; most: number },
): Promise<Array<{ personId: string; address: string; confirmedAt: Date }>> {
  const mayHave = sql`confirmed_at is not null and (last_letter_at is null or last_letter_at <= ${ago(now, everyMs)})`
  const { rows } = await sql<{ person_id: string; address: string; confirmed_at: Date }>`
    update person_mail set last_letter_at = ${now} where person_id in (
      select person_mail.person_id from person_mail join person on person.id = person_mail.person_id
      where ${mayHave} and person.disabled_at is null
        and exists (select from notice_delivery join notice on notice.id = notice_delivery.notice_id
          where notice.person_id = person_mail.person_id and ${due('email', now)})
      order by last_letter_at nulls first, person_mail.person_id limit ${most})
      and ${mayHave}
    returning person_id, address, confirmed_at`.execute(db)
  return rows.map(({ person_id, address, confirmed_at }) => ({ personId: person_id, address, confirmedAt: new Date(confirmed_at) }))
}

/** Whose devices are due. */
export async function listDuePushPeople(db: Kysely<Database>, now: Date, most: number): Promise<string[]> {
  const { rows } = await sql<{ person_id: string }>`
    select distinct notice.person_id from notice_delivery
    join notice on notice.id = notice_delivery.notice_id join person on person.id = notice.person_id
    where person.disabled_at is null and ${due('push', now)} limit ${most}`.execute(db)
  return rows.map(({ person_id }) => person_id)
}

interface TakenRow {
  id: string
  product_id: string
  product_name: string
  store_name: string
  condition: DueNotice['condition']
  total_minor: number
  total_currency: string
  listed: boolean
  seen_on: CivilDate
  deal_until: CivilDate
  last_day_stated: boolean
  settled: boolean
  tries: number
}

/**
 * Takes what is due for a person over one way, newest first. Noted as cut off until its outcome is: a service that dies between handing over and
 * noting tries once more, so that somebody may be told twice, and then leaves it.
 */
export async function takeDueNotices(db: Kysely<Database>, personId: string, channel: Channel, now: Date): Promise<DueNotice[]> {
  const { rows } = await sql<TakenRow>`
    with taken as (
      update notice_delivery set tries = tries + 1, state = 'failed', next_try_at = ${new Date(now.getTime() + LEASE_MS)},
        reason = case when reason = ${CUT_OFF} then ${CUT_OFF_TWICE}::text else ${CUT_OFF}::text end
      from notice where notice.id = notice_delivery.notice_id and notice.person_id = ${personId} and ${due(channel, now)}
      returning notice_delivery.notice_id, notice_delivery.tries)
    select notice.id, notice.product_id, product.name as product_name, store.name as store_name, notice.condition, notice.total_minor,
      notice.total_currency, notice.sighting_id is null as listed, notice.seen_on, notice.deal_until, notice.last_day_stated, taken.tries,
      notice.seen_at is not null or notice.answer = 'gone' as settled
    from taken join notice on notice.id = taken.notice_id join product on product.id = notice.product_id join store on store.id = notice.store_id
    order by notice.told_at desc, notice.id`.execute(db)
  return rows.map((row) => ({
    id: row.id,
    productId: row.product_id,
    productName: row.product_name,
    storeName: row.store_name,
    condition: row.condition,
    totalMinor: row.total_minor,
    totalCurrency: row.total_currency,
    listed: row.listed,
    seenOn: row.seen_on,
    lastDay: row.last_day_stated ? row.deal_until : null,
    dealUntil: row.deal_until,
    settled: row.settled,
    tries: row.tries,
  }))
}

export type Outcome = { state: 'sent' } | { state: 'failed'; reason: string; nextTryAt: Date } | { state: 'given_up'; reason: string }

/** Notes what came of it. */
export async function noteOutcome(db: Kysely<Database>, ids: readonly string[], channel: Channel, outcome: Outcome): Promise<void> {
  if (ids.length === 0) return
  const reason = outcome.state === 'sent' ? null : outcome.reason.slice(0, 300)
  await db
    .updateTable('notice_delivery')
    .set({ state: outcome.state, reason, ...(outcome.state === 'failed' ? { next_try_at: outcome.nextTryAt } : {}) })
    .where('notice_id', 'in', ids)
    .where('channel', '=', channel)
    .execute()
}

/** Notes whether a letter was taken; the first time that one was not stays. */
export async function noteLetterTaken(db: Kysely<Database>, personId: string, taken: boolean, now: Date): Promise<void> {
  await db
    .updateTable('person_mail')
    .set({ failing_since: taken ? null : sql<Date>`coalesce(failing_since, ${now}::timestamptz)` })
    .where('person_id', '=', personId)
    .execute()
}
