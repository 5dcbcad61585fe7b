import { sql, type Kysely, type Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { OpenPrice } from '../core/other-clubs/open-prices.ts'
import { MOST_OTHER_CLUBS, type OtherClub, type OtherClubRow } from '../core/other-clubs/other-club.ts'
import type { OtherClubPrice } from '../core/pricing/with-other-clubs.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import { clubAddress } from './club-address.ts'
import type { Database } from './database.ts'
import { isId, type Refusal } from './refusal.ts'

const NO_CLUB = { code: 'not_found' as const, message: 'This club is not read here.' }
const NO_STORE = { code: 'not_found' as const, message: 'This club names no such store.' }

/** Numbers of 8, 12 and 13 digits are the same with noughts in front (GS1 General Specifications). */
const WHOLE_GTIN = 14
const ourProduct = sql<boolean>`product.gtin is not null and price.gtin = lpad(product.gtin, ${sql.lit(WHOLE_GTIN)}, '0')`

/** Those with the most prices first. */
const storesOfClubs = (db: Kysely<Database>) =>
  db
    .selectFrom('other_club_store as theirs')
    .leftJoin('other_club_price as price', (join) =>
      join.onRef('price.club_id', '=', 'theirs.club_id').onRef('price.store_key', '=', 'theirs.key'),
    )
    .leftJoin('product', (join) => join.on(ourProduct))
    .select((eb) => [
      'theirs.club_id',
      'theirs.key',
      'theirs.name',
      'theirs.town',
      'theirs.country',
      'theirs.store_id',
      eb.fn.count<number | string>('price.origin_id').as('prices'),
      eb.fn.count<number | string>('product.id').as('known'),
    ])
    .groupBy(['theirs.club_id', 'theirs.key', 'theirs.name', 'theirs.town', 'theirs.country', 'theirs.store_id'])
    .orderBy('prices', 'desc')
    .orderBy(sql`lower(theirs.name)`)
    .orderBy('theirs.key')
    .execute()

/** By name, each with its stores, those with the most prices first. */
export async function listOtherClubs(db: Kysely<Database>): Promise<OtherClub[]> {
  const clubs = await db
    .selectFrom('other_club')
    .selectAll()
    .orderBy(sql`lower(name)`)
    .orderBy('id')
    .execute()
  const stores = await storesOfClubs(db)
  const byClub = Map.groupBy(stores, (store) => store.club_id)
  const sum = (numbers: Array<number | string>): number => numbers.reduce<number>((total, one) => total + Number(one), 0)
  return clubs.map((club) => {
    const own = byClub.get(club.id) ?? []
    return {
      id: club.id,
      address: club.address,
      name: club.name,
      readAt: club.read_at?.toISOString() ?? null,
      triedAt: club.tried_at?.toISOString() ?? null,
      fault: club.fault,
      prices: sum(own.map((store) => store.prices)),
      ofOurProducts: sum(own.map((store) => store.known)),
      used: sum(own.filter((store) => store.store_id !== null).map((store) => store.known)),
      leftOut: club.left_out,
      stores: own.map((store) => ({
        key: store.key,
        name: store.name,
        town: store.town,
        country: store.country,
        storeId: store.store_id,
        prices: Number(store.prices),
      })),
    }
  })
}

export async function findOtherClub(db: Kysely<Database>, id: string) {
  if (!isId(id)) return undefined
  return db
    .selectFrom('other_club')
    .select(['id', 'address', 'name', 'etag', 'tried_at as triedAt'])
    .where('id', '=', id)
    .executeTakeFirst()
}

export async function addOtherClub(
  trx: Transaction<Database>,
  address: string,
): Promise<Result<{ id: string }, Refusal<'address_taken' | 'full'>>> {
  const clubs = await trx.selectFrom('other_club').select(['address', 'name']).execute()
  const same = clubs.find((club) => clubAddress(club.address) === clubAddress(address))
  if (same)
    return refuse({
      code: 'address_taken',
      field: 'address',
      message: `This club is read already: it is “${same.name}” in the list. Enter another one, or take that one out first.`,
    })
  if (clubs.length >= MOST_OTHER_CLUBS)
    return refuse({ code: 'full', message: `${MOST_OTHER_CLUBS} clubs are read already, and no more. Take one out first.` })
  const name = new URL(clubAddress(address)).hostname
  return ok(
    await trx
      .insertInto('other_club')
      .values({ address: clubAddress(address), name })
      .returning('id')
      .executeTakeFirstOrThrow(),
  )
}

/** With everything that it told. */
export async function removeOtherClub(db: Kysely<Database>, id: string): Promise<Result<{ name: string }, Refusal<'not_found'>>> {
  const row = isId(id) ? await db.deleteFrom('other_club').where('id', '=', id).returning('name').executeTakeFirst() : undefined
  return row ? ok(row) : refuse(NO_CLUB)
}

/** Which of our stores a store of another club is. */
export async function matchStore(
  db: Kysely<Database>,
  clubId: string,
  key: string,
  storeId: string | null,
): Promise<Result<null, Refusal<'not_found' | 'store_unknown'>>> {
  if (!isId(clubId)) return refuse(NO_CLUB)
  const known = storeId === null || (await db.selectFrom('store').select('id').where('id', '=', storeId).executeTakeFirst())
  if (!known) return refuse({ code: 'store_unknown', field: 'storeId', message: 'This store is not known.' })
  const { numUpdatedRows } = await db
    .updateTable('other_club_store')
    .set({ store_id: storeId })
    .where('club_id', '=', clubId)
    .where('key', '=', key)
    .executeTakeFirst()
  return numUpdatedRows > 0n ? ok(null) : refuse(NO_STORE)
}

/** Puts in the place of everything that a club told before what it tells now; which of our stores theirs are stays. False where it was taken out meanwhile. */
export async function replaceClubPrices(
  trx: Transaction<Database>,
  clubId: string,
  told: { name: string; prices: readonly OpenPrice[]; leftOut: number; etag: string | null },
  now: Date,
): Promise<boolean> {
  const { numUpdatedRows } = await trx
    .updateTable('other_club')
    .set({ name: told.name, read_at: now, tried_at: now, fault: null, etag: told.etag, left_out: told.leftOut })
    .where('id', '=', clubId)
    .executeTakeFirst()
  if (numUpdatedRows === 0n) return false
  await trx.deleteFrom('other_club_price').where('club_id', '=', clubId).execute()
  const stores = [...new Map(told.prices.map(({ store }) => [store.key, store])).values()]
  if (stores.length > 0)
    await trx
      .insertInto('other_club_store')
      .values(stores.map(({ key, name, town, country }) => ({ club_id: clubId, key, name, town, country, store_id: null })))
      .onConflict((clash) =>
        clash.columns(['club_id', 'key']).doUpdateSet((eb) => ({
          name: eb.ref('excluded.name'),
          town: eb.ref('excluded.town'),
          country: eb.ref('excluded.country'),
        })),
      )
      .execute()
  for (let from = 0; from < told.prices.length; from += ROWS_AT_ONCE)
    await trx
      .insertInto('other_club_price')
      .values(told.prices.slice(from, from + ROWS_AT_ONCE).map((price) => rowOf(clubId, price)))
      .execute()
  // A store that is named no more is forgotten, unless somebody said which one it is.
  await trx
    .deleteFrom('other_club_store')
    .where('club_id', '=', clubId)
    .where('store_id', 'is', null)
    .where('key', 'not in', (eb) => eb.selectFrom('other_club_price').select('store_key').where('club_id', '=', clubId))
    .execute()
  return true
}
const ROWS_AT_ONCE = 500

const rowOf = (clubId: string, price: OpenPrice) => ({
  club_id: clubId,
  origin_id: price.originId,
  store_key: price.store.key,
  gtin: price.product.gtin?.padStart(WHOLE_GTIN, '0') ?? null,
  product_name: price.product.name,
  condition: price.condition,
  price_minor: price.priceMinor,
  printed_regular_minor: price.printedRegularMinor,
  currency: price.currency,
  includes_tax: price.includesTax,
  seen_on: price.seenOn,
  last_day: price.lastDay,
})

/** That a try brought nothing and why; null: nothing was new. */
export async function noteTry(db: Kysely<Database>, clubId: string, fault: string | null, now: Date): Promise<void> {
  await db
    .updateTable('other_club')
    .set({ tried_at: now, fault, ...(fault === null && { read_at: now }) })
    .where('id', '=', clubId)
    .execute()
}

/** From now on it counts as tried, so that the next look does not put it in line again. */
export async function noteAsked(db: Kysely<Database>, clubId: string, now: Date): Promise<void> {
  await db.updateTable('other_club').set({ tried_at: now }).where('id', '=', clubId).execute()
}

/** Ids of those that were not tried since an instant. */
export async function clubsNotTriedSince(db: Kysely<Database>, since: Date): Promise<string[]> {
  const rows = await db
    .selectFrom('other_club')
    .select('id')
    .where((eb) => eb.or([eb('tried_at', 'is', null), eb('tried_at', '<', since)]))
    .orderBy('id')
    .execute()
  return rows.map(({ id }) => id)
}

/**
 * What other clubs told of some products at stores of ours since a day, as far as it may count: in the currency that the
 * store prints and with tax in or out as it does.
 */
export async function otherClubPrices(db: Kysely<Database>, productIds: string[], since: CivilDate): Promise<OtherClubPrice[]> {
  const wanted = productIds.filter(isId)
  if (wanted.length === 0) return []
  return (
    db
      .selectFrom('other_club_price as price')
      .innerJoin('other_club as club', 'club.id', 'price.club_id')
      .innerJoin('other_club_store as theirs', (join) =>
        join.onRef('theirs.club_id', '=', 'price.club_id').onRef('theirs.key', '=', 'price.store_key'),
      )
      .innerJoin('store', 'store.id', 'theirs.store_id')
      .innerJoin('product', (join) => join.on(ourProduct))
      .innerJoin('install', (join) => join.onTrue())
      .select([
        'price.club_id as clubId',
        'club.name as clubName',
        'price.origin_id as originId',
        'product.id as productId',
        'store.id as storeId',
        'price.condition',
        'price.price_minor as priceMinor',
        'price.printed_regular_minor as printedRegularMinor',
        'price.seen_on as seenOn',
        'price.last_day as lastDay',
      ])
      .where('product.id', 'in', wanted)
      // What a store does is its own: no two services are the same for bearing one number.
      .where('product.kind', '<>', 'service')
      .where('price.seen_on', '>=', since)
      .where('store.archived', '=', false)
      .whereRef('price.includes_tax', '=', 'store.prices_include_tax')
      .where(sql<boolean>`price.currency = coalesce(store.currency, install.currency)`)
      .execute()
  )
}

/** Everything that other clubs told of a product, newest first, whether it counts or not; as many as a page shows. */
export async function otherClubRows(db: Kysely<Database>, productId: string): Promise<OtherClubRow[]> {
  if (!isId(productId)) return []
  return db
    .selectFrom('other_club_price as price')
    .innerJoin('other_club as club', 'club.id', 'price.club_id')
    .innerJoin('other_club_store as theirs', (join) =>
      join.onRef('theirs.club_id', '=', 'price.club_id').onRef('theirs.key', '=', 'price.store_key'),
    )
    .leftJoin('store', 'store.id', 'theirs.store_id')
    .innerJoin('product', (join) => join.on(ourProduct))
    .select([
      'club.name as clubName',
      sql<string>`coalesce(store.name, theirs.name)`.as('storeName'),
      'store.id as storeId',
      'price.condition',
      'price.price_minor as priceMinor',
      'price.currency',
      'price.seen_on as seenOn',
      'price.last_day as lastDay',
    ])
    .where('product.id', '=', productId)
    .orderBy('price.seen_on', 'desc')
    .orderBy('price.price_minor')
    .orderBy('price.origin_id')
    .limit(ROWS_ON_A_PAGE)
    .execute()
}
const ROWS_ON_A_PAGE = 50
