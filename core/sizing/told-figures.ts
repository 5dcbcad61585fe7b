import { rimLoop, type AllJudged } from './cords.ts'
import { evaporationOf } from './evaporation-words.ts'
import type { Inspected } from './engine.ts'
import { waterSpan } from './filter-flow.ts'
import { meanFlowLph } from './figures.ts'
import { mostLossW } from './heat-figures.ts'
import { lossW } from './heat-loss.ts'
import { oneFailedC, powerCutHours } from './heater-spare.ts'
import { hoursToDanger, stuckC } from './heater-stuck.ts'
import type { Heating } from './heating.ts'
import type { SizingFigures } from './report.ts'
import type { Situation } from './situation.ts'
import { middle, over, round } from './span.ts'
import { waterChange } from './water-change-warmth.ts'

/**
 * Figures that are told where a report is answered, drawn or kept; while parts are chosen nothing reckons with them.
 *
 * Units: as the figures' names say. @example toldFigures(inspected).turnoverPerHour // 4.71
 */
export function toldFigures({ situation, heating, lit: { bed }, delivery, cords }: Inspected): SizingFigures {
  const { targetC } = situation.conditions.livestock
  const usualW = Math.max(0, middle(over(heating.usual, ({ loss }) => lossW(loss, targetC))))
  const { litres } = evaporationOf(situation, heating)
  const { corners } = situation
  return {
    outsideVolumeL: round(corners[0]?.geometry.outsideVolumeL ?? 0, 2),
    substrateMassKg: round(over(corners, ({ mass }) => mass.substrateKg).high, 2),
    usualLossW: round(usualW, 1),
    evaporationLPerDay: { low: round(litres.low, 2), high: round(litres.high, 2) },
    ...heaterFigures(situation, heating),
    ...(delivery && { turnoverPerHour: round(meanFlowLph(delivery) / middle(waterSpan(situation)), 2) }),
    ...(bed && !bed.fluxUnstated && { lightAtBedUmol: { low: round(bed.dim.low, 0), high: round(bed.dim.high, 0) } }),
    ...loopFigure(situation, cords),
  }
}

/** Of the heaters that the build has; nothing where it has none or a power is not stated. */
function heaterFigures(situation: Situation, heating: Heating): SizingFigures {
  if (heating.powerUnstated.length > 0) return {}
  const heaterPowerW = round(heating.installedW.high, 0)
  const [first, ...others] = heating.heaters
  if (!first) return { heaterPowerW }
  const strongest = others.reduce((best, each) => (best.powerW.high >= each.powerW.high ? best : each), first)
  const stuckHours = hoursToDanger(situation, heating, strongest)
  const heatLostHours = powerCutHours(heating, situation.conditions.livestock)
  const { mixedC, hours } = waterChange(situation, heating)
  return {
    heaterPowerW,
    stuckTemperatureC: stuckC(heating, 'high', strongest).value,
    ...(stuckHours === undefined ? {} : { stuckHours: round(stuckHours, 1) }),
    oneFailedC: oneFailedC(heating, 'low').value,
    ...(heatLostHours === undefined ? {} : { heatLostHours: round(heatLostHours, 1) }),
    // Of the whole watts that are told beside it.
    heaterDutyPercent: round((100 * Math.round(mostLossW(situation, heating))) / heating.installedW.low, 0),
    waterChange: { mixedC: round(mixedC, 1), ...(hours === undefined ? {} : { hours: round(hours, 1) }) },
  }
}

function loopFigure(situation: Situation, cords: AllJudged): Pick<SizingFigures, 'dripLoop'> {
  const rim = rimLoop(situation, cords)
  if (!rim) return {}
  const to = rim.to === 'outlet' ? {} : { to: rim.to }
  // What is wanted is judged in whole millimetres; the rest is drawn as it was entered.
  return { dripLoop: { neededMm: Math.round(rim.loop.neededMm), lowPointMm: rim.loop.lowPointMm, ...rim.run, ...to } }
}
