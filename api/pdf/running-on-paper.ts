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
  const kwh = (value: number): string => teller.quantity(quantity(value, 'kWh/year', 0)).replace(/ kWh.*$/, '')
  const told = (use: Use | undefined): string => (use === undefined ? '' : fromTo(kwh(lowOf(use)), kwh(highOf(use))))
  const money = (minor: number): string => `about ${sayWholeMoney(Math.round(minor), inputs.install.currency)}`
  return {
    letters: builds.map((build) => build.letter),
    rows: whats.map((what) => ({
      what,
      cells: energies.map((energy) => told(energy?.items.find((item) => item.what === what))),
    })),
    energy: energies.map((energy) => (energy === undefined ? 'not known' : told(inAll(energy.items)))),
    cost: energies.map((energy) =>
      energy === undefined
        ? 'not known'
        : fromTo(
            money(energy.lowCostMinorPerYear ?? energy.costMinorPerYear),
            money(energy.highCostMinorPerYear ?? energy.costMinorPerYear),
          ),
    ),
    note: `At ${sayUnitPrice(conditions.energyPriceMinor, inputs.install.currency)} a kilowatt hour${conditions.assumed.includes('energyPriceMinor') ? ' (assumed)' : ''}, a year of rooms as told on page one: from a room that keeps heat in to a dry one, pumps and lamps as stated. Water, food and conditioner are not counted.`,
  }
}

interface Use {
  kwhPerYear: number
  lowKwhPerYear?: number
  highKwhPerYear?: number
}
const lowOf = (use: Use): number => Math.round(use.lowKwhPerYear ?? use.kwhPerYear)
const highOf = (use: Use): number => Math.round(use.highKwhPerYear ?? use.kwhPerYear)

/** What the rows come to as they are printed. @example inAll([{ kwhPerYear: 175.4 }, { kwhPerYear: 75.4 }]) // { kwhPerYear: 250, … } */
const inAll = (items: readonly Use[]): Use => {
  const [low, high] = [lowOf, highOf].map((end) => items.reduce((sum, item) => sum + end(item), 0)) as [number, number]
  return { kwhPerYear: high, lowKwhPerYear: low, highKwhPerYear: high }
}

const NBSP = '\u00a0'

/** Two ends as one where they read the same; no line ends within. @example fromTo('175', '175') // '175' */
const fromTo = (low: string, high: string): string => (low === high ? low : `${low}${NBSP}to${NBSP}${high.replace(/^about /, '')}`)
