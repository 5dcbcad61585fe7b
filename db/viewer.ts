import { sql, type ExpressionBuilder, type RawBuilder, type SqlBool } from 'kysely'
import type { Role } from '../core/people/roles.ts'
import type { Database } from './database.ts'

/** Who asks. The role is what the session said; queries look it up again, so that a role taken away ends at once. */
export interface Viewer {
  id: string
  role: Role
}

/** True in SQL where the viewer is, at this moment, an advisor or a manager who may sign in. */
export const advises = (viewer: Viewer): RawBuilder<SqlBool> => holds(viewer, ['advisor', 'manager'])

export const manages = (viewer: Viewer): RawBuilder<SqlBool> => holds(viewer, ['manager'])

const holds = (viewer: Viewer, roles: Role[]): RawBuilder<SqlBool> =>
  sql<SqlBool>`exists (select from person as viewer where viewer.id = ${viewer.id} and viewer.disabled_at is null
    and viewer.role in (${sql.join(roles)}))`

/**
 * True in SQL where the viewer stands apart from the reporter of a sighting: not that person, and neither invited the other.
 * Inviter and invitee do not count as two. What came with a file is the word of a list: everybody stands apart from it but who imported it, though the first of those tied to her does not count.
 */
export const standsApart = (viewer: Viewer, eb: ExpressionBuilder<Database, 'sighting'>): RawBuilder<SqlBool> =>
  sql<SqlBool>`${eb.ref('sighting.reporter_id')} <> ${viewer.id} and (${eb.ref('sighting.imported')} or not exists (select from person as a, person as b
    where a.id = ${eb.ref('sighting.reporter_id')} and b.id = ${viewer.id} and (a.invited_by = b.id or b.invited_by = a.id)))`
