import { deliveryOf } from '../sizing/filter-delivery.ts'
import { tankWater, waterSpan } from '../sizing/filter-flow.ts'
import type { Check, Finding } from '../sizing/finding.ts'
import { heatingOf } from '../sizing/heating.ts'
import { boughtBedKg } from '../sizing/laden-bed.ts'
import type { SizingSubject } from '../sizing/report.ts'
import { situationOf, type Situation } from '../sizing/situation.ts'
import { isExact, type Span } from '../sizing/span.ts'
import { stockFeed } from '../sizing/stock-feed.ts'
import { NITRATE_MG_L, weekOf } from '../sizing/weekly-change.ts'
import { appliancesOf } from '../sizing/appliances.ts'
import { fine, phrase, quantity, stated, type Phrase, type Quantity } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { workedSpare, workedStuck, workedWarmRoom } from './worked-balance.ts'
import { workedDrain } from './worked-drain.ts'
import { workedFloor } from './worked-floor.ts'
import { workedDuty, workedHeat } from './worked-heat.ts'
import { workedCoverage, workedLight } from './worked-light.ts'
import { exact, line } from './worked-line.ts'
import { workedLoad } from './worked-load.ts'
import { workedPane } from './worked-pane.ts'
import { workedTipping } from './worked-tipping.ts'
import { workedBed, workedDose, workedFeed, workedSkimmer } from './worked-supplies.ts'
import { workedDrift, workedOxygen } from './worked-water.ts'

type Worked = (situation: Situation, finding: Finding) => ExplainedInput[]

/** No tank is turned over more often; beyond it a stated figure is wrong, and no digits make a sum of it. Own. */
const MOST_TURNS = 1000

/** Flow over water, each so fine that the quotient comes out to its tenth, in gallons too: a tenth for any tank, more for a glass under a pump. */
function turnsOver(flowLph: number, waterL: number, value: Quantity): Phrase {
  const digits = (share: number): number => Math.max(1, Math.ceil(Math.log10(share)))
  const flow = fine(stated(flowLph, 'L/h', digits(20 / waterL)))
  return phrase`${flow} ÷ ${fine(stated(waterL, 'L', digits((50 * flowLph) / waterL ** 2)))} = ${value}`
}

/** Named where nobody stated all that the water depends on: the two ends stand in two sums, and neither is the middle that is dosed. */
const endOf = (water: Span, end: 'most' | 'least'): string => (isExact(water) ? '' : `, ${end} water`)

/** Parts of a mass go a digit further than their sum, so that adding them up comes to it. */
const kilograms = (value: number, digits = 2): Quantity => exact(value, 'kg', digits)

/** Sums, products and quotients of a check with their figures in; whoever takes what is printed comes to what is printed. */
const WORKED: Partial<Record<Check, Worked>> = {
  stand_load: ({ corners, gear }) => {
    const heaviest = corners.toSorted((a, b) => b.mass.brimKg - a.mass.brimKg)[0]
    if (heaviest === undefined) return []
    const { emptyKg, substrateKg, brimKg } = heaviest.mass
    const [tank, bed, water] = [emptyKg, substrateKg, brimKg - emptyKg - substrateKg].map((part) => kilograms(part))
    const bought = Math.abs(substrateKg - (boughtBedKg(gear) ?? 0)) < 1e-6 ? ' as bought' : ''
    const name = 'Mass to the rim, before rounding'
    if (!tank || !bed || !water) return []
    return [line(name, phrase`${tank} of tank + ${bed} of substrate${bought} + ${water} of water = ${kilograms(brimKg, 1)}`)]
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
    const water = waterSpan(situation)
    const name = delivery.lifts ? 'Turnover at worst' : 'Turnover, loaded media'
    return [line(`${name}${endOf(water, 'most')}`, turnsOver(delivery.loaded.low, water.high, value))]
  },
  flow_ceiling: (situation, { value }) => {
    const delivery = deliveryOf(situation)
    if (delivery === undefined || value === undefined || value.value > MOST_TURNS) return []
    const water = tankWater(situation)
    const name = `Turnover of the tank, ${delivery.lifts ? 'at best' : 'clean media'}`
    return [line(`${name}${endOf(water, 'least')}`, turnsOver(delivery.clean.high, water.low, value))]
  },
  circulation: (situation, { value }) => {
    const pumpedLph = appliancesOf(situation.gear).reduce(
      (sum, { kind, spec, quantity: count }) => sum + (kind === 'circulation_pump' ? count * (spec.ratedFlowLph ?? 0) : 0),
      0,
    )
    const flowLph = pumpedLph + (deliveryOf(situation)?.loaded.low ?? 0)
    if (value === undefined || flowLph <= 0 || value.value > MOST_TURNS) return []
    const water = tankWater(situation)
    return [line(`Turnover, pumps and filters${endOf(water, 'most')}`, turnsOver(flowLph, water.high, value))]
  },
  glass_pane: workedPane,
  heater_stuck: workedStuck,
  heater_spare: workedSpare,
  warm_room: workedWarmRoom,
  light_level: workedLight,
  light_coverage: workedCoverage,
  surface_oxygen: workedOxygen,
  salinity_drift: workedDrift,
  drain_down: workedDrain,
  floor_load: workedFloor,
  tipping: workedTipping,
  conditioner_dose: workedDose,
  substrate_depth: workedBed,
  filter_feed: workedFeed,
  skimmer_size: workedSkimmer,
  weekly_change: (situation, { value }) => {
    const { nitrateMgL } = weekOf(stockFeed(situation).grams.high, waterSpan(situation).low)
    const held = NITRATE_MG_L[situation.conditions.livestock.water]
    return value === undefined
      ? []
      : [line('Share to change a week', phrase`${quantity(nitrateMgL, 'mg/L', 1)} ÷ ${quantity(held, 'mg/L', 0)} = ${value}`)]
  },
}

/**
 * How a finding's figures come out of one another, a line each. Empty for a check that has no such line, and without a tank for all but the watts.
 *
 * Units: the reader's where they cancel or add; else the same for everybody. Errors: none.
 *
 * @example workedOf(weeklyChange, subject) // [{ name: 'Share to change a week', value: '9.7 mg/L ÷ 40 mg/L = 24 %', from: 'reckoned' }]
 */
export function workedOf(finding: Finding, subject: SizingSubject): ExplainedInput[] {
  if (finding.check === 'electrical_load') return workedLoad(subject, finding)
  const worked = WORKED[finding.check]
  if (worked === undefined) return []
  const situation = situationOf(subject)
  return situation.ok ? worked(situation.value, finding) : []
}
