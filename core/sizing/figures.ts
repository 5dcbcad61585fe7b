import type { Delivery } from './filter-delivery.ts'
import { tankWater, waterSpan } from './filter-flow.ts'
import { floorMassKg } from './floor-load.ts'
import { heatFigures } from './heat-figures.ts'
import type { Heating } from './heating.ts'
import { applianceLoadW } from './peak-load.ts'
import type { SizingFigures, SizingSubject } from './report.ts'
import type { Situation } from './situation.ts'
import { middle, over, round } from './span.ts'

/** Figures that need no tank. A power that nobody stated leaves the peak load out. */
export function gearFigures(subject: SizingSubject): SizingFigures {
  const { loadW, unstated } = applianceLoadW(subject)
  return unstated.length > 0 || loadW.high === 0 ? {} : { peakLoadW: round(loadW.high, 0) }
}

/** Between loaded media and clean ones, L/h. */
export const meanFlowLph = ({ loaded, clean }: Delivery): number => (middle(loaded) + middle(clean)) / 2

/**
 * Figures that others reckon with while parts are chosen. Where the glass is not stated, the middle of what it may be stands: the findings say so.
 * Masses take the heavier end, for they are what someone has to carry.
 */
export function tankFigures(situation: Situation, heating: Heating, delivery: Delivery | undefined): SizingFigures {
  const { corners, gear } = situation
  return {
    ...gearFigures(situation),
    grossVolumeL: round(middle(over(corners, ({ geometry }) => geometry.grossVolumeL)), 2),
    waterVolumeL: round(middle(waterSpan(situation)), 2),
    ...(situation.sump && { tankWaterL: round(middle(tankWater(situation)), 2) }),
    emptyMassKg: round(over(corners, ({ mass }) => mass.emptyKg).high, 2),
    runningMassKg: round(over(corners, ({ mass }) => mass.runningKg).high, 2),
    brimMassKg: round(gear.stand?.spec.massKg === undefined ? over(corners, ({ mass }) => mass.brimKg).high : floorMassKg(situation), 2),
    ...heatFigures(situation, heating),
    ...(delivery && { flowLph: round(meanFlowLph(delivery), 0) }),
  }
}
