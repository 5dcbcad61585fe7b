import type { Role } from '../../core/people/roles.ts'
import { getInstallWithGroups } from '../../db/livestock-groups.ts'
import { findPersonUnits } from '../../db/person-units.ts'
import type { SessionView } from '../answers/people.ts'
import type { Ctx } from '../context.ts'
import { plainInstall } from '../day.ts'

/** Who is signed in, in which units they read, and where. */
export async function sessionView(c: Ctx, who: { id: string; name: string; role: Role } | null): Promise<SessionView> {
  const install = plainInstall(await getInstallWithGroups(c.get('db')))
  if (who === null) return { person: null, install }
  const units = await findPersonUnits(c.get('db'), who.id)
  return { person: { id: who.id, name: who.name, role: who.role, units }, install }
}
