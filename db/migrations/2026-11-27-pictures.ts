import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * Pictures of products, in the database so that one backup holds everything. The row stays when a picture is taken away: its version goes on
 * counting, so that nobody overwrites what came after.
 */
export const pictures: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`create table product_picture (
      product_id uuid constraint product_picture_pk primary key constraint product_picture_product_fk references product (id) on delete cascade,
      hash text constraint product_picture_hash check (hash ~ '^[0-9a-f]{64}$'),
      small bytea,
      large bytea,
      width integer constraint product_picture_width check (width > 0),
      height integer constraint product_picture_height check (height > 0),
      version integer not null default 1,
      constraint product_picture_is_whole check (num_nulls(hash, small, large, width, height) in (0, 5)))`.execute(db)
    await sql`create index product_picture_of_hash on product_picture (hash) where hash is not null`.execute(db)
  },
}
