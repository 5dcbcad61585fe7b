import { sql, type Kysely } from 'kysely'
import { KINDS, type Kind } from '../../core/catalog/kinds.ts'
import type { NewProduct } from '../../core/catalog/schema.ts'
import { connect, openEmbedded, type Connection } from '../../db/connect.ts'
import type { Database } from '../../db/database.ts'
import { migrate } from '../../db/migrate.ts'
import { listProducts, valuesOf } from '../../db/products.ts'
import { heater } from '../support/rows.ts'
import type { Measurement } from './measurement.ts'
import { withBenchPostgres } from './postgres.ts'

const PRODUCTS = 20_000
const BATCH = 2_000
const ROUNDS = 12
const PAGE = { limit: 50, offset: 0 }

const HEADS = ['Brack', 'Pell', 'Mill', 'Oss', 'Wend', 'Hal', 'Lock', 'Corb', 'Thorn', 'Still', 'Quern', 'Salt']
const TAILS = ['vane', 'wick', 'race', 'mere', 'lden', 'ridge', 'elle', 'by', 'well', 'gate', 'more', 'stane']
const LINES = ['Long', 'Deep', 'Clear', 'Quiet', 'Bench', 'Row', 'Frame', 'Crème', 'Low', 'Tall']

/** A catalog as a trader's list has it: some hundred makers, lines of each, figures in the names. */
function productAt(index: number): NewProduct {
  const kind: Kind = KINDS.filter((one) => one !== 'kit')[index % (KINDS.length - 1)] ?? 'heater'
  const maker = `${HEADS[index % HEADS.length]}${TAILS[Math.floor(index / HEADS.length) % TAILS.length]}`
  const sides = { lengthMm: 300 + (index % 13) * 100, widthMm: 300 + (index % 4) * 50, heightMm: 300 + (index % 7) * 50 }
  const spec = kind === 'tank' ? { ...sides, style: 'rimless' } : kind === 'heater' ? { powerW: 25 + (index % 12) * 25 } : {}
  return heater({ kind, maker, name: `${maker} ${LINES[index % LINES.length]} ${index % 900} W no. ${index}`, spec } as Partial<NewProduct>)
}

/** What people type: a first letter, whole words, figures, a size, slips, and what is not there. */
const TYPED = [
  'b', 'br', 'brackvane', 'millrace clear', 'heater 100w', '100 W heater', 'heter 100w', 'brakcvane hetaer', 'quernstone deep', 'wendmere frame stnad', '20 longg', '90 cm rimless', '36 rimless tank',
  'creme thermomter', 'saltridge cansiter', 'e', 'o 100', 'no. 19999', 'nothing at all here', 'xqzvw', 'lockridg quite ligth', 'corbgate tall filtr 300',
] // prettier-ignore

async function stock({ db }: Connection): Promise<void> {
  await migrate(db)
  for (let start = 0; start < PRODUCTS; start += BATCH) {
    const rows = Array.from({ length: BATCH }, (_, index) => productAt(start + index))
    await db.insertInto('product').values(rows.map(valuesOf)).execute()
  }
  await sql`vacuum analyze`.execute(db)
}

/** The plainest search there is, with none of the forgiving: one look through all names. */
const plain = (db: Kysely<Database>, q: string) =>
  sql`select id, name from product where not archived and name ilike ${`%${q}%`} order by lower(name), id limit ${PAGE.limit}`.execute(db)

async function timeOf(work: () => Promise<unknown>): Promise<number> {
  const started = performance.now()
  await work()
  return performance.now() - started
}

const p95 = (values: number[]): number => values.toSorted((a, b) => a - b)[Math.ceil(values.length * 0.95) - 1] ?? NaN

async function measure(name: string, connection: Connection): Promise<Measurement> {
  const { db } = connection
  const values: number[] = []
  const baselines: number[] = []
  for (let round = -1; round < ROUNDS; round += 1) {
    for (const q of TYPED) {
      const [value, baseline] = [await timeOf(() => listProducts(db, { ...PAGE, q })), await timeOf(() => plain(db, q))]
      if (round >= 0) {
        values.push(value)
        baselines.push(baseline)
      }
    }
  }
  return { name, value: p95(values), unit: 'ms', baseline: p95(baselines), ratio: p95(values) / p95(baselines) }
}

async function searched(name: string, connection: Connection): Promise<Measurement> {
  try {
    await stock(connection)
    return await measure(name, connection)
  } finally {
    await connection.close()
  }
}

/** 95th of a hundred searches among 20 000 products, slips forgiven, on both engines, against one plain look through the names. */
export default async function searchProductsBench(): Promise<Measurement[]> {
  const embedded = await searched('search.products', await openEmbedded({}))
  const server = await withBenchPostgres(async () =>
    searched('search.products.postgres', await connect({ databaseUrl: process.env['TEST_DATABASE_URL'] ?? '' })),
  )
  return [embedded, server]
}
