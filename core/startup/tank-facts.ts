import { kindInText } from '../catalog/kinds.ts'
import { appliancesOf } from '../sizing/appliances.ts'
import { waterSpan } from '../sizing/filter-flow.ts'
import { APPLIANCE_KINDS } from '../sizing/gear.ts'
import { situationOf } from '../sizing/situation.ts'
import { disinfectantIn, isPurified } from '../sizing/tap-water.ts'
import { isExact } from '../sizing/span.ts'
import { quantity, type Quantity } from '../units/quantity.ts'
import type { StartupSubject } from './startup-subject.ts'

/** A used tank holds water this long before anything goes in, a new one a day (common practice). */
const HOLD_DAYS = { used: 3, fresh: 1 } as const

/** What several steps ask of the subject. */
export interface TankFacts {
  /** Water that is dosed; null where the tank's inside is not known. */
  waterL: number | null
  /** To the rim: the leak test. */
  brimL: number | null
  /** What nobody stated and those litres rest on: "glass thickness", "water level below the rim". */
  assumed: string[]
  holdDays: number
  activeSoil: boolean
  salt: boolean
  planted: boolean
  /** Every drop comes through a reverse-osmosis unit. */
  purified: boolean
  /** Where nobody knows, the tap is treated as if it carried chloramine: the safe side. */
  chloramine: boolean
  disinfected: boolean
  /** Every appliance with a cord, by name and count. */
  cords: Array<{ what: string; count: number }>
}

/**
 * The facts of the tank and its water, worked out once for every group of steps.
 *
 * Units:  litres, days. Errors: none; what is not known is null.
 *
 * @example tankFacts(subject).holdDays // 3 for a tank that was already owned
 */
export function tankFacts(subject: StartupSubject): TankFacts {
  const { gear, conditions, report } = subject
  const disinfectant = disinfectantIn(subject)
  return {
    waterL: report.figures.waterVolumeL ?? null,
    brimL: report.figures.grossVolumeL ?? null,
    assumed: assumedVolume(subject),
    holdDays: gear.tank?.owned === true ? HOLD_DAYS.used : HOLD_DAYS.fresh,
    activeSoil: gear.substrates.some((each) => each.spec.type === 'active_soil'),
    salt: conditions.livestock.water === 'salt',
    planted: conditions.plants !== 'none',
    purified: isPurified(subject),
    chloramine: disinfectant === 'chloramine' || disinfectant === 'unknown',
    disinfected: disinfectant !== 'none',
    cords: cordsOf(gear),
  }
}

/** Only what moves the litres: acrylic of a stated thickness holds what glass does. */
function assumedVolume({ gear, conditions }: StartupSubject): string[] {
  const situation = situationOf({ gear, conditions })
  if (!situation.ok) return []
  const { waterUnstated, fillDefaults } = situation.value
  return isExact(waterSpan(situation.value)) ? [...fillDefaults] : [...waterUnstated, ...fillDefaults]
}

function cordsOf(gear: StartupSubject['gear']): TankFacts['cords'] {
  const kinds = [
    { what: 'heater', items: gear.heaters },
    { what: 'filter', items: gear.filters },
    { what: 'light', items: gear.lights },
    ...APPLIANCE_KINDS.map((kind) => ({ what: kindInText(kind), items: appliancesOf(gear).filter((each) => each.kind === kind) })),
  ]
  return kinds.flatMap(({ what, items }) => items.map((item) => ({ what, count: item.quantity })))
}

/** An amount at the precision of the tool in the hand: a syringe, a fine scale. @example doseOf(0.1816, 'g').digits // 2 */
export function doseOf(value: number, unit: 'mL' | 'g'): Quantity {
  if (value < 1) return quantity(value, unit, 2)
  return quantity(value, unit, value < 20 ? 1 : 0)
}

/** Litres as a bucket measures them. @example litres(146.2).value // 146 */
export const litres = (value: number): Quantity => quantity(value, 'L', value < 20 ? 1 : 0)
