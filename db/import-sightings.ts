import { sql, type Kysely, type Transaction } from 'kysely'
import { KINDS } from '../core/catalog/kinds.ts'
import { addDays, civilDateAt, type CivilDate } from '../core/dates.ts'
import type { ImportFault } from '../core/exchange/data-set.ts'
import type { SightingRow } from '../core/exchange/sighting-rows.ts'
import type { JsonObject } from '../core/jobs/job.ts'
import { checkSighting } from '../core/pricing/check-sighting.ts'
import { doubtOf } from '../core/pricing/doubt.ts'
import type { Doubt, SeenPrice } from '../core/pricing/sighting.ts'
import type { Database } from './database.ts'
import { stagedRows, type StagedDecision, type StagedRow } from './import-staging.ts'
import { refreshPairs, type Pair } from './price-summaries.ts'
import { StaleImport, type CheckedRows, type ImportContext, type ImportTarget } from './import-target.ts'

/** Sightings from a file. One whose id is here is the same and stays; any other is new, its reporter whoever imports it. */
export const sightingTarget: ImportTarget = { check, write: writeRows, finish }

/** The doubt rules look back this far. */
const RECORD_DAYS = 365

interface Place {
  line: number
  product_id: string | null
  product_name: string | null
  product_archived: boolean | null
  products: number
  store_id: string | null
  store_name: string | null
  store_archived: boolean | null
  time_zone: string | null
  /** Of the store's prices, where the store has one of its own. */
  store_currency: string | null
  known: Known | null
}
/** The sighting with the row's id, as far as a row can say it again. */
type Known = Pick<SightingRow, 'condition' | 'priceMinor' | 'printedRegularMinor' | 'seenOn' | 'lastDay' | 'evidence' | 'note'> & {
  productId: string
  storeId: string
}

async function check(db: Kysely<Database>, context: ImportContext, after: number, upTo: number): Promise<CheckedRows> {
  const rows = await stagedRows<SightingRow>(db, context.jobId, after, upTo)
  const places = new Map((await placesOf(db, context.jobId, after, upTo)).map((place) => [place.line, place]))
  const faults: ImportFault[] = []
  const decisions: StagedDecision[] = []
  const fresh: Fresh[] = []
  for (const row of rows) {
    const place = places.get(row.line)
    if (place === undefined) continue
    const fault = faultOf(row, place, context)
    if (fault !== null) faults.push(fault)
    else if (place.known !== null) decisions.push({ line: row.line, action: 'same', targetId: row.data.id, targetVersion: null, found: {} })
    else fresh.push({ ...row, productId: place.product_id ?? '', storeId: place.store_id ?? '' })
  }
  return { rows: rows.length, faults, decisions: [...decisions, ...(await judged(db, context, fresh, after))] }
}

/** An id that no product here has is another install's. */
const NOT_HERE = sql`not exists (select from product own where own.id = (s.data ->> 'productId')::uuid)`

/** What each row means: look-ups that end at a row or two of an index, one row each. */
async function placesOf(db: Kysely<Database>, jobId: string, after: number, upTo: number): Promise<Place[]> {
  const { rows } = await sql<Place>`
    select s.line, product.id as product_id, product.name as product_name, product.archived as product_archived, coalesce(product.products, 0)::integer as products,
      store.id as store_id, store.name as store_name, store.archived as store_archived, store.time_zone, store.currency as store_currency, known.known
    from import_row as s
    left join lateral (select found.*, count(*) over () as products from (
      (select p.id, p.name, p.archived from product p where p.id = (s.data ->> 'productId')::uuid limit 1)
      union all (select p.id, p.name, p.archived from product p where ${NOT_HERE}
        and p.gtin is not null and lpad(p.gtin, 14, '0') = lpad(s.data ->> 'gtin', 14, '0') limit 1)
      union all (select p.id, p.name, p.archived from product p where ${NOT_HERE}
        and (s.data ->> 'gtin' is null or (s.data ->> 'productId' is not null and not exists (select from product numbered
          where numbered.gtin is not null and lpad(numbered.gtin, 14, '0') = lpad(s.data ->> 'gtin', 14, '0'))))
        and p.kind in (${sql.join([...KINDS])}) and lower(p.name) = lower(s.data ->> 'product')
        and (s.data ->> 'kind' is null or p.kind = s.data ->> 'kind') limit 2)
    ) as found limit 1) as product on true
    left join lateral (
      (select t.* from store t where t.id = (s.data ->> 'storeId')::uuid limit 1)
      union all (select t.* from store t where lower(t.name) = lower(s.data ->> 'store')
        and not exists (select from store own where own.id = (s.data ->> 'storeId')::uuid) limit 1)
    ) as store on true
    left join lateral (select json_build_object('productId', k.product_id, 'storeId', k.store_id, 'condition', k.condition, 'priceMinor', k.price_minor,
      'printedRegularMinor', k.printed_regular_minor, 'seenOn', k.seen_on, 'lastDay', k.last_day, 'evidence', k.evidence, 'note', k.note) as known
      from sighting k where k.id = (s.data ->> 'id')::uuid limit 1) as known on true
    where s.job_id = ${jobId} and s.line > ${after} and s.line <= ${upTo}`.execute(db)
  return rows
}

function faultOf({ line, data }: StagedRow<SightingRow>, place: Place, { nowMs, currency: home }: ImportContext): ImportFault | null {
  const fault = (column: string, message: string): ImportFault => ({ row: line, column, message })
  if (place.products > 1)
    return fault('product', `"${data.product}" names products of different kinds. Write the kind or the id of the product.`)
  if (place.known !== null)
    return isSame(data, place)
      ? null
      : fault('id', 'A sighting with this id is here and says something else. One is never edited: leave the id empty for a new one.')
  const product = place.product_id === null ? undefined : { name: place.product_name ?? '', archived: place.product_archived === true }
  const store = place.store_id === null ? undefined : { name: place.store_name ?? '', archived: place.store_archived === true }
  const checked = checkSighting(data, { product, store, today: civilDateAt(nowMs, place.time_zone ?? 'UTC') })
  if (checked.ok) {
    const currency = place.store_currency ?? home
    if (data.currency === currency) return null
    return fault(
      'currency',
      `The amounts were read in ${data.currency}, and prices of ${place.store_name} are in ${currency}. Send the file again.`,
    )
  }
  const columns = { productId: 'product', storeId: 'store', seenOn: 'seenOn' } as const
  return fault(columns[checked.refusal.field], wordsFor(data, checked.refusal.code) ?? checked.refusal.words)
}

const wordsFor = (data: SightingRow, code: string): string | null =>
  code === 'unknown_product'
    ? `"${data.product}" is not in the catalog. Check the name, or import the catalog first.`
    : code === 'unknown_store'
      ? `"${data.store}" is not in the list of stores. Check the name, or add the store first.`
      : null

function isSame(data: SightingRow, { known, product_id, store_id }: Place): boolean {
  if (known === null || known.productId !== product_id || known.storeId !== store_id) return false
  const fields = ['condition', 'priceMinor', 'printedRegularMinor', 'seenOn', 'lastDay', 'evidence', 'note'] as const
  return fields.every((field) => known[field] === data[field])
}

type Fresh = StagedRow<SightingRow> & { productId: string; storeId: string }

/** New rows with their doubts, in the order of their days: each is held against the record here, the rows of earlier steps and those beside it. */
async function judged(db: Kysely<Database>, context: ImportContext, fresh: readonly Fresh[], after: number): Promise<StagedDecision[]> {
  if (fresh.length === 0) return []
  const record = await recordOf(db, context, fresh, after)
  const decisions: StagedDecision[] = []
  for (const { line, data, productId, storeId } of fresh.toSorted((a, b) => (a.data.seenOn < b.data.seenOn ? -1 : 1))) {
    const key = recordKey(productId, data.currency)
    const seen = record.get(key) ?? []
    record.set(key, seen)
    const doubt = doubtOf({ ...data, productId, storeId }, seen, { currency: data.currency, othersThatDay: [] })
    seen.push(seenOf(line, data, storeId, doubt))
    const found: JsonObject = { productId, storeId, doubt: doubt === null ? null : { ...doubt } }
    decisions.push({ line, action: 'create', targetId: null, targetVersion: null, found })
  }
  return decisions
}

const UNVOTED = { withdrawn: false, confirmations: 0, disputes: 0 }

const seenOf = (line: number, data: SightingRow, storeId: string, doubt: Doubt | null): SeenPrice => ({
  ...data,
  ...UNVOTED,
  id: `line ${line}`,
  storeId,
  reporterId: '',
  doubt,
})

/** Amounts of two currencies compare with nothing: each product has a record for each. */
const recordKey = (productId: string, currency: string): string => `${productId} ${currency}`

async function recordOf(
  db: Kysely<Database>,
  context: ImportContext,
  fresh: readonly Fresh[],
  after: number,
): Promise<Map<string, SeenPrice[]>> {
  const first = fresh.reduce((least, { data }) => (data.seenOn < least ? data.seenOn : least), fresh[0]?.data.seenOn ?? '')
  const since = addDays(first, -RECORD_DAYS)
  const productIds = [...new Set(fresh.map(({ productId }) => productId))]
  const record = new Map<string, SeenPrice[]>()
  const add = (key: string, seen: SeenPrice): void => {
    const list = record.get(key)
    if (list) list.push(seen)
    else record.set(key, [seen])
  }
  const stored = await storedSince(db, context.currency, productIds, since)
  for (const { productId, currency, ...seen } of stored) add(recordKey(productId, currency), { ...seen, ...UNVOTED, doubt: null })
  for (const { line, data } of await judgedSince(db, context.jobId, productIds, since, after))
    add(recordKey(data.productId, data.currency), seenOf(line, data, data.storeId, data.doubt))
  return record
}

const storedSince = (db: Kysely<Database>, home: string, productIds: string[], since: CivilDate) =>
  db
    .selectFrom('sighting')
    .innerJoin('store', 'store.id', 'sighting.store_id')
    .select(['sighting.id', 'product_id as productId', 'store_id as storeId', 'condition', 'price_minor as priceMinor'])
    .select(['printed_regular_minor as printedRegularMinor', 'seen_on as seenOn', 'reporter_id as reporterId'])
    .select(sql<string>`coalesce(store.currency, ${home})`.as('currency'))
    .where('product_id', 'in', productIds)
    .where('accepted', '=', true)
    .where('seen_on', '>=', since)
    .orderBy('seen_on')
    .orderBy('received_at')
    .execute()

type JudgedRow = StagedRow<SightingRow & { productId: string; storeId: string; doubt: Doubt | null }>

/** Rows of the same file that an earlier step judged: they are not stored yet. */
async function judgedSince(
  db: Kysely<Database>,
  jobId: string,
  productIds: string[],
  since: CivilDate,
  after: number,
): Promise<JudgedRow[]> {
  const { rows } = await sql<JudgedRow>`select line, data from import_row
    where job_id = ${jobId} and line <= ${after} and action = 'create'
      and data ->> 'productId' in (${sql.join(productIds)}) and data ->> 'seenOn' >= ${since} order by line`.execute(db)
  return rows
}

/** A UUID of version 7 (RFC 9562, 5.7): the instant in milliseconds, the version, chance. */
const NEW_ID = sql`(lpad(to_hex((extract(epoch from now()) * 1000)::bigint), 12, '0') || '7' || substr(replace(gen_random_uuid()::text, '-', ''), 14))::uuid`

/**
 * An imported sighting counts as taken at noon of its day, and not within the last hour: so rows keep the order of their days, and whoever imports
 * can still post. It is the list's word, on which whoever the importer invited may vote. Without an id it gets one of version 7, like a phone's.
 */
async function writeRows(
  trx: Transaction<Database>,
  { jobId, viewer, currency }: ImportContext,
  after: number,
  upTo: number,
): Promise<void> {
  const between = sql`s.job_id = ${jobId} and s.line > ${after} and s.line <= ${upTo} and s.action = 'create'`
  const { numAffectedRows } = await sql`
    insert into sighting (id, product_id, store_id, condition, price_minor, printed_regular_minor, seen_on, last_day, evidence, note, reporter_id, doubt, received_at, imported)
    select coalesce(f.id, ${NEW_ID}), product.id, store.id, f.condition, f."priceMinor", f."printedRegularMinor",
      f."seenOn", f."lastDay", f.evidence, f.note, ${viewer.id}::uuid, nullif(f.doubt, 'null'::jsonb), least(now() - interval '1 hour', f."seenOn" + time '12:00'), true
    from import_row as s, jsonb_to_record(s.data) as f (id uuid, "productId" uuid, "storeId" uuid, condition text, "priceMinor" bigint,
      "printedRegularMinor" bigint, currency text, "seenOn" date, "lastDay" date, evidence text, note text, doubt jsonb)
    join product on product.id = f."productId" and not product.archived
    join store on store.id = f."storeId" and not store.archived and coalesce(store.currency, ${currency}) = f.currency
    where ${between} order by s.line`.execute(trx)
  const { rows } = await sql<{ due: number }>`select count(*) as due from import_row as s where ${between}`.execute(trx)
  if (Number(numAffectedRows ?? 0) !== (rows[0]?.due ?? 0))
    throw new StaleImport('a product or a store was archived meanwhile, or its currency changed')
}

/** Each summary once, however many of its sightings came. */
async function finish(trx: Transaction<Database>, { jobId }: ImportContext): Promise<void> {
  const { rows } = await sql<Pair>`select distinct data ->> 'productId' as "productId", data ->> 'storeId' as "storeId" from import_row
    where job_id = ${jobId} and action = 'create'`.execute(trx)
  await refreshPairs(trx, rows, true)
}
