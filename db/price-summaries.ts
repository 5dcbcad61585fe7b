import { sql, type Kysely, type RawBuilder, type Transaction } from 'kysely'
import { encodeSummary, summarisePair } from '../core/pricing/pair-summary.ts'
import type { DatedPrice } from '../core/pricing/sale-spells.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'

export interface Pair {
  productId: string
  storeId: string
}
/** What a new sighting is added to: everything accepted of its product at its store, and which change of the summary that was. Null: there is no summary yet. */
export interface PairBasis {
  version: number | null
  accepted: DatedPrice[]
}

/** Sightings that one statement reads at most, but for a pair that has more by itself. */
const READ_AT_ONCE = 20_000
/** Any number would do, as long as no other lock here has it. */
const MANY_AT_A_TIME = 20_261_202
/** Pairs that one statement writes. */
const WRITTEN_AT_ONCE = 200

/** One sighting as a query packs it: a list in place of columns takes the driver a tenth of the time. */
export type PackedPrice = [
  id: string,
  storeId: string,
  condition: DatedPrice['condition'],
  priceMinor: number,
  printedRegularMinor: number | null,
  seenOn: string,
  reporterId: string,
  lastDay: string | null,
  confirmations: number,
  goneOn: string | null,
  imported: boolean,
]
export const PACKED: RawBuilder<unknown> = sql`json_build_array(id, store_id, condition, price_minor, printed_regular_minor, seen_on, reporter_id, last_day, confirmations, gone_on, imported)`

/** What the table calls accepted counts, whatever made it so. */
export const acceptedOf = ([
  id,
  storeId,
  condition,
  priceMinor,
  printed,
  seenOn,
  reporterId,
  lastDay,
  confirmations,
  goneOn,
  imported,
]: PackedPrice): DatedPrice => ({
  id,
  storeId,
  condition,
  priceMinor,
  printedRegularMinor: printed,
  seenOn,
  reporterId,
  lastDay,
  confirmations,
  goneOn,
  imported,
  doubt: null,
  withdrawn: false,
  disputes: 0,
})

/** The summary that stands once some sightings are accepted, as its row keeps it. */
export const factsOf = (accepted: readonly DatedPrice[]): string => encodeSummary(summarisePair(accepted))

/** In one statement, so that version and sightings are of the same moment. */
export async function readBasis(db: Kysely<Database>, { productId, storeId }: Pair): Promise<PairBasis> {
  if (!isId(productId) || !isId(storeId)) return { version: null, accepted: [] }
  const { rows } = await sql<{ version: number | null; accepted: PackedPrice[] | null }>`
    select (select version from price_summary where product_id = ${productId} and store_id = ${storeId}) as version,
      (select json_agg(${PACKED}) from sighting where product_id = ${productId} and store_id = ${storeId} and accepted) as accepted`.execute(
    db,
  )
  return { version: rows[0]?.version ?? null, accepted: (rows[0]?.accepted ?? []).map(acceptedOf) }
}

const inOrder = (pairs: readonly Pair[]): Pair[] => [
  ...new Map(
    pairs
      .toSorted((a, b) => (a.productId === b.productId ? (a.storeId < b.storeId ? -1 : 1) : a.productId < b.productId ? -1 : 1))
      .map((pair) => [`${pair.productId} ${pair.storeId}`, pair]),
  ).values(),
]

/** Pairs as a table of a statement, in their order. */
const listed = (pairs: ReadonlyArray<Pair & { facts?: string }>): RawBuilder<unknown> =>
  sql`jsonb_to_recordset(${JSON.stringify(pairs)}::text::jsonb) as pair ("productId" uuid, "storeId" uuid, facts text)`

/**
 * Makes the summaries of some pairs anew from their sightings, after a change of any of them. Must run in the transaction of that change: it locks the rows, always in the same
 * order, and reads what others had done until then. `recount` where sightings came, not where a vote or a withdrawal changed one. Returns those that were not what they should have been.
 */
export async function refreshPairs(trx: Transaction<Database>, pairs: readonly Pair[], recount: boolean): Promise<Pair[]> {
  const ordered = inOrder(pairs)
  // Two that hold many rows would wait for each other.
  if (ordered.length > 1) await sql`select pg_advisory_xact_lock(${sql.lit(MANY_AT_A_TIME)})`.execute(trx)
  const changed: Pair[] = []
  for (let start = 0; start < ordered.length; start += WRITTEN_AT_ONCE) {
    const some = ordered.slice(start, start + WRITTEN_AT_ONCE)
    await sql`insert into price_summary (product_id, store_id, sightings, facts)
      select "productId", "storeId", 0, '[]' from ${listed(some)} order by "productId", "storeId"
      on conflict (product_id, store_id) do update set version = price_summary.version + 1`.execute(trx)
    for (const few of await readable(trx, some)) changed.push(...(await write(trx, await summarised(trx, few), recount)))
  }
  return changed
}

/** The pairs, in lists that are read at once. */
async function readable(trx: Transaction<Database>, pairs: readonly Pair[]): Promise<Pair[][]> {
  if (pairs.length === 1) return [[...pairs]]
  const { rows } = await sql<Pair & { seen: number }>`select "productId"::text, "storeId"::text, (select count(*) from sighting
      where product_id = "productId" and store_id = "storeId" and accepted) as seen from ${listed(pairs)}`.execute(trx)
  const lists: Pair[][] = []
  let room = 0
  for (const { seen, ...pair } of rows) {
    if (seen > room || lists.length === 0) {
      lists.push([])
      room = READ_AT_ONCE
    }
    lists.at(-1)?.push(pair)
    room -= seen
  }
  return lists
}

async function summarised(trx: Transaction<Database>, pairs: readonly Pair[]): Promise<Array<Pair & { facts: string }>> {
  const { rows } = await sql<Pair & { accepted: PackedPrice[] | null }>`
    select "productId"::text, "storeId"::text,
      (select json_agg(${PACKED}) from sighting where product_id = "productId" and store_id = "storeId" and accepted) as accepted
    from ${listed(pairs)}`.execute(trx)
  return rows.map(({ accepted, ...pair }) => ({ ...pair, facts: factsOf((accepted ?? []).map(acceptedOf)) }))
}

async function write(trx: Transaction<Database>, summaries: ReadonlyArray<Pair & { facts: string }>, recount: boolean): Promise<Pair[]> {
  const count = recount
    ? sql`(select count(*)::integer from sighting where product_id = "productId" and store_id = "storeId")`
    : sql`null::integer`
  const { rows } = await sql<Pair>`
    update price_summary s set facts = f.facts, sightings = coalesce(f.sightings, s.sightings), newest_id = f.newest_id, newest_on = f.newest_on, newest_at = f.newest_at
    from (select pair.*, newest.id as newest_id, newest.seen_on as newest_on, newest.received_at as newest_at,
        ${count} as sightings
      from ${listed(summaries)}
      left join lateral (select id, seen_on, received_at from sighting where product_id = "productId" and store_id = "storeId" and accepted
        order by seen_on desc, received_at desc, id limit 1) as newest on true) as f
    where s.product_id = f."productId" and s.store_id = f."storeId"
      and (s.facts, s.sightings, s.newest_id, s.newest_on, s.newest_at) is distinct from (f.facts, coalesce(f.sightings, s.sightings), f.newest_id, f.newest_on, f.newest_at)
    returning s.product_id::text as "productId", s.store_id::text as "storeId"`.execute(trx)
  return rows
}
