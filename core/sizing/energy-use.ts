import { runningAppliances } from './appliances.ts'
import { ALWAYS, drawnOf, energyPerYear } from './energy.ts'
import { chillerYear, heaterYear } from './heater-year.ts'
import { filterPowerW, heatingOf, lightPowerW } from './heating.ts'
import type { SizingFigures, SizingReport, SizingSubject } from './report.ts'
import { situationOf } from './situation.ts'

/**
 * What a build uses in a year, appliance by appliance, and what that costs. Undefined without a tank that holds water, for the heater's year hangs on it.
 *
 * Units:  as `energyPerYear`. Source: the heat balance over a year of rooms, and arithmetic.
 *
 * @example energyUse(subject)?.items[0] // { what: 'Heater', kwhPerYear: 545.7, … }
 */
export function energyUse(subject: SizingSubject): SizingFigures['energy'] {
  const result = situationOf(subject)
  if (!result.ok) return undefined
  const situation = result.value
  const { lightHoursPerDay, energyPriceMinor } = situation.conditions
  const heating = heatingOf(situation)
  const chiller = chillerYear(situation, heating)
  return energyPerYear(
    [
      { what: 'Heater', ...heaterYear(situation, heating), hoursPerDay: ALWAYS },
      drawnOf('Filter', filterPowerW(situation), ALWAYS),
      drawnOf('Light', lightPowerW(situation, situation.tank.lengthMm), lightHoursPerDay),
      ...runningAppliances(situation.gear, lightHoursPerDay),
      ...(chiller ? [{ what: 'Chiller', ...chiller, hoursPerDay: ALWAYS }] : []),
    ],
    energyPriceMinor,
  )
}

/**
 * A report with its year of energy: as paper tells it and the interface answers it. The desk shows none, and no keystroke waits for it.
 *
 * @example withEnergy(subject, sizingReport(subject)).figures.energy?.kwhPerYear // 867
 */
export function withEnergy<Report extends SizingReport>(subject: SizingSubject, report: Report): Report {
  const energy = energyUse(subject)
  return energy ? { ...report, figures: { ...report.figures, energy } } : report
}
