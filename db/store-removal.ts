import { sql, type Kysely, type Transaction } from 'kysely'
import type { Store } from '../core/catalog/store.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { isId, type Refusal } from './refusal.ts'
import { counted, findStore } from './stores.ts'

/** A quote's documents are some hundred kB each, read whole; a hundred quotes stay far within the limit of a statement on a slow machine. */
const QUOTES_A_PAGE = 100

/** What the quotes said of one store when they were read: a quote's version goes up with its draft and with every issue. */
export interface StoreMentions {
  storeId: string
  /** By quote: the version that was read, and whether its draft or one of its documents names the store. */
  read: Map<string, { version: number; names: boolean }>
}

/**
 * Reads every quote for the name of a store, in pages of its key, and locks nobody out: on the embedded database others write between the
 * pages. What changes afterwards, `deleteStore` finds by its version.
 */
export async function readStoreMentions(db: Kysely<Database>, storeId: string): Promise<StoreMentions> {
  const read: StoreMentions['read'] = new Map()
  if (!isId(storeId)) return { storeId, read }
  for (let after: string | null = null; ;) {
    const beyond: string | null = after
    const page: Quote[] = await quotesOf(db, storeId, beyond === null ? sql`true` : sql`quote.id > ${beyond}`)
    for (const { id, version, names } of page) read.set(id, { version, names })
    after = page.at(-1)?.id ?? null
    if (page.length < QUOTES_A_PAGE || after === null) return { storeId, read }
  }
}

interface Quote {
  id: string
  version: number
  names: boolean
}

/** A page of the quotes that `which` asks for. A document holds every store's name among what it was made from; a line's choice is spelt so. */
async function quotesOf(db: Kysely<Database>, storeId: string, which: ReturnType<typeof sql>): Promise<Quote[]> {
  const { rows } = await sql<Quote>`select quote.id, quote.version, quote.draft::text like ${`%${storeId}%`}
      or exists (select from quote_revision where quote_id = quote.id and document::text like ${`%"storeId": "${storeId}"%`}) as names
    from quote where ${which} order by quote.id limit ${QUOTES_A_PAGE}`.execute(db)
  return rows
}

/** How many quotes name the store now: only what came or changed since it was read is read again. */
async function countNaming(trx: Transaction<Database>, { storeId, read }: StoreMentions): Promise<number> {
  const now = await trx.selectFrom('quote').select(['id', 'version']).execute()
  const isFresh = ({ id, version }: { id: string; version: number }): boolean => read.get(id)?.version !== version
  let naming = now.filter((quote) => !isFresh(quote) && read.get(quote.id)?.names === true).length
  const fresh = now.filter(isFresh).map(({ id }) => id)
  for (let at = 0; at < fresh.length; at += QUOTES_A_PAGE) {
    const ids = fresh.slice(at, at + QUOTES_A_PAGE)
    naming += (await quotesOf(trx, storeId, sql`quote.id in (${sql.join(ids)})`)).filter(({ names }) => names).length
  }
  return naming
}

/**
 * Takes out a store that nothing refers to. One that sightings, drafts or issued quotes name stays, since they lean on it. `mentions` is what
 * was read of it before the transaction, so that the lock is held for what is new and no longer.
 *
 * Errors: `in_use` with what refers to it.
 */
export async function deleteStore(
  trx: Transaction<Database>,
  mentions: StoreMentions,
): Promise<Result<Store, Refusal<'not_found' | 'in_use'>>> {
  const store = await findStore(trx, mentions.storeId)
  if (!store) return refuse({ code: 'not_found', message: 'There is no such store.' })
  // Nobody may come to name it between the count and the end.
  await sql`lock table sighting, quote, quote_revision in share mode`.execute(trx)
  const quotes = await countNaming(trx, mentions)
  const { sightings } = await trx
    .selectFrom('sighting')
    .select((eb) => eb.fn.countAll<number>().as('sightings'))
    .where('store_id', '=', store.id)
    .executeTakeFirstOrThrow()
  if (sightings + quotes > 0) return refuse(inUse(store.name, quotes, sightings))
  await trx.deleteFrom('store').where('id', '=', store.id).execute()
  return ok(store)
}

function inUse(name: string, quotes: number, sightings: number): Refusal<'in_use'> {
  const named = [counted(quotes, 'quote'), counted(sightings, 'sighting')].filter((words) => words !== '').join(' and ')
  return {
    code: 'in_use',
    message: `${named} ${sightings + quotes === 1 ? 'names' : 'name'} "${name}", so it cannot be deleted. Archive it: it then stays in what names it, and nobody is sent there.`,
  }
}
