import { isExtraSlot, type Slot } from '../catalog/kinds.ts'
import type { Conditions } from '../sizing/conditions.ts'
import type { Gear } from '../sizing/gear.ts'
import type { SizingReport } from '../sizing/report.ts'
import { isPurified } from '../sizing/tap-water.ts'

/** Whether a slot must be covered; where it need not be, why, in the customer's words. */
export interface Requirement {
  required: boolean
  /** Set where the need itself makes the slot superfluous: printed in place of an answer. */
  because: string | null
}

const REQUIRED: Requirement = { required: true, because: null }
const OPTIONAL: Requirement = { required: false, because: null }
const superfluous = (because: string): Requirement => ({ required: false, because })

function bedding(gear: Gear): Requirement {
  const style = gear.tank?.spec.style
  if (style === 'rimmed') return superfluous('rimmed tank: stands on its frame')
  return style === undefined ? OPTIONAL : REQUIRED
}

/** What is treated is the water that goes in, not the tap's: a conditioner for what a reverse-osmosis unit makes would be money poured away. */
function treating(subject: { gear: Gear; conditions: Conditions }): Requirement {
  if (subject.conditions.disinfectant === 'none') return superfluous('the tap water carries no disinfectant')
  return isPurified(subject) ? superfluous('the reverse-osmosis unit makes the water') : REQUIRED
}

/** The engine decides, not the thermometer on the wall: evaporation cools an open tank below its room. */
function heating(gear: Gear, report: Pick<SizingReport, 'findings'>): Requirement {
  const holds = report.findings.find((finding) => finding.check === 'heater_holds')
  return gear.heaters.length === 0 && holds?.verdict === 'fits' ? superfluous('the water stays warm enough without') : REQUIRED
}

/**
 * What a build must cover, from the need and the tank chosen so far. Common practice, except where the physics decides.
 *
 * @example requirementOf('bed_glass', conditions, gearWithRimmedTank, report).because // 'rimmed tank: stands on its frame'
 */
export function requirementOf(slot: Slot, conditions: Conditions, gear: Gear, report: Pick<SizingReport, 'findings'>): Requirement {
  switch (slot) {
    case 'bed_glass':
      return bedding(gear)
    case 'heat':
      return heating(gear, report)
    case 'cover':
      return conditions.livestock.lidNeeded ? REQUIRED : OPTIONAL
    case 'light':
    case 'substrate':
      return conditions.plants === 'none' ? OPTIONAL : REQUIRED
    case 'treat_water':
      return treating({ gear, conditions })
    case 'protect_circuit':
      return conditions.circuitProtected ? superfluous('the circuit is already protected') : REQUIRED
    case 'salt':
    case 'read_salinity':
      return conditions.livestock.water === 'salt' ? REQUIRED : OPTIONAL
    default:
      return isExtraSlot(slot) ? OPTIONAL : REQUIRED
  }
}
