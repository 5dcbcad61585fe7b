import { deliveryOf } from './filter-delivery.ts'
import { energyUse } from './energy-use.ts'
import { floorPlan } from './floor-plan.ts'
import { heatCurve } from './heat-curve.ts'
import { heatingOf, type Heating } from './heating.ts'
import { lightAlong, litOf } from './light-along.ts'
import { pumpCurve } from './pump-curve.ts'
import type { SizingFigures, SizingReport, SizingSubject } from './report.ts'
import { situationOf, type Situation } from './situation.ts'
import { toldFigures } from './told-figures.ts'

/** What is reckoned only where somebody looks. */
function readIn(situation: Situation, heating: Heating): SizingFigures {
  const [lit, delivery] = [litOf(situation), deliveryOf(situation)]
  const { bed, lies } = lit
  const along = bed && !bed.fluxUnstated ? lightAlong(situation, bed, lies) : undefined
  const plan = floorPlan(situation)
  return {
    ...toldFigures(situation, heating, lit, delivery),
    heatCurve: heatCurve(situation, heating),
    ...(delivery?.strongest ? { pumpCurve: pumpCurve(delivery.strongest, situation) } : {}),
    ...(along ? { lightAlong: along } : {}),
    ...(plan ? { floorPlan: plan } : {}),
  }
}

/**
 * Figures that plots and answers alone take: reckoned where somebody looks. None without a tank that holds water.
 *
 * Units: as the figures' names say. @example drawnFigures(subject).heatCurve?.points.length // 13
 */
export function drawnFigures(subject: SizingSubject): SizingFigures {
  const result = situationOf(subject)
  return result.ok ? readIn(result.value, heatingOf(result.value)) : {}
}

/**
 * A report with every figure there is, as it is issued and answered: with those that are read and drawn and the year of energy, for which nobody waits while
 * parts are being chosen.
 *
 * Units: as the figures' names say. @example withAllFigures(subject, sizingReport(subject)).figures.energy?.kwhPerYear // 867
 */
export function withAllFigures<Report extends SizingReport>(subject: SizingSubject, report: Report): Report {
  const result = situationOf(subject)
  if (!result.ok) return report
  const heating = heatingOf(result.value)
  const more = { ...readIn(result.value, heating), energy: energyUse(result.value, heating) }
  return { ...report, figures: { ...report.figures, ...more } }
}
