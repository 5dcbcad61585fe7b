import { deliveryOf } from '../sizing/filter-delivery.ts'
import { tankWater, waterSpan } from '../sizing/filter-flow.ts'
import type { Check, Finding } from '../sizing/finding.ts'
import { heatingOf } from '../sizing/heating.ts'
import type { SizingSubject } from '../sizing/report.ts'
import { situationOf, type Situation } from '../sizing/situation.ts'
import { stockFeed } from '../sizing/stock-feed.ts'
import { NITRATE_MG_L, weekOf } from '../sizing/weekly-change.ts'
import { fine, phrase, quantity, stated, type Phrase, type Quantity } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { workedDuty, workedHeat } from './worked-heat.ts'

type Worked = (situation: Situation, finding: Finding) => ExplainedInput[]

const line = (name: string, value: Phrase): ExplainedInput => ({ name, value, from: 'reckoned' })
/** No tank is turned over more often; beyond it a stated figure is wrong, and no digits make a sum of it. Own. */
const MOST_TURNS = 1000

/** Flow over water, each so fine that the quotient comes out to its tenth, in gallons too: a tenth for any tank, more for a glass under a pump. */
function turnsOver(flowLph: number, waterL: number, value: Quantity): Phrase {
  const digits = (share: number): number => Math.max(1, Math.ceil(Math.log10(share)))
  const flow = fine(stated(flowLph, 'L/h', digits(20 / waterL)))
  return phrase`${flow} ÷ ${fine(stated(waterL, 'L', digits((50 * flowLph) / waterL ** 2)))} = ${value}`
}

const kilograms = (value: number): Quantity => fine(stated(value, 'kg', 1))

/** Sums, products and quotients of a check with their figures in; whoever takes what is printed comes to what is printed. */
const WORKED: Partial<Record<Check, Worked>> = {
  stand_load: ({ corners }) => {
    const heaviest = corners.toSorted((a, b) => b.mass.brimKg - a.mass.brimKg)[0]
    if (heaviest === undefined) return []
    const { emptyKg, substrateKg, brimKg } = heaviest.mass
    const [tank, bed, water, all] = [emptyKg, substrateKg, brimKg - emptyKg - substrateKg, brimKg].map(kilograms)
    const name = 'Mass to the rim, before it is told in whole kilograms'
    return tank && bed && water && all ? [line(name, phrase`${tank} of tank + ${bed} of substrate + ${water} of water = ${all}`)] : []
  },
  heater_holds: (situation, { value, limit }) => {
    if (value?.unit === 'degC') return []
    const { installedW } = heatingOf(situation)
    const duty = limit?.kind === 'at_least' ? workedDuty(limit.low.value, installedW.low) : []
    return [...workedHeat(situation), ...duty]
  },
  filter_flow: (situation, { value }) => {
    const delivery = deliveryOf(situation)
    if (delivery === undefined || value === undefined || value.value > MOST_TURNS) return []
    return [
      line(
        delivery.lifts ? 'Turnover at worst' : 'Turnover, loaded media',
        turnsOver(delivery.loaded.low, waterSpan(situation).high, value),
      ),
    ]
  },
  flow_ceiling: (situation, { value }) => {
    const delivery = deliveryOf(situation)
    if (delivery === undefined || value === undefined || value.value > MOST_TURNS) return []
    return [
      line(
        `Turnover of the tank, ${delivery.lifts ? 'at best' : 'clean media'}`,
        turnsOver(delivery.clean.high, tankWater(situation).low, value),
      ),
    ]
  },
  weekly_change: (situation, { value }) => {
    const { nitrateMgL } = weekOf(stockFeed(situation).grams.high, waterSpan(situation).low)
    const held = NITRATE_MG_L[situation.conditions.livestock.water]
    return value === undefined
      ? []
      : [line('Share to change a week', phrase`${quantity(nitrateMgL, 'mg/L', 1)} ÷ ${quantity(held, 'mg/L', 0)} = ${value}`)]
  },
}

/**
 * How a finding's figures come out of one another, a line each. Empty for a check that has no such line, and without a tank.
 *
 * Units: the reader's where they cancel or add; else the same for everybody. Errors: none.
 *
 * @example workedOf(weeklyChange, subject) // [{ name: 'Share to change a week', value: '9.7 mg/L ÷ 40 mg/L = 24 %', from: 'reckoned' }]
 */
export function workedOf(finding: Finding, subject: SizingSubject): ExplainedInput[] {
  const worked = WORKED[finding.check]
  if (worked === undefined) return []
  const situation = situationOf(subject)
  return situation.ok ? worked(situation.value, finding) : []
}
