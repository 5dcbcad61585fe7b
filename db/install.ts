import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { Install } from '../core/install.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, InstallTable } from './database.ts'
import type { Refusal } from './refusal.ts'
import { manages, type Viewer } from './viewer.ts'

export interface InstallRow extends Install {
  version: number
}

export async function findInstall(db: Kysely<Database>): Promise<InstallRow | undefined> {
  const row = await db.selectFrom('install').selectAll().executeTakeFirst()
  return row && installOf(row)
}

/** Errors: throws before the first start has made it. */
export async function getInstall(db: Kysely<Database>): Promise<InstallRow> {
  return installOf(await db.selectFrom('install').selectAll().executeTakeFirstOrThrow())
}

export async function createInstall(db: Kysely<Database>, install: Install): Promise<Result<InstallRow, Refusal<'exists'>>> {
  const row = await db
    .insertInto('install')
    .values(valuesOf(install))
    .onConflict((clash) => clash.doNothing())
    .returningAll()
    .executeTakeFirst()
  return row ? ok(installOf(row)) : refuse({ code: 'exists', message: 'This install is already set up.' })
}

/**
 * Whether an amount of money is stored anywhere: a sighting, a quote, a store that charges for delivery. Nothing that could bring one is
 * written until the transaction ends.
 */
async function holdsAmounts(trx: Transaction<Database>): Promise<boolean> {
  await sql`lock table sighting, quote, store, list_price in share mode`.execute(trx)
  const { rows } = await sql<{
    held: boolean
  }>`select exists (select from sighting) or exists (select from quote) or exists (select from list_price)
    or exists (select from store where delivery ->> 'kind' <> 'pickup_only') as held`.execute(trx)
  return rows[0]?.held === true
}

/** Managers only. The currency stays once an amount is stored: every one of them is a bare number in it. */
export async function updateInstall(
  trx: Transaction<Database>,
  viewer: Viewer,
  expectedVersion: number,
  install: Install,
): Promise<Result<InstallRow, Refusal<'not_found' | 'stale' | 'currency_in_use'>>> {
  const { currency } = await getInstall(trx)
  if (currency !== install.currency && (await holdsAmounts(trx))) {
    return refuse({
      code: 'currency_in_use',
      field: 'currency',
      message: `Prices, fees or quotes are stored in ${currency}, and their amounts would change their meaning. Leave the currency at ${currency}.`,
    })
  }
  const row = await trx
    .updateTable('install')
    .set((eb) => ({ ...valuesOf(install), version: eb('version', '+', 1) }))
    .where('version', '=', expectedVersion)
    .where(manages(viewer))
    .returningAll()
    .executeTakeFirst()
  if (row) return ok(installOf(row))
  const visible = await trx.selectFrom('install').select('one').where(manages(viewer)).executeTakeFirst()
  if (!visible) return refuse({ code: 'not_found', message: 'Only a manager changes the settings.' })
  return refuse({ code: 'stale', message: 'Someone else changed the settings meanwhile.' })
}

/** Where the place is, by the one who has just become its first manager; null where it was known so. Who may is the caller's to say. */
export async function placeInstall(
  trx: Transaction<Database>,
  timeZone: string,
): Promise<{ before: InstallRow; after: InstallRow } | null> {
  const before = await getInstall(trx)
  if (before.timeZone === timeZone) return null
  const row = await trx
    .updateTable('install')
    .set((eb) => ({ time_zone: timeZone, version: eb('version', '+', 1) }))
    .returningAll()
    .executeTakeFirstOrThrow()
  return { before, after: installOf(row) }
}

const valuesOf = (install: Install) => ({
  name: install.name,
  mode: install.mode,
  currency: install.currency,
  country: install.country,
  time_zone: install.timeZone,
  units: install.units,
  contact: install.contact,
  paper: install.paper,
  energy_price_minor: install.energyPriceMinor,
  circuit_voltage_v: install.circuitVoltageV,
  circuit_current_a: install.circuitCurrentA,
  ...(install.leastSavingMinor !== undefined && { least_saving_minor: install.leastSavingMinor }),
})

const installOf = (row: Selectable<InstallTable>): InstallRow => ({
  name: row.name,
  mode: row.mode,
  currency: row.currency,
  country: row.country,
  timeZone: row.time_zone,
  units: row.units,
  contact: row.contact,
  paper: row.paper,
  energyPriceMinor: row.energy_price_minor,
  circuitVoltageV: row.circuit_voltage_v,
  circuitCurrentA: row.circuit_current_a,
  leastSavingMinor: row.least_saving_minor,
  version: row.version,
})
