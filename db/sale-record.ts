import { sql, type Kysely } from 'kysely'
import { addDays, type CivilDate } from '../core/dates.ts'
import type { SaleRunRecord } from '../core/pricing/sale-time.ts'
import type { Database } from './database.ts'

/** Days of some stores that are asked about. `key` tells the runs apart and is the caller's. */
export interface AskedRun {
  key: string
  first: CivilDate
  last: CivilDate
  storeIds: string[]
}

/** A shelf price says what is regular for so long, as everywhere in the record. */
const SHELF_DAYS = 180

/** First day of which anything accepted is on record; null where nothing is. */
export async function firstSeenOn(db: Kysely<Database>): Promise<CivilDate | null> {
  const row = await db.selectFrom('sighting').select('seen_on').where('accepted', '=', true).orderBy('seen_on').limit(1).executeTakeFirst()
  return row?.seen_on ?? null
}

/**
 * What was reported in some runs: accepted sale and clearance sightings of those days at those stores, a shelf price below its own printed one among them. The depth is against the newest accepted shelf
 * price of the same product and store up to then, no older than 180 days. Runs of which nothing was reported are left out.
 */
export async function readSaleRuns(db: Kysely<Database>, runs: readonly AskedRun[]): Promise<Map<string, SaleRunRecord>> {
  const asked = runs.flatMap(({ key, first, last, storeIds }) => storeIds.map((storeId) => ({ key, first, last, storeId })))
  if (asked.length === 0) return new Map()
  const { rows } = await sql<SaleRunRecord & { key: string }>`
    select run.key, run.first::text as first, run.last::text as last, count(distinct seen.store_id)::integer as stores,
      count(distinct seen.product_id)::integer as products, count(*)::integer as sightings,
      percentile_cont(0.5) within group (order by 1 - seen.price_minor::double precision / shelf.price_minor) as "medianDepth"
    from jsonb_to_recordset(${JSON.stringify(asked)}::text::jsonb) as run (key text, first date, last date, "storeId" uuid)
    join sighting seen on seen.store_id = run."storeId" and seen.seen_on between run.first and run.last
      and seen.accepted and (seen.condition in ('sale', 'clearance') or (seen.condition = 'shelf' and seen.price_minor < seen.printed_regular_minor))
    left join lateral (
      select price_minor from sighting where product_id = seen.product_id and store_id = seen.store_id and accepted and condition = 'shelf'
        and price_minor >= coalesce(printed_regular_minor, 0) and seen_on <= seen.seen_on and seen_on >= seen.seen_on - ${SHELF_DAYS}::integer
      order by seen_on desc, received_at desc, id limit 1
    ) shelf on true
    group by run.key, run.first, run.last`.execute(db)
  return new Map(rows.map(({ key, ...run }) => [key, run]))
}

/** The record is asked about so far back and no further. @example sinceFor('2026-11-26', '2020-01-01') // '2023-11-27' */
export function sinceFor(asOf: CivilDate, firstSeen: CivilDate): CivilDate {
  const YEARS_BACK = 3 * 365
  const oldest = addDays(asOf, -YEARS_BACK)
  return firstSeen > oldest ? firstSeen : oldest
}
