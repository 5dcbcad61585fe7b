import { addDays, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import type { Install } from '../../core/install.ts'
import { sayGate, stepGate } from '../../core/startup/step-gate.ts'
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

/** Why a step is not ticked with what the log holds, in words; null where nothing stands against it, or a word was given for what the log lacks. */
export function tickFault(stepId: string, { setup, today }: Extract<OpenedSetup, { found: true }>, tested: boolean): string | null {
  const gate = stepGate(stepId, { ...setup, today })
  return gate === null || (tested && gate.against.length === 0) ? null : sayGate(gate, setup.units)
}

/** The step that a word given with a tick says was done earlier than it was ticked. */
export function lateStep(
  stepId: string,
  { setup, today }: Extract<OpenedSetup, { found: true }>,
  tested: boolean,
): { stepId: string; on: CivilDate } | undefined {
  return tested ? stepGate(stepId, { ...setup, today })?.late : undefined
}

/**
 * A test is of a day between the start and tomorrow, for it may be tomorrow already where the tank stands; null where the day is right. Without a
 * start it counts from the day before the setup was made, for it was yesterday still elsewhere.
 */
export function dayFault(day: CivilDate, { setup, today }: Pick<Extract<OpenedSetup, { found: true }>, 'setup' | 'today'>): string | null {
  const { startedOn } = setup
  const madeOn = setup.issuedAt.slice(0, 10)
  const say = (date: CivilDate): string => sayDate(date, yearOf(today))
  if (day > addDays(today, 1)) return `${say(day)} is in the future. Today is ${say(today)}. Write the day on which you tested.`
  if (startedOn !== null && day < startedOn)
    return `${say(day)} is before the start on ${say(startedOn)}. Write the day on which you tested, or change the day of the start.`
  if (startedOn === null && day < addDays(madeOn, -1))
    return `${say(day)} is before this setup was made on ${say(madeOn)}. Write the day on which you tested, or set the day of the start first.`
  return null
}
