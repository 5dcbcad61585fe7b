import { sql } from 'kysely'
import { tellOfProduct } from '../../api/watches/tell.ts'
import { KINDS } from '../../core/catalog/kinds.ts'
import type { PostedSighting } from '../../core/pricing/schema.ts'
import { uuidV7 } from '../../core/uuid-v7.ts'
import type { Connection } from '../../db/connect.ts'
import { insertSighting } from '../../db/sightings.ts'
import { granted } from '../support/rows.ts'
import type { Measurement } from './measurement.ts'
import { mostSeen } from './record/grown-record.ts'
import { growthOfWork, timeOf } from './record/growth.ts'
import { idOf, LAST_NOON_MS } from './record/market.ts'

const PRODUCTS = mostSeen(100)
/** A watch of each of the products and one of each kind, whatever it costs: each sighting is about two. */
const LIMIT_MINOR = 100_000_000
/** The first store that carries a product. */
const storeOf = (product: number): string => idOf('00000002', (product * 7) % 400)

async function watch({ db }: Connection): Promise<void> {
  const kinds = KINDS.filter((kind) => kind !== 'kit')
  const terms = sql`${LIMIT_MINOR}::bigint, 'USD', array['new', 'clearance', 'used']`
  for (const [index, productId] of PRODUCTS.entries())
    await sql`insert into watch (id, person_id, product_id, limit_minor, currency, conditions)
      values (${idOf('00000005', index)}, ${idOf('00000003', index)}, ${productId}, ${terms}) on conflict do nothing`.execute(db)
  for (const [index, kind] of kinds.entries())
    await sql`insert into watch (id, person_id, requirement, limit_minor, currency, conditions)
      values (${idOf('00000006', index)}, ${idOf('00000003', index)}, ${JSON.stringify({ kind, spec: '', fits: null })}::text::jsonb, ${terms})
      on conflict do nothing`.execute(db)
}

const seenNow = (round: number, product: number): PostedSighting => ({
  id: uuidV7(LAST_NOON_MS + round, crypto.getRandomValues(new Uint8Array(10))),
  productId: PRODUCTS[product] ?? '',
  storeId: storeOf(product),
  condition: 'sale',
  priceMinor: 900 - round * 5,
  printedRegularMinor: null,
  seenOn: new Date(LAST_NOON_MS).toISOString().slice(0, 10),
  lastDay: null,
  evidence: 'tag',
  note: null,
})

/** From a sighting that was posted to the notices of who watches its product or its kind. */
export default function watchesGrowth(): Promise<Measurement[]> {
  return growthOfWork('watches.growth', async (connection) => {
    await watch(connection)
    return async (round) => {
      const fields = seenNow(round, (round * 7) % PRODUCTS.length)
      granted(await insertSighting(connection.db, { id: idOf('00000003', 500 + round), role: 'member' }, fields, null))
      return timeOf(() => tellOfProduct(connection.db, fields, LAST_NOON_MS))
    }
  })
}
