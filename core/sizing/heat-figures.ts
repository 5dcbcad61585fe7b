import { equilibriumC } from './equilibrium.ts'
import { lossW } from './heat-loss.ts'
import { heaterChoice } from './heater-choice.ts'
import type { Heating } from './heating.ts'
import type { SizingFigures } from './report.ts'
import type { Situation } from './situation.ts'
import { over, round } from './span.ts'

/** Loss of the coldest room at the high-loss end, W, unrounded. */
export const mostLossW = ({ conditions }: Situation, heating: Heating): number =>
  Math.max(0, over(heating.cold, ({ loss }) => lossW(loss, conditions.livestock.targetC)).high)

/**
 * What the heat balance gives to others while parts are chosen.
 *
 * Units: as the figures' names say. @example heatFigures(situation, heating).coldLossW // 148.9
 */
export function heatFigures(situation: Situation, heating: Heating): SizingFigures {
  return {
    coldLossW: round(mostLossW(situation, heating), 1),
    ...adviceFigure(situation, heating),
  }
}

/** How many heaters of what power, whatever the build has; nothing where the animals need none or no power is safe. */
function adviceFigure(situation: Situation, heating: Heating): Pick<SizingFigures, 'heaterAdvice'> {
  const bareC = over(heating.cold, ({ loss }) => equilibriumC(loss, 0)).low
  if (bareC >= situation.conditions.livestock.lowestC) return {}
  const heaterAdvice = heaterChoice(situation, heating, { check: 'heater_holds', worst: 'does_not_fit' })
  return heaterAdvice ? { heaterAdvice } : {}
}
