import type { CivilDate } from '../core/dates.ts'
import { civilDateAt } from '../core/dates.ts'
import type { InstallRow } from '../db/install.ts'
import { getInstallWithGroups } from '../db/livestock-groups.ts'
import type { Ctx } from './context.ts'

/** The install and its present day, which prices and quotes are told by. */
export async function installToday(c: Ctx): Promise<{ install: InstallRow; today: CivilDate }> {
  const install = await getInstallWithGroups(c.get('db'))
  return { install, today: civilDateAt(c.get('deps').clock(), install.timeZone) }
}

/** The install as documents carry it: without the row's version. */
export function plainInstall({ version: _version, ...install }: InstallRow) {
  return install
}
