import type { Kysely } from 'kysely'
import type { Database } from './database.ts'
import type { Viewer } from './viewer.ts'

/** When a person's feed address was made; null where there is none. Of the token itself only its hash is kept. */
export async function feedTokenOf(db: Kysely<Database>, { id }: Viewer): Promise<Date | null> {
  const row = await db.selectFrom('feed_token').select('created_at').where('person_id', '=', id).executeTakeFirst()
  return row?.created_at ?? null
}

/** Puts a new token in the place of the old one, which opens nothing from then on. */
export async function replaceFeedToken(db: Kysely<Database>, { id }: Viewer, tokenHash: string, now: Date): Promise<void> {
  await db
    .insertInto('feed_token')
    .values({ person_id: id, token_hash: tokenHash, created_at: now })
    .onConflict((clash) => clash.column('person_id').doUpdateSet({ token_hash: tokenHash, created_at: now }))
    .execute()
}

export async function removeFeedToken(db: Kysely<Database>, { id }: Viewer): Promise<void> {
  await db.deleteFrom('feed_token').where('person_id', '=', id).execute()
}

/** Whose feed a token opens; undefined for one of nobody, or of somebody who may not sign in. */
export async function personOfFeed(db: Kysely<Database>, tokenHash: string): Promise<{ id: string } | undefined> {
  return db
    .selectFrom('feed_token')
    .innerJoin('person', 'person.id', 'feed_token.person_id')
    .select('person.id')
    .where('token_hash', '=', tokenHash)
    .where('person.disabled_at', 'is', null)
    .executeTakeFirst()
}
