import { sql, type Kysely } from 'kysely'
import type { AssembledBuild } from '../core/quote/revision.ts'
import type { SizingFigures } from '../core/sizing/report.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'

/** What a setup's page draws: the tank and its drip loop, cut out of the build the setup was made from. Nulls where there is nothing to draw. */
export async function setupDrawing(
  db: Kysely<Database>,
  setupId: string,
): Promise<{ dripLoop: SizingFigures['dripLoop'] | null; tank: AssembledBuild['drawing'] }> {
  const nothing = { dripLoop: null, tank: null }
  if (!isId(setupId)) return nothing
  const row = await db
    .selectFrom('setup')
    .innerJoin('quote_revision', (join) =>
      join.onRef('quote_revision.quote_id', '=', 'setup.quote_id').onRef('quote_revision.revision', '=', 'setup.revision'),
    )
    .select(
      sql<typeof nothing | null>`(select jsonb_build_object('tank', build -> 'drawing', 'dripLoop', build #> '{report,figures,dripLoop}')
        from jsonb_array_elements(quote_revision.document -> 'builds') as build where build ->> 'letter' = setup.letter)`.as('drawing'),
    )
    .where('setup.id', '=', setupId)
    .executeTakeFirst()
  return row?.drawing ?? nothing
}
