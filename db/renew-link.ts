import type { Transaction } from 'kysely'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { isId, type Refusal } from './refusal.ts'
import { advises, type Viewer } from './viewer.ts'

/** Ends every copy of a quote's link that was given out; the next one is made with the version returned. Advisors only. */
export async function renewQuoteLink(
  trx: Transaction<Database>,
  viewer: Viewer,
  quoteId: string,
): Promise<Result<{ number: string | null; linkVersion: number }, Refusal<'not_found'>>> {
  if (!isId(quoteId)) return refuse(NO_LINK)
  const row = await trx
    .updateTable('quote')
    .set((eb) => ({ link_version: eb('link_version', '+', 1) }))
    .where('id', '=', quoteId)
    .where('latest_revision', '>', 0)
    .where(advises(viewer))
    .returning(['number', 'link_version'])
    .executeTakeFirst()
  return row ? ok({ number: row.number, linkVersion: row.link_version }) : refuse(NO_LINK)
}

/** As `renewQuoteLink`, for the sheet that hangs on a tank. */
export async function renewSetupLink(
  trx: Transaction<Database>,
  viewer: Viewer,
  setupId: string,
): Promise<Result<{ quoteId: string; linkVersion: number }, Refusal<'not_found'>>> {
  if (!isId(setupId)) return refuse(NO_LINK)
  const row = await trx
    .updateTable('setup')
    .set((eb) => ({ link_version: eb('link_version', '+', 1) }))
    .where('id', '=', setupId)
    .where(advises(viewer))
    .returning(['quote_id', 'link_version'])
    .executeTakeFirst()
  return row ? ok({ quoteId: row.quote_id, linkVersion: row.link_version }) : refuse(NO_LINK)
}

const NO_LINK: Refusal<'not_found'> = { code: 'not_found', message: 'There is no link to renew: nothing was issued here yet.' }
