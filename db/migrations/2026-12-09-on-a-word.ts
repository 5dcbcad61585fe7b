import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** A step that was ticked on somebody's word, where the log does not bear it out, is told as such. Nobody knows it of ticks from before. */
const STATEMENT = sql`alter table setup_tick add column on_word boolean not null default false`

export const onAWord: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await STATEMENT.execute(db)
  },
}
