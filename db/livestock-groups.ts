import { sql, type Kysely, type Selectable } from 'kysely'
import { LIVESTOCK_GROUPS } from '../core/catalog/livestock.ts'
import type { LivestockGroup } from '../core/sizing/conditions.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, LivestockGroupTable } from './database.ts'
import { getInstall, type InstallRow } from './install.ts'
import { constraintOf, type Refusal } from './refusal.ts'
import { manages, type Viewer } from './viewer.ts'

export interface StoredGroup extends LivestockGroup {
  version: number
}
export type GroupFields = Omit<LivestockGroup, 'id' | 'standing'>

/** As they came first, in the order of their names; then the place's own. */
export async function listLivestockGroups(db: Kysely<Database>): Promise<StoredGroup[]> {
  const rows = await db
    .selectFrom('livestock_group')
    .selectAll()
    .orderBy(sql`standing is not distinct from 'own'`)
    .orderBy(sql`lower(name)`)
    .execute()
  return rows.map(groupOf)
}

export async function findLivestockGroup(db: Kysely<Database>, id: string): Promise<StoredGroup | undefined> {
  const row = await db.selectFrom('livestock_group').selectAll().where('id', '=', id).executeTakeFirst()
  return row && groupOf(row)
}

/** The install with the groups that are otherwise here than they came: what a need is resolved with, and what a document keeps. */
export async function getInstallWithGroups(db: Kysely<Database>): Promise<InstallRow> {
  const install = await getInstall(db)
  const rows = await db.selectFrom('livestock_group').selectAll().where('standing', 'is not', null).orderBy('id').execute()
  return rows.length === 0 ? install : { ...install, livestock: rows.map((row) => plainGroup(groupOf(row))) }
}

const plainGroup = ({ version: _version, ...group }: StoredGroup): LivestockGroup => group

/** A group of this place's own. Managers only. */
export async function createLivestockGroup(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
  fields: GroupFields,
): Promise<Result<StoredGroup, Refusal<'not_found' | 'name_taken'>>> {
  const may = await db.selectNoFrom(manages(viewer).as('may')).executeTakeFirst()
  if (may?.may !== true) return refuse({ code: 'not_found', message: 'Only a manager adds livestock groups.' })
  const row = await db
    .insertInto('livestock_group')
    .values({ id, ...valuesOf(fields), standing: 'own' })
    .onConflict((clash) => clash.doNothing())
    .returningAll()
    .executeTakeFirst()
  return row ? ok(groupOf(row)) : refuse(nameTaken(fields.name))
}

/**
 * Managers only. One that came with the service is marked as edited while it says something else than it came with; what changes nothing is no
 * version. Quotes keep the figures that they were issued with.
 */
export async function updateLivestockGroup(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
  expectedVersion: number,
  fields: GroupFields,
): Promise<Result<StoredGroup, Refusal<'not_found' | 'stale' | 'name_taken'>>> {
  const stored = await findLivestockGroup(db, id)
  if (!stored) return refuse({ code: 'not_found', message: 'There is no such livestock group.' })
  if (stored.version === expectedVersion && saysTheSame(stored, fields)) return ok(stored)
  const seed = LIVESTOCK_GROUPS.find((group) => group.id === id)
  const edited = seed === undefined ? ('own' as const) : saysTheSame(seed, fields) ? null : ('edited' as const)
  try {
    const row = await db
      .updateTable('livestock_group')
      .set({ ...valuesOf(fields), standing: stored.standing === 'own' ? 'own' : edited, version: expectedVersion + 1 })
      .where('id', '=', id)
      .where('version', '=', expectedVersion)
      .where(manages(viewer))
      .returningAll()
      .executeTakeFirst()
    return row ? ok(groupOf(row)) : refuse({ code: 'stale', message: 'Someone else changed this group meanwhile.' })
  } catch (error) {
    if (constraintOf(error) === 'livestock_group_name_once') return refuse(nameTaken(fields.name))
    throw error
  }
}

const nameTaken = (name: string): Refusal<'name_taken'> => ({
  code: 'name_taken',
  field: 'name',
  message: `There is already a livestock group called "${name}".`,
})

const saysTheSame = (a: GroupFields, b: GroupFields): boolean => JSON.stringify(valuesOf(a)) === JSON.stringify(valuesOf(b))

const valuesOf = (fields: GroupFields) => ({
  name: fields.name,
  examples: fields.examples,
  lowest_c: fields.lowestC,
  target_c: fields.targetC,
  highest_c: fields.highestC,
  danger_c: fields.dangerC,
  flow_ceiling_per_hour: fields.flowCeilingPerHour,
  flow_floor_per_hour: fields.flowFloorPerHour,
  smallest_volume_l: fields.smallestVolumeL,
  feed_grams_per_day: fields.feedGramsPerDay,
  lid_needed: fields.lidNeeded,
  water: fields.water,
  source: fields.source,
})

const groupOf = (row: Selectable<LivestockGroupTable>): StoredGroup => ({
  id: row.id,
  name: row.name,
  examples: row.examples,
  lowestC: row.lowest_c,
  targetC: row.target_c,
  highestC: row.highest_c,
  dangerC: row.danger_c,
  flowCeilingPerHour: row.flow_ceiling_per_hour,
  flowFloorPerHour: row.flow_floor_per_hour,
  smallestVolumeL: row.smallest_volume_l,
  feedGramsPerDay: row.feed_grams_per_day,
  lidNeeded: row.lid_needed,
  water: row.water,
  source: row.source,
  ...(row.standing === null ? {} : { standing: row.standing }),
  version: row.version,
})
