import type { CivilDate } from '../../core/dates.ts'
import type { Install } from '../../core/install.ts'
import { sayGate, stepGate, type StepGate } from '../../core/startup/step-gate.ts'
import type { LinkedSetup } from '../../db/setups.ts'
import { findLinkedSetup } from '../../db/setups.ts'
import type { Ctx } from '../context.ts'
import { openLink } from '../http/open-link.ts'
import { doneDayFault } from './days.ts'

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

/** A step that is said to be done: on which day, and whether a word was given for what the log lacks. */
export interface Tick {
  stepId: string
  on: CivilDate
  tested: boolean
}

type Opened = Extract<OpenedSetup, { found: true }>
const gateAt = ({ stepId, on }: Tick, { setup }: Opened): StepGate | null => stepGate(stepId, { ...setup, today: on })

/** Why a step is not ticked, by its field: the day is wrong, or the log as it was on that day does not bear it out and no word stands for it. */
export function tickFault(tick: Tick, opened: Opened): { field: 'on' | 'tested'; message: string } | null {
  const day = doneDayFault(tick.stepId, tick.on, opened)
  if (day !== null) return { field: 'on', message: day }
  const gate = gateAt(tick, opened)
  if (gate === null || (tick.tested && gate.against.length === 0)) return null
  return { field: 'tested', message: sayGate(gate, opened.setup.units) }
}

/** What stands behind a tick that the log does not bear out. */
export interface GivenWord {
  /** The step that was done earlier than it was ticked, by the word. A day before the start or before what comes first is never written. */
  late?: StepGate['late']
}

/** The word given with a tick, where it was needed; null where the log bears the tick out. */
export function givenWord(tick: Tick, opened: Opened): GivenWord | null {
  const gate = tick.tested ? gateAt(tick, opened) : null
  if (gate === null || gate.lacks.length === 0) return null
  const late = gate.late
  return late === undefined || doneDayFault(late.stepId, late.on, opened) !== null ? {} : { late }
}
