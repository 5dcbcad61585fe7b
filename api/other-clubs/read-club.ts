import type { Kysely } from 'kysely'
import { civilDateAt, daysBetween } from '../../core/dates.ts'
import type { JsonObject } from '../../core/jobs/job.ts'
import { readOpenPrices } from '../../core/other-clubs/read-open-prices.ts'
import { OPEN_PRICE_DAYS } from '../../core/other-clubs/open-prices.ts'
import type { Database } from '../../db/database.ts'
import { enqueue } from '../../db/jobs.ts'
import { clubsNotTriedSince, findOtherClub, noteAsked, noteTry, replaceClubPrices } from '../../db/other-clubs.ts'
import { inTransaction } from '../../db/refusal.ts'
import type { JobHandler } from '../jobs/task.ts'
import { AddressRefused, AnswerTooLong } from '../outside/guarded-request.ts'
import { readEndpoint } from '../outside/endpoint.ts'
import { guardedGet, type Got } from './guarded-get.ts'

export const READ_CLUB_JOB = 'read_other_club'
/** Prices change by the day, and so are they read. */
const READ_EVERY_MS = 24 * 60 * 60_000
export type GetOutside = (url: URL, headers: Record<string, string>) => Promise<Got>

const WORDS = {
  address: 'This address is not one on the open internet. Take the club out and add it with the address that it gives.',
  away: 'The club’s server did not answer. It is tried again tomorrow.',
  none: 'There are no prices at this address. Ask the club whether it still tells them.',
  long: 'The answer is larger than a club’s prices can be, and was not read.',
  store: 'What it told could not be stored. The log of the server says why; what it told before stands.',
  json: 'The answer is not a feed of prices: it is no JSON.',
}

/** Puts clubs that were not read for a day in line. */
export async function readClubsDue(db: Kysely<Database>, now: Date): Promise<number> {
  const due = await clubsNotTriedSince(db, new Date(now.getTime() - READ_EVERY_MS))
  for (const clubId of due) {
    await noteAsked(db, clubId, now)
    await enqueue(db, READ_CLUB_JOB, { clubId }, now)
  }
  return due.length
}

export const readClubHandler =
  (get: GetOutside = guardedGet): JobHandler =>
  async ({ db, job, clock }): Promise<JsonObject> => {
    const { clubId: asked } = job.payload
    const clubId = typeof asked === 'string' ? asked : ''
    const club = await findOtherClub(db, clubId)
    if (!club) return { words: 'The club was taken out.' }
    const answer = await ask(get, club)
    if (answer === 'same' || answer instanceof Fault) {
      const words = answer === 'same' ? null : answer.message
      await noteTry(db, clubId, words, new Date(clock()))
      return { words: words ?? 'Nothing new.' }
    }
    const told = readOpenPrices(answer.document)
    if (!told.ok) {
      await noteTry(db, clubId, told.words, new Date(clock()))
      return { words: told.words }
    }
    const today = civilDateAt(clock(), 'UTC')
    const fresh = told.value.prices.filter(
      ({ seenOn }) => daysBetween(seenOn, today) >= -1 && daysBetween(seenOn, today) <= OPEN_PRICE_DAYS,
    )
    const leftOut = told.value.leftOut + told.value.prices.length - fresh.length
    const reading = { name: told.value.name, prices: fresh, leftOut, etag: answer.etag }
    try {
      await inTransaction(db, (trx) => replaceClubPrices(trx, clubId, reading, new Date(clock())))
    } catch (error) {
      await noteTry(db, clubId, WORDS.store, new Date(clock())).catch(() => undefined)
      throw error
    }
    return { prices: fresh.length, leftOut }
  }

class Fault extends Error {}

async function ask(get: GetOutside, { address, etag }: { address: string; etag: string | null }) {
  const url = readEndpoint(address)
  if (!url.ok) return new Fault(WORDS.address)
  let got: Got
  try {
    got = await get(url.value, { accept: 'application/ld+json, application/json', ...(etag !== null && { 'if-none-match': etag }) })
  } catch (error) {
    return new Fault(error instanceof AddressRefused ? WORDS.address : error instanceof AnswerTooLong ? WORDS.long : WORDS.away)
  }
  if (got.status === 304) return 'same' as const
  if (got.status >= 500 || got.status === 429) return new Fault(WORDS.away)
  if (got.status !== 200) return new Fault(WORDS.none)
  try {
    return { document: JSON.parse(got.body.toString('utf8')) as unknown, etag: sentBack(got.etag) }
  } catch {
    return new Fault(WORDS.json)
  }
}

/** A tag of the form that may be sent back (RFC 9110, 8.8.3), and not longer than anyone needs. */
const sentBack = (etag: string | null): string | null => (etag !== null && /^(W\/)?"[\x21\x23-\x7e]{0,120}"$/.test(etag) ? etag : null)
