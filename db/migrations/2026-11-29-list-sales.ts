import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * A price of the own list may come with a sale price, to its last day where one is known. Rows of an import that name one stock number are found
 * without reading every row before them.
 */
const STATEMENTS = [
  sql`alter table list_price
    add column sale_minor bigint,
    add column sale_until date,
    add constraint list_price_sale_below check (sale_minor > 0 and sale_minor < price_minor),
    add constraint list_price_sale_ends check (sale_until is null or (sale_minor is not null and sale_until >= valid_from))`,
  sql`create index import_row_of_stock_number on import_row (job_id, lower(data ->> 'stockNumber')) where data ->> 'stockNumber' is not null`,
]

export const listSales: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
