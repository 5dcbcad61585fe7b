import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { sql } from 'kysely'
import postgres from 'postgres'
import { KINDS } from '../../../core/catalog/kinds.ts'
import { connect, type Connection } from '../../../db/connect.ts'
import { createInstall } from '../../../db/install.ts'
import { migrate } from '../../../db/migrate.ts'
import { valuesOf as productValues } from '../../../db/products.ts'
import { makeSightingPart } from '../../../db/sighting-parts.ts'
import { valuesOf as storeValues } from '../../../db/stores.ts'
import { areSummariesCurrent, rebuildSummaries } from '../../../db/summary-rebuild.ts'
import { withDatabase } from '../../support/postgres-server.ts'
import { granted, heater, install, storeFields } from '../../support/rows.ts'
import { idOf, LAST_NOON_MS, lineAt, MEMBERS, PRODUCTS, STORES, type Line } from './market.ts'

/** A young record and one a hundred times as large, of the same goods at the same stores. */
export const SIZES = {
  young: { sightings: 20_000, days: 180 },
  grown: { sightings: 2_000_000, days: 1_095 },
} as const
export type Size = keyof typeof SIZES

const BATCH = 1_000
const productId = (index: number): string => idOf('00000001', index)
const storeId = (index: number): string => idOf('00000002', index)
const personId = (index: number): string => idOf('00000003', index)

/** The products that are seen most, which are those that people open and build with. */
export const mostSeen = (count: number): string[] => Array.from({ length: count }, (_, index) => productId(index))

async function stockPlaces({ db }: Connection): Promise<void> {
  granted(await createInstall(db, install))
  const indexes = (count: number): number[] => Array.from({ length: count }, (_, index) => index)
  await db
    .insertInto('store')
    .values(indexes(STORES).map((index) => ({ id: storeId(index), ...storeValues(storeFields()) })))
    .execute()
  const kinds = KINDS.filter((kind) => kind !== 'kit')
  for (let start = 0; start < PRODUCTS; start += BATCH)
    await db
      .insertInto('product')
      .values(
        indexes(BATCH).map((index) => {
          const kind = kinds[(start + index) % kinds.length] ?? 'heater'
          return { id: productId(start + index), ...productValues(heater({ kind, spec: {}, name: `Halden ${start + index}` } as never)) }
        }),
      )
      .execute()
  await sql`insert into person (id, name, sign_in_name, role, password_hash)
    select ('00000003-0000-4000-8000-' || lpad(to_hex(n), 12, '0'))::uuid, 'Member ' || n, 'member' || n, 'member', 'a hash'
    from generate_series(0, ${MEMBERS - 1}::integer) as n`.execute(db)
}

const copied = (value: string | number | null): string => (value === null ? '\\N' : String(value))

const sightingText = (line: Line): string =>
  [
    line.id, productId(line.productIndex), storeId(line.storeIndex), line.condition, line.priceMinor, line.printedRegularMinor, line.seenOn, line.lastDay,
    'tag', personId(line.reporterIndex), new Date(line.receivedAtMs).toISOString(), line.doubted ? '{"code":"too_deep","words":"deep"}' : null,
    line.withdrawn ? new Date(line.receivedAtMs + 60_000).toISOString() : null, line.confirmations, line.disputes,
  ].map(copied).join('\t') + '\n' // prettier-ignore

/** Voters are the members behind the reporter: nobody votes on her own. */
const votesText = (line: Line): string =>
  Array.from(
    { length: line.confirmations + line.disputes },
    (_, voter) =>
      [line.id, personId((line.reporterIndex + 1 + voter) % MEMBERS), voter < line.confirmations ? 'confirm' : 'dispute'].join('\t') + '\n',
  ).join('')

function* texts(size: Size, textOf: (line: Line) => string): Generator<string> {
  const { sightings, days } = SIZES[size]
  for (let start = 0; start < sightings; start += BATCH) {
    let text = ''
    for (let index = start; index < Math.min(start + BATCH, sightings); index += 1) text += textOf(lineAt(index, sightings, days))
    yield text
  }
}

async function copySightings(url: string, size: Size): Promise<void> {
  const raw = postgres(url, { max: 1, onnotice: () => undefined })
  // Keys to other tables hold by how the lines are made; asking for each would double the time.
  await raw`set session_replication_role = replica`
  const seen =
    await raw`copy sighting (id, product_id, store_id, condition, price_minor, printed_regular_minor, seen_on, last_day, evidence, reporter_id,
    received_at, doubt, withdrawn_at, confirmations, disputes) from stdin`.writable()
  await pipeline(Readable.from(texts(size, sightingText)), seen)
  await pipeline(Readable.from(texts(size, votesText)), await raw`copy sighting_vote (sighting_id, person_id, vote) from stdin`.writable())
  await raw`vacuum analyze`
  await raw.end()
}

/** As the service would have made them, year by year, while the record grew. */
async function makeParts({ db }: Connection, size: Size): Promise<void> {
  const yearOf = (ms: number): number => new Date(ms).getUTCFullYear()
  for (let year = yearOf(LAST_NOON_MS - SIZES[size].days * 86_400_000); year <= yearOf(LAST_NOON_MS) + 1; year += 1)
    await makeSightingPart(db, year)
}

/**
 * A connection to a record of that size, made at its first asking on the server of TEST_DATABASE_URL. On a server that is given and stays, the next run
 * finds it again; a change of the schema wants it dropped by hand.
 */
export async function openRecord(size: Size): Promise<Connection & { url: string }> {
  const serverUrl = process.env['TEST_DATABASE_URL'] ?? ''
  const name = `driploop_bench_${SIZES[size].sightings}`
  const url = withDatabase(serverUrl, name)
  const admin = postgres(serverUrl, { max: 1, onnotice: () => undefined })
  const [known] = await admin`select from pg_database where datname = ${name}`
  if (known === undefined) await admin.unsafe(`create database ${name}`)
  await admin.end()
  const connection = await connect({ databaseUrl: url })
  await migrate(connection.db)
  if (known === undefined) {
    await makeParts(connection, size)
    await stockPlaces(connection)
    await copySightings(url, size)
  }
  if (!(await areSummariesCurrent(connection.db))) {
    await rebuildSummaries(connection.db)
    await sql`vacuum analyze price_summary`.execute(connection.db)
  }
  return { ...connection, url }
}
