import type { Finding } from '../sizing/finding.ts'
import { equilibriumC } from '../sizing/equilibrium.ts'
import { evaporationLPerDay, lossW, vapourLossW, type HeatLoss } from '../sizing/heat-loss.ts'
import { heatingOf, type ThermalCase } from '../sizing/heating.ts'
import { appliancesOf } from '../sizing/appliances.ts'
import type { Situation } from '../sizing/situation.ts'
import { phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import { latentHeatKjKg } from '../water/latent-heat.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { lastDigitOf, line, plain } from './worked-line.ts'

/** Thousands of seconds in a day: kilojoules a day over it are watts. */
const KILOSECONDS_PER_DAY = 86.4
/** Watts are told to their tenth. */
const DIGITS = 1
/** A balance is told to the tenth of a degree: farther from the told one, another reckoning made it. */
const NEAR_K = 0.0501

const watts = (value: number) => quantity(value, 'W', DIGITS)
const to = (factor: number, result: number): number => digitsFor(factor, result, lastDigitOf(DIGITS))

/** What is put into the water, and its name. */
interface Source {
  w: number
  name: string
}

/** The heat put in, and at the temperature that was found for it what is lost, dry and with vapour. */
function balanced(loss: HeatLoss, heat: readonly Source[], value: Finding['value']): ExplainedInput[] {
  const inW = heat.reduce((sum, { w }) => sum + w, 0)
  const waterC = equilibriumC(loss, inW)
  const byK = waterC - loss.roomC
  if (value === undefined || inW <= 0 || byK <= 0 || Math.abs(waterC - value.value) > NEAR_K || Math.abs(lossW(loss, waterC) - inW) > 0.01)
    return []
  const parts = heat.filter(({ w }) => w > 0)
  const sources = parts.flatMap(({ w, name }, index): Phrase =>
    index === 0 ? phrase`${watts(w)} ${name}` : phrase` + ${watts(w)} ${name}`,
  )
  const [dryW, vapourW] = [loss.dryWPerK * byK, vapourLossW(loss, waterC)]
  const [litres, latent] = [evaporationLPerDay(loss, waterC), latentHeatKjKg(waterC)]
  const dry = phrase`${plain(loss.dryWPerK, to(loss.dryWPerK, dryW))} W/K × ${plain(byK, to(byK, dryW))} K = ${watts(dryW)}`
  const vapour = phrase`${plain(litres, to(litres, vapourW))} L a day × ${plain(latent, to(latent, vapourW))} kJ a litre ÷ ${plain(KILOSECONDS_PER_DAY, 1)} = ${watts(vapourW)}`
  return [
    line('Heat put in', parts.length > 1 ? phrase`${sources} = ${watts(inW)}` : phrase`${sources}`),
    line('Found by trying until as much is lost', phrase`${value}, in a room of ${stated(loss.roomC, 'degC', 1)}`),
    line('Lost there through panes and surface', dry),
    ...(vapourW > 0 ? [line('Lost there with what evaporates', vapour)] : []),
    ...(vapourW > 0 ? [line('Heat lost, in all', phrase`${watts(dryW)} + ${watts(vapourW)} = ${watts(inW)}`)] : []),
  ]
}

/** The loss that comes out coldest, or hottest, of those that the stated figures allow. */
const lossAt = (cases: readonly ThermalCase[], inW: number, end: 'coldest' | 'hottest'): HeatLoss | undefined => {
  const sorted = cases.toSorted((a, b) => equilibriumC(a.loss, inW) - equilibriumC(b.loss, inW))
  return sorted.at(end === 'coldest' ? 0 : -1)?.loss
}

/**
 * The balance with the strongest heater stuck on, in the warmest room.
 *
 * Units: W/K, K, W and L in every reader's units: they multiply. Source: as `heaterStuck`; empty where a controller cuts off instead.
 *
 * @example workedStuck(situation, stuck)[0] // { name: 'Heat put in', value: '200.0 W from the heater + 44.0 W from pumps and lamps = 244.0 W', from: 'reckoned' }
 */
export function workedStuck(situation: Situation, { value, assumed }: Finding): ExplainedInput[] {
  const { heaters, applianceHeatW, warm } = heatingOf(situation)
  if (assumed.includes('cut-off of the controller')) return []
  const heaterW = Math.max(0, ...heaters.filter((each) => !each.externalController).map(({ powerW }) => powerW.high))
  const loss = lossAt(warm, heaterW + applianceHeatW.high, 'hottest')
  const heat = [
    { w: heaterW, name: 'from the heater' },
    { w: applianceHeatW.high, name: 'from pumps and lamps' },
  ]
  return loss ? balanced(loss, heat, value) : []
}

/** The balance without the strongest heater, in the coldest room; empty where thermostats hold the target. Units and source as `workedStuck`. */
export function workedSpare(situation: Situation, { value }: Finding): ExplainedInput[] {
  const { heaters, installedW, cold } = heatingOf(situation)
  const leftW = Math.max(0, installedW.low - Math.max(0, ...heaters.map(({ powerW }) => powerW.low)))
  const loss = lossAt(cold, leftW, 'coldest')
  return loss ? balanced(loss, [{ w: leftW, name: 'from the heaters that are left' }], value) : []
}

/** The balance of pumps and lamps in the warmest room, without a chiller. Units and source as `workedStuck`. */
export function workedWarmRoom(situation: Situation, { value }: Finding): ExplainedInput[] {
  const { applianceHeatW, warmUsual } = heatingOf(situation)
  const loss = lossAt(warmUsual, applianceHeatW.high, 'hottest')
  const isCooled = appliancesOf(situation.gear).some(({ kind }) => kind === 'chiller')
  return loss && !isCooled ? balanced(loss, [{ w: applianceHeatW.high, name: 'from pumps and lamps' }], value) : []
}
