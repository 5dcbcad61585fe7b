import { sql, type RawBuilder } from 'kysely'
import { manages, type Viewer } from './viewer.ts'

/**
 * In SQL the name of a person as the viewer reads it. Where two have one name, a manager gets the sign-in name behind it, as in "Ines Halberg
 * (ines.h)"; nobody else does: what others sign in with is not for members. `person` is what the query calls the table.
 */
export const nameFor = (viewer: Viewer, person: string): RawBuilder<string> =>
  viewer.role === 'manager'
    ? sql<string>`case when ${manages(viewer)} and lower(${sql.ref(`${person}.name`)}) in
        (select lower(name) from person group by lower(name) having count(*) > 1)
      then ${sql.ref(`${person}.name`)} || ' (' || ${sql.ref(`${person}.sign_in_name`)} || ')' else ${sql.ref(`${person}.name`)} end`
    : sql<string>`${sql.ref(`${person}.name`)}`
