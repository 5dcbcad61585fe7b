import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Rows of an import that name one product, for what comes behind them: without it each step would read every row before it. */
export const stagedProducts: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`create index import_row_of_product on import_row (job_id, (data ->> 'productId')) where data ->> 'productId' is not null`.execute(
      db,
    )
  },
}
