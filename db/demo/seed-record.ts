import type { Transaction } from 'kysely'
import type { Database } from '../database.ts'
import { valuesOf as productValues } from '../products.ts'
import { valuesOf as storeValues } from '../stores.ts'
import { CATALOG } from './catalog.ts'
import { CUSTOMERS, PEOPLE, type DemoPerson } from './club.ts'
import type { DemoRecord } from './sightings.ts'
import { STORES } from './stores.ts'

/** Rows a statement carries: 500 of 17 values stay under the 65 535 parameters that one may have. */
const BATCH = 500

async function inBatches<Row>(rows: readonly Row[], insert: (batch: Row[]) => Promise<unknown>): Promise<void> {
  for (let start = 0; start < rows.length; start += BATCH) await insert(rows.slice(start, start + BATCH))
}

/** People joined on the day of the first sighting, customers with their quotes. The manager invited everyone else. */
export async function seedPeople(trx: Transaction<Database>, hashOf: (person: DemoPerson) => string, record: DemoRecord): Promise<void> {
  const joined = record.sightings[0]?.receivedAt
  const manager = PEOPLE[0]
  await trx
    .insertInto('person')
    .values(
      PEOPLE.map((person) => ({
        id: person.id,
        name: person.name,
        sign_in_name: person.signInName,
        role: person.role,
        password_hash: hashOf(person),
        invited_by: person === manager ? null : (manager?.id ?? null),
        created_at: joined,
      })),
    )
    .execute()
  await trx
    .insertInto('customer')
    .values([...CUSTOMERS])
    .execute()
}

export async function seedCatalog(trx: Transaction<Database>): Promise<void> {
  await trx
    .insertInto('store')
    .values(STORES.map(({ store }) => ({ id: store.id, ...storeValues(store) })))
    .execute()
  await inBatches(CATALOG, (batch) =>
    trx
      .insertInto('product')
      .values(batch.map(({ product }) => ({ id: product.id, ...productValues(product) })))
      .execute(),
  )
  const kinds = new Map(CATALOG.map(({ product }) => [product.id, product.kind]))
  const parts = CATALOG.flatMap(({ product }) =>
    product.parts.map((part, position) => ({
      kit_id: product.id,
      part_id: part.productId,
      part_kind: kinds.get(part.productId) ?? ('kit' as const),
      quantity: part.quantity,
      position,
    })),
  )
  await trx.insertInto('kit_part').values(parts).execute()
}

export async function seedSightings(trx: Transaction<Database>, { sightings, votes }: DemoRecord): Promise<void> {
  await inBatches(sightings, (batch) =>
    trx
      .insertInto('sighting')
      .values(
        batch.map((one) => ({
          id: one.id,
          product_id: one.productId,
          store_id: one.storeId,
          condition: one.condition,
          price_minor: one.priceMinor,
          printed_regular_minor: one.printedRegularMinor,
          seen_on: one.seenOn,
          last_day: one.lastDay,
          evidence: one.evidence,
          note: one.note,
          reporter_id: one.reporterId,
          received_at: one.receivedAt,
          doubt: one.doubt,
          withdrawn_at: one.withdrawn ? one.receivedAt : null,
          confirmations: one.confirmations,
          disputes: one.disputes,
        })),
      )
      .execute(),
  )
  await inBatches(votes, (batch) =>
    trx
      .insertInto('sighting_vote')
      .values(batch.map((one) => ({ sighting_id: one.sightingId, person_id: one.personId, vote: one.vote, at: one.at })))
      .execute(),
  )
}
