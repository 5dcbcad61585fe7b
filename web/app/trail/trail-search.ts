import { isCivilDate } from '../../../core/dates.ts'
import type { TrailFilter } from '../client/trail.ts'

const ID = /^[0-9a-f-]{36}$/
/** The shape of a kind of thing. Which there are the screen knows, which is not loaded where only addresses are read. */
const KIND = /^[a-z_]{3,40}$/

/** What of an address filters the trail; anything else in it is left aside. */
export function readTrailSearch(search: Record<string, unknown>): TrailFilter {
  const { person, subject, day } = search
  return {
    ...(typeof person === 'string' && ID.test(person) ? { person } : {}),
    ...(typeof subject === 'string' && KIND.test(subject) ? { subject } : {}),
    ...(typeof day === 'string' && isCivilDate(day) ? { day } : {}),
  }
}
