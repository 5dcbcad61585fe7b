import { runningAppliances } from './appliances.ts'
import { ALWAYS, drawnOf, energyPerYear } from './energy.ts'
import { chillerYear, heaterYear } from './heater-year.ts'
import { filterPowerW, lightPowerW, type Heating } from './heating.ts'
import type { SizingFigures } from './report.ts'
import type { Situation } from './situation.ts'

/**
 * What a build uses in a year, appliance by appliance, and what that costs.
 *
 * Units:  as `energyPerYear`. Source: the heat balance over a year of rooms, and arithmetic.
 *
 * @example energyUse(situation, heating).items[0] // { what: 'Heater', kwhPerYear: 545.7, … }
 */
export function energyUse(situation: Situation, heating: Heating): NonNullable<SizingFigures['energy']> {
  const { lightHoursPerDay, energyPriceMinor } = situation.conditions
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
