import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Check, Finding } from '../../../core/sizing/finding.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { situationOf, type Situation } from '../../../core/sizing/situation.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { conditions, findingOf, gear, one, reportOf } from './sample-build.ts'

/** For figures by hand: inside 1000 × 400 × 450 mm, 10 mm all round, bare, filled to 400 mm. 0.4 m² of surface, 160 L of water, 197.064 L outside. */
const ROUND: Partial<Gear> = {
  tank: one('Wendlemere', {
    lengthMm: 1020,
    widthMm: 420,
    heightMm: 460,
    glassMm: 10,
    bottomMm: 10,
    material: 'glass',
    style: 'rimless',
  }),
  lid: null,
  substrates: [],
  notNeeded: { substrate: 'bare bottom' },
}
const ROOM: Partial<Conditions> = { waterBelowRimMm: 50 }

export const inRoundTank = (check: Check, gearChanges: Partial<Gear> = {}, roomChanges: Partial<Conditions> = {}): Finding =>
  findingOf(check, { ...ROUND, ...gearChanges }, { ...ROOM, ...roomChanges })

/** Whether a check is made at all. */
export const isMadeInRoundTank = (check: Check, gearChanges: Partial<Gear> = {}, roomChanges: Partial<Conditions> = {}): boolean =>
  reportOf({ ...ROUND, ...gearChanges }, { ...ROOM, ...roomChanges }).findings.some((found) => found.check === check)

export function roundTank(gearChanges: Partial<Gear> = {}, roomChanges: Partial<Conditions> = {}): Situation {
  const found = situationOf({ gear: gear({ ...ROUND, ...gearChanges }), conditions: conditions({ ...ROOM, ...roomChanges }) })
  if (!found.ok) throw new Error(found.refusal.code)
  return found.value
}

export const reasonOf = (found: Finding): string => sayPhrase(found.reason, METRIC)
export const actionOf = (found: Finding): string | null => found.action && sayPhrase(found.action.text, METRIC)
