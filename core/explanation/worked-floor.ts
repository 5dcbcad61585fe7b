import { floorMassKg, standOn } from '../sizing/floor-load.ts'
import type { Finding } from '../sizing/finding.ts'
import { FREE_FALL } from '../sizing/glass-plate.ts'
import { joistsOf, onJoists, PERMANENT_LOAD_FACTOR, type JoistVerdict } from '../sizing/joist-floor.ts'
import { loadsOf } from '../sizing/joist-load.ts'
import type { Situation } from '../sizing/situation.ts'
import { over } from '../sizing/span.ts'
import { phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { exact, lastDigitOf, line, plain } from './worked-line.ts'

/** A hundredth of the allowance is the last digit that is told. */
const PERCENT = 0.01
/** No floor bears a hundred times its allowance; beyond it a stated figure is wrong, and no digits make a sum of it. Own. */
const MOST_RATIO = 100

/** Tank, sump and stand, that the floor bears. */
function massLine(situation: Situation): ExplainedInput[] {
  const totalKg = floorMassKg(situation)
  const tankKg = over(situation.corners, ({ mass }) => mass.brimKg).high
  const sumpKg = situation.sump?.fullKg ?? 0
  const standKg = totalKg - tankKg - sumpKg
  const sump = sumpKg > 0 ? phrase` + ${exact(sumpKg, 'kg', 2)} of sump` : phrase``
  const stand = situation.gear.stand ? phrase` + ${exact(standKg, 'kg', 2)} of stand` : phrase``
  if (sump.length + stand.length === 0) return []
  const tank = phrase`${exact(tankKg, 'kg', 2)} of full tank`
  return [line('Mass on the floor, before rounding', phrase`${tank}${sump}${stand} = ${exact(totalKg, 'kg', 1)}`)]
}

const AS_EVEN: Record<JoistVerdict['governs'], string> = {
  bending: 'Spread evenly, bends it as much',
  shear: 'Spread evenly, loads its end as much',
}

/** Its share of the load, what that is like when spread over it, and what it was designed for. */
function joistLines(massKg: number, { ratio, governs, sag, at }: JoistVerdict, told: Phrase): ExplainedInput[] {
  const onOneKg = loadsOf(at).reduce((sum, { newtons }) => sum + newtons, 0) / FREE_FALL
  const areaM2 = at.spacingM * at.spanM
  const livePerM2 = at.livePa / FREE_FALL
  const allowedKg = livePerM2 * areaM2 * PERMANENT_LOAD_FACTOR
  const evenKg = ratio * allowedKg
  const evenDigits = Math.max(1, digitsFor(evenKg, ratio, PERCENT))
  const allowedDigits = Math.max(1, digitsFor(allowedKg, ratio, PERCENT))
  const onOneDigits = Math.max(1, digitsFor(onOneKg, evenKg, lastDigitOf(evenDigits)))
  const [onOne, even, allowed] = [exact(onOneKg, 'kg', onOneDigits), exact(evenKg, 'kg', evenDigits), exact(allowedKg, 'kg', allowedDigits)]
  const forOnOne = (factor: number): number => digitsFor(factor, onOneKg, lastDigitOf(onOneDigits))
  const forAllowed = (factor: number): number => digitsFor(factor, allowedKg, lastDigitOf(allowedDigits))
  const [share, factor] = [onOneKg / massKg, evenKg / onOneKg]
  const load = phrase`${exact(massKg, 'kg', forOnOne(massKg))} × ${plain(share, forOnOne(share))}`
  const designed = phrase`${stated(livePerM2, 'kg/m2', forAllowed(livePerM2))} × ${stated(areaM2, 'm2', forAllowed(areaM2))}`
  return [
    line('On the worst joist', phrase`${load} = ${onOne}`),
    line(AS_EVEN[governs], phrase`${onOne} × ${plain(factor, digitsFor(factor, evenKg, lastDigitOf(evenDigits)))} = ${even}`),
    line('Allowed as a lasting load, on its area', phrase`${designed} × ${plain(PERMANENT_LOAD_FACTOR, 1)} = ${allowed}`),
    line('Of what it allows', phrase`${even} ÷ ${allowed} = ${told}`),
    line('Sag, of the sag that it was designed for', phrase`${quantity(sag * 100, 'percent', 0)}`),
  ]
}

/**
 * What the floor bears: the masses together and, where the joists are measured, the worst one's share of them against what it was designed for, in bending or in shear,
 * whichever is told.
 *
 * Units: the reader's; pounds and square feet cancel as kilograms and square metres do. Source: as `joistLoad`; an even load q over the span bends by q·l²/8 and presses
 * on either end with half of itself.
 *
 * @example workedFloor(situation, floor)[2] // { name: 'Spread evenly, bends it as much', value: '219.3 lb × 1.8 = 394.7 lb', from: 'reckoned' }
 */
export function workedFloor(situation: Situation, { value }: Finding): ExplainedInput[] {
  const joists = joistsOf(situation.conditions)
  if (value?.unit !== 'percent' || joists === null) return massLine(situation)
  const massKg = floorMassKg(situation)
  const worst = onJoists(standOn(situation, massKg), joists)
  return worst.ratio > MOST_RATIO ? massLine(situation) : [...massLine(situation), ...joistLines(massKg, worst, phrase`${value}`)]
}
