import { equilibriumC } from './equilibrium.ts'
import { evaporationOf } from './evaporation-words.ts'
import { lossW } from './heat-loss.ts'
import { heaterChoice } from './heater-choice.ts'
import { oneFailedC, powerCutHours } from './heater-spare.ts'
import { hoursToDanger, stuckC } from './heater-stuck.ts'
import type { Heating } from './heating.ts'
import type { SizingFigures } from './report.ts'
import type { Situation } from './situation.ts'
import { middle, over, round } from './span.ts'
import { waterChange } from './water-change-warmth.ts'

/**
 * What the heat balance gives to others.
 *
 * Units: as the figures' names say. @example heatFigures(situation, heating).coldLossW // 148.9
 */
export function heatFigures(situation: Situation, heating: Heating): SizingFigures {
  const { conditions } = situation
  const { targetC } = conditions.livestock
  const coldLossW = Math.max(0, over(heating.cold, ({ loss }) => lossW(loss, targetC)).high)
  const usualW = Math.max(0, middle(over(heating.usual, ({ loss }) => lossW(loss, targetC))))
  const { litres } = evaporationOf(situation, heating)
  return {
    coldLossW: round(coldLossW, 1),
    usualLossW: round(usualW, 1),
    evaporationLPerDay: { low: round(litres.low, 2), high: round(litres.high, 2) },
    ...adviceFigure(situation, heating),
    ...heaterFigures(situation, heating, coldLossW),
  }
}

/** How many heaters of what power, whatever the build has; nothing where the animals need none or no power is safe. */
function adviceFigure(situation: Situation, heating: Heating): Pick<SizingFigures, 'heaterAdvice'> {
  const bareC = over(heating.cold, ({ loss }) => equilibriumC(loss, 0)).low
  if (bareC >= situation.conditions.livestock.lowestC) return {}
  const heaterAdvice = heaterChoice(situation, heating, { check: 'heater_holds', worst: 'does_not_fit' })
  return heaterAdvice ? { heaterAdvice } : {}
}

/** Of the heaters that the build has; nothing where it has none or a power is not stated. */
function heaterFigures(situation: Situation, heating: Heating, coldLossW: number): SizingFigures {
  if (heating.powerUnstated.length > 0) return {}
  const figures: SizingFigures = { heaterPowerW: round(heating.installedW.high, 0) }
  const [first, ...others] = heating.heaters
  if (!first) return figures
  const strongest = others.reduce((best, each) => (best.powerW.high >= each.powerW.high ? best : each), first)
  const stuckHours = hoursToDanger(situation, heating, strongest)
  const heatLostHours = powerCutHours(heating, situation.conditions.livestock)
  const { mixedC, hours } = waterChange(situation, heating)
  return {
    ...figures,
    stuckTemperatureC: stuckC(heating, 'high', strongest).value,
    ...(stuckHours === undefined ? {} : { stuckHours: round(stuckHours, 1) }),
    oneFailedC: oneFailedC(heating, 'low').value,
    ...(heatLostHours === undefined ? {} : { heatLostHours: round(heatLostHours, 1) }),
    // Of the whole watts that are told beside it.
    heaterDutyPercent: round((100 * Math.round(coldLossW)) / heating.installedW.low, 0),
    waterChange: { mixedC: round(mixedC, 1), ...(hours === undefined ? {} : { hours: round(hours, 1) }) },
  }
}
