import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** A sump may be stored as well. */
const STATEMENTS = [
  sql`alter table product drop constraint product_kind`,
  sql`alter table product add constraint product_kind check (kind in ('tank', 'kit', 'stand', 'mat', 'lid', 'filter', 'filter_media', 'sump', 'heater', 'chiller',
    'light', 'air_pump', 'circulation_pump', 'skimmer', 'co2', 'uv', 'substrate', 'hardscape', 'background', 'conditioner', 'ammonia_source', 'bacteria',
    'salt_mix', 'ro_unit', 'test_kit', 'refractometer', 'thermometer', 'timer', 'power', 'battery_backup', 'plumbing', 'tool', 'food', 'plant', 'livestock',
    'service'))`,
]

export const sump: Migration = {
  async up(db: Kysely<unknown>) {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
