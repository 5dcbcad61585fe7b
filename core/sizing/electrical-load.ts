import { phrase, quantity } from '../units/quantity.ts'
import { isLowVoltageCountry, mainsCaution } from './mains.ts'
import type { Finding } from './finding.ts'
import type { Gear } from './gear.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { applianceCount } from './outlets.ts'
import { applianceLoadW } from './peak-load.ts'
import type { SizingSubject } from './report.ts'
import { settled } from './settled.ts'
import { judgeAtMost } from './verdict.ts'
import { assumedOf } from './words.ts'

/** Load of three hours or more over the rating of its circuit: NEC 210.19(A)(1), 210.20(A) (sections seen, wording from memory). */
export const CONTINUOUS_SHARE = 0.8
/** Last tenth of what is allowed: a kettle on the same circuit is beyond it. Own. */
const LOAD_BAND = 0.1

/**
 * Load that a circuit may carry for hours on end.
 *
 * Units: V and A in, W out. @example continuousLimitW(120, 15) // 1440
 */
export const continuousLimitW = (voltageV: number, currentA: number): number => voltageV * currentA * CONTINUOUS_SHARE

/**
 * Whether circuit and strip carry everything on at once. Value: W. Limit: 80 % of the circuit, or of one strip's rating.
 *
 * @example electricalLoad(subject)?.margin // 1190 W: 250 W on a circuit of 15 A at 120 V, of which 1440 W are for continuous use
 */
export function electricalLoad(subject: SizingSubject): Finding | null {
  const { gear, conditions } = subject
  if (applianceCount(subject) === 0) return null
  const { loadW, unstated } = applianceLoadW(subject)
  const round = (watts: number) => Math.round(watts + conditions.otherLoadW)
  const [strip, ...more] = gear.power
  const stripA = strip && more.length === 0 && strip.quantity === 1 ? strip.spec.ratedCurrentA : undefined
  const byStrip = stripA !== undefined && stripA < conditions.circuitCurrentA
  const limitW = Math.floor(continuousLimitW(conditions.circuitVoltageV, byStrip ? stripA : conditions.circuitCurrentA))
  const outcome = settled(
    judgeAtMost(round(loadW.high), limitW, limitW * LOAD_BAND),
    judgeAtMost(round(loadW.low), limitW, limitW * LOAD_BAND),
    unstated,
    assumedOf(conditions, ['circuitVoltageV', 'circuitCurrentA', 'otherLoadW']),
  )
  const value = quantity(round(loadW.high), 'W', 0)
  const limit = quantity(limitW, 'W', 0)
  const other =
    conditions.otherLoadW > 0 ? phrase`, ${quantity(conditions.otherLoadW, 'W', 0)} of other things on the circuit included` : phrase``
  const carrier = byStrip ? 'The strip' : 'The circuit'
  return makeFinding('electrical_load', {
    ...outcome,
    value,
    limit: { kind: 'at_most', high: limit },
    reason: phrase`Everything on at once draws ${unstated.length > 0 ? 'up to ' : ''}${value}${other}. ${carrier} carries ${limit} for hours on end.${fineprint(gear)}`,
    action:
      outcome.verdict === 'fits'
        ? null
        : { text: phrase`Move other things to another circuit, or ask a licensed electrician for one of its own.` },
    assumed: namesOf(outcome.assumed),
    source: isLowVoltageCountry(conditions) ? 'electrical_load' : 'electrical_load_230',
    caution: mainsCaution(conditions),
  })
}

/** What watts on a label leave out: the current of motors, and what a timer's contacts bear. Common practice. */
function fineprint({ filters, appliances = [] }: Gear): string {
  const motors =
    filters.length > 0 || appliances.length > 0
      ? ' Motors of pumps take more current than their watts say (volt-amperes), so leave some in reserve.'
      : ''
  return `${motors} A plug-in timer has to be rated for the motors or lamps that it switches.`
}
