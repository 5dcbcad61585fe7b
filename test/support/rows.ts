import { randomBytes } from 'node:crypto'
import type { Kysely } from 'kysely'
import type { NewProduct } from '../../core/catalog/schema.ts'
import type { Install } from '../../core/install.ts'
import type { Role } from '../../core/people/roles.ts'
import type { PostedSighting } from '../../core/pricing/schema.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import type { Result } from '../../core/result.ts'
import type { Database } from '../../db/database.ts'
import { createPerson } from '../../db/people.ts'
import { createProduct } from '../../db/products.ts'
import { createStore, type StoreFields } from '../../db/stores.ts'
import type { Viewer } from '../../db/viewer.ts'

/** Builders of rows that tests start from: all that a test does not name is plausible and its own. */
let count = 0
export const unique = (word: string): string => `${word} ${++count}`

/** The value of an answer that the test takes for granted. Errors: throws the refusal. */
export function granted<Value>(result: Result<Value, { code: string }>): Value {
  if (!result.ok) throw new Error(`Refused: ${JSON.stringify(result.refusal)}`)
  return result.value
}

/** A UUID of version 7 as a phone makes it. */
export function phoneId(atMs = Date.now()): string {
  const hex =
    atMs.toString(16).padStart(12, '0') + '7' + randomBytes(2).toString('hex').slice(1) + '8' + randomBytes(8).toString('hex').slice(1)
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')
}

export async function person(
  db: Kysely<Database>,
  role: Role = 'member',
  invitedBy: string | null = null,
): Promise<Viewer & { name: string }> {
  const name = unique('Person')
  return granted(await createPerson(db, { name, signInName: name.replace(' ', ''), role, passwordHash: 'a hash', invitedBy }))
}

export const heater = (fields: Partial<NewProduct> = {}): NewProduct =>
  ({
    kind: 'heater',
    name: unique('Heater'),
    maker: null,
    gtin: null,
    oversize: false,
    warrantyMonths: null,
    note: null,
    spec: { powerW: 150, adjustable: true },
    parts: [],
    archived: false,
    ...fields,
  }) as NewProduct

export const product = async (db: Kysely<Database>, fields: Partial<NewProduct> = {}): Promise<Product> =>
  granted(await createProduct(db, heater(fields)))

export const storeFields = (fields: Partial<StoreFields> = {}): StoreFields => ({
  name: unique('Store'),
  kind: 'local',
  town: 'Tarnwick',
  country: 'US',
  subdivision: 'US-MI',
  timeZone: 'America/Detroit',
  taxBasisPoints: 600,
  pricesIncludeTax: false,
  deliveryTaxed: false,
  delivery: { kind: 'pickup_only' },
  returnDays: 30,
  taxName: null,
  otherRates: [],
  deliveryRate: null,
  warrantyMonths: null,
  currency: null,
  own: false,
  note: null,
  archived: false,
  ...fields,
})

export const store = async (db: Kysely<Database>, fields: Partial<StoreFields> = {}): Promise<Store> =>
  granted(await createStore(db, storeFields(fields)))

export const sighting = (productId: string, storeId: string, fields: Partial<PostedSighting> = {}): PostedSighting => ({
  id: phoneId(),
  productId,
  storeId,
  condition: 'shelf',
  priceMinor: 4999,
  printedRegularMinor: null,
  seenOn: '2026-10-20',
  lastDay: null,
  evidence: 'tag',
  note: null,
  ...fields,
})

export const install: Install = {
  name: 'Tarnwick Aquarium Club',
  mode: 'club',
  currency: 'USD',
  country: 'US',
  timeZone: 'America/Detroit',
  units: { system: 'us', gallon: 'us', decimal: '.' },
  contact: 'ask the club, 555-0100',
  paper: 'letter',
  energyPriceMinor: 17.5,
  circuitVoltageV: 120,
  circuitCurrentA: 15,
}
