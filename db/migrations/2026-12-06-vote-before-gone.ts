import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** What somebody had voted before "gone" disputed, so that taking it back gives that again. */
export const voteBeforeGone: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table notice add column vote_before text constraint notice_vote_before check (vote_before in ('confirm', 'dispute'))`.execute(
      db,
    )
  },
}
