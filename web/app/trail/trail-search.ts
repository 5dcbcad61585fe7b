import { AUDIT_SUBJECTS } from '../../../core/audit/audit-actions.ts'
import { isCivilDate } from '../../../core/dates.ts'
import type { TrailFilter } from '../client/trail.ts'

const ID = /^[0-9a-f-]{36}$/

/** What of an address filters the trail; anything else in it is left aside. */
export function readTrailSearch(search: Record<string, unknown>): TrailFilter {
  const { person, subject, day } = search
  return {
    ...(typeof person === 'string' && ID.test(person) ? { person } : {}),
    ...(AUDIT_SUBJECTS.some((kind) => kind === subject) ? { subject: subject as string } : {}),
    ...(typeof day === 'string' && isCivilDate(day) ? { day } : {}),
  }
}
