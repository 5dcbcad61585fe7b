import { addDays, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import type { Install } from '../../core/install.ts'
import type { LinkedSetup } from '../../db/setups.ts'
import { findLinkedSetup } from '../../db/setups.ts'
import type { Ctx } from '../context.ts'
import { openLink } from '../http/open-link.ts'

/** A tank that nobody looked after for a year needs no checklist; the sheet on its lid may by then be anyone's. */
const OPEN_MS = 365 * 86_400_000

export type OpenedSetup =
  { found: true; setup: LinkedSetup; install: Install; today: string } | { found: false; gone: boolean; install: Install }

/** The setup behind a link; gone a year after its last tick or reading. */
export async function openSetupLink(c: Ctx, token: string): Promise<OpenedSetup> {
  const opened = await openLink(c, token, {
    purpose: 'setup',
    find: (id) => findLinkedSetup(c.get('db'), id),
    isOver: (setup) => Date.parse(setup.lastUsedAt ?? setup.issuedAt) + OPEN_MS < c.get('deps').clock(),
  })
  if (!opened.found) return opened
  const { linked: setup, install, today } = opened
  return { found: true, setup, install, today }
}

/** What is said to who ticks a step for fish that the log does not bear out, and gives no word for it. */
export const NOT_TESTED = 'No two good readings are in the log. Tick that you tested on paper, or write the two tests down first.'

/** A test is of a day between the start and tomorrow, for it may be tomorrow already where the tank stands; null where the day is right. */
export function dayFault(day: CivilDate, today: CivilDate, startedOn: CivilDate | null): string | null {
  const say = (date: CivilDate): string => sayDate(date, yearOf(today))
  if (day > addDays(today, 1)) return `${say(day)} is in the future. Today is ${say(today)}. Write the day on which you tested.`
  if (startedOn !== null && day < startedOn)
    return `${say(day)} is before the start on ${say(startedOn)}. Write the day on which you tested, or change the day of the start.`
  return null
}
