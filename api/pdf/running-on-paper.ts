import { sayWholeMoney } from '../../core/money.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { sayUnitPrice } from '../../core/unit-price.ts'
import { quantity } from '../../core/units/quantity.ts'
import type { RunningPaper } from './paper.ts'
import type { Teller } from './teller.ts'

/** What each build uses in a year, item by item; null where no build's figures are known. */
export function runningCosts({ builds, conditions, inputs }: RevisionDocument, teller: Teller): RunningPaper | null {
  const energies = builds.map((build) => build.report.figures.energy)
  if (energies.every((energy) => energy === undefined)) return null
  const whats = [...new Set(energies.flatMap((energy) => energy?.items.map((item) => item.what) ?? []))]
  const kwh = (value: number | undefined): string =>
    value === undefined ? '' : teller.quantity(quantity(value, 'kWh/year', 0)).replace(/ kWh.*$/, '')
  return {
    letters: builds.map((build) => build.letter),
    rows: whats.map((what) => ({
      what,
      cells: energies.map((energy) => kwh(energy?.items.find((item) => item.what === what)?.kwhPerYear)),
    })),
    energy: energies.map((energy) => (energy === undefined ? 'not known' : kwh(energy.kwhPerYear))),
    cost: energies.map((energy) =>
      energy === undefined ? 'not known' : `about ${sayWholeMoney(Math.round(energy.costMinorPerYear), inputs.install.currency)}`,
    ),
    note: `At ${sayUnitPrice(conditions.energyPriceMinor, inputs.install.currency)} a kilowatt hour${conditions.assumed.includes('energyPriceMinor') ? ' (assumed)' : ''}, rooms as told on page one. Water, food and conditioner are not counted.`,
  }
}
