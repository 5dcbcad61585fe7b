import { judgeAll } from './cords.ts'
import type { Inspected } from './engine.ts'
import { deliveryOf } from './filter-delivery.ts'
import { energyUse } from './energy-use.ts'
import { floorPlan } from './floor-plan.ts'
import { heatCurve } from './heat-curve.ts'
import { heatingOf } from './heating.ts'
import { lightAlong, litOf } from './light-along.ts'
import { pumpCurve } from './pump-curve.ts'
import type { SizingFigures, SizingReport, SizingSubject } from './report.ts'
import { situationOf } from './situation.ts'
import { toldFigures } from './told-figures.ts'

/** What is reckoned only where somebody looks. */
function readIn(inspected: Inspected): SizingFigures {
  const { situation, heating, lit, delivery } = inspected
  const { bed, lies } = lit
  const along = bed && !bed.fluxUnstated ? lightAlong(situation, bed, lies) : undefined
  const plan = floorPlan(situation)
  return {
    ...toldFigures(inspected),
    heatCurve: heatCurve(situation, heating),
    ...(delivery?.strongest ? { pumpCurve: pumpCurve(delivery.strongest, situation) } : {}),
    ...(along ? { lightAlong: along } : {}),
    ...(plan ? { floorPlan: plan } : {}),
  }
}

function inspectedIn(subject: SizingSubject): Inspected | null {
  const result = situationOf(subject)
  if (!result.ok) return null
  const situation = result.value
  return {
    situation,
    heating: heatingOf(situation),
    lit: litOf(situation),
    delivery: deliveryOf(situation),
    cords: judgeAll(situation),
  }
}

/**
 * Figures that plots and answers alone take: reckoned where somebody looks. None without a tank that holds water.
 *
 * Units: as the figures' names say. @example drawnFigures(subject).heatCurve?.points.length // 13
 */
export function drawnFigures(subject: SizingSubject): SizingFigures {
  const inspected = inspectedIn(subject)
  return inspected ? readIn(inspected) : {}
}

/**
 * A report with every figure there is, as it is issued and answered: with those that are read and drawn and the year of energy, for which nobody waits while
 * parts are being chosen. `inspected` is what the report of this subject was found from, where it is at hand: it spares the reckoning.
 *
 * Units: as the figures' names say. @example withAllFigures(subject, sizingReport(subject)).figures.energy?.kwhPerYear // 867
 */
export function withAllFigures<Report extends SizingReport>(
  subject: SizingSubject,
  report: Report,
  inspected: Inspected | null = inspectedIn(subject),
): Report {
  if (!inspected) return report
  const { situation, heating } = inspected
  return { ...report, figures: { ...report.figures, ...readIn(inspected), energy: energyUse(situation, heating) } }
}
