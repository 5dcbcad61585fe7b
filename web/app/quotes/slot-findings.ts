import type { Slot } from '../../../core/catalog/kinds.ts'
import type { Check, Finding } from '../../../core/sizing/finding.ts'
import type { SizingReport } from '../../../core/sizing/report.ts'

/** The slot whose part a check judges: where the verdict stands in the table. Checks of the room or of the hands have none. */
const SLOT_OF_CHECK: Partial<Record<Check, Slot>> = {
  heater_stuck: 'heat', heater_holds: 'heat', heater_spare: 'heat', stand_load: 'carry_tank', stand_footprint: 'carry_tank', stand_wet: 'carry_tank', tipping: 'carry_tank', stand_bedding: 'bed_glass',
  outlet_protection: 'protect_circuit', outlets: 'protect_circuit', electrical_load: 'protect_circuit', smallest_volume: 'hold_water',
  lid: 'cover', filter_flow: 'filter', flow_ceiling: 'filter', filter_feed: 'filter', light_coverage: 'light', light_level: 'light', substrate_depth: 'substrate',
  conditioner_dose: 'treat_water', ammonia_tests: 'test_water', circulation: 'circulate', skimmer_size: 'skim', drain_down: 'sump',
} // prettier-ignore

/** Whether a finding only says that there is no tank yet. */
export const needsTank = (finding: Pick<Finding, 'verdict' | 'missing'>): boolean =>
  finding.verdict === 'not_known' && finding.missing.includes('length, depth and height of the tank')

/** The worst finding of a slot's part, where it does not fit; anything milder is told in the report alone. */
export function findingOfSlot(report: SizingReport, slot: Slot): Finding | undefined {
  return report.findings.find((finding) => finding.verdict === 'does_not_fit' && SLOT_OF_CHECK[finding.check] === slot)
}

/** The slot a finding is about, where it is about one. */
export const slotOfCheck = (check: Check): Slot | undefined => SLOT_OF_CHECK[check]
