import type { Finding } from '../sizing/finding.ts'
import { lightAtBed } from '../sizing/light-at-bed.ts'
import { photonFlux } from '../sizing/light-at-depth.ts'
import { dimmedShare } from '../sizing/light-level.ts'
import type { Situation } from '../sizing/situation.ts'
import { MM_PER_INCH } from '../units/factors.ts'
import { fine, phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { line, plain } from './worked-line.ts'

const PERCENT = 0.01
const WHOLE = 1
/** No lamp lights water a hundred thousand times as strongly as the sun's noon; beyond it a stated figure is wrong. Own. */
const MOST_LIGHT = 1e5

/**
 * Light of each lamp at the substrate, dimmed where it is dimmed, and together. What of its light arrives, through air, lid and water, is integrated over the
 * whole surface.
 *
 * Units: µmol/m²s for everybody. Source: as `lightAtBed`.
 *
 * @example workedLight(situation, level)[0] // { name: 'Light at the substrate, dimmest', value: '… = 33 µmol/m²s', from: 'reckoned' }
 */
export function workedLight(situation: Situation, { value }: Finding): ExplainedInput[] {
  const light = lightAtBed(situation)
  if (light === undefined || value === undefined || light.bright.high > MOST_LIGHT) return []
  const dimTo = dimmedShare(situation, light)
  const isDark = Math.round(Math.round(light.dim.low) * dimTo) === value.value
  const bedUmol = Math.round(isDark ? light.dim.low : light.bright.high)
  const parts = situation.gear.lights.map(({ spec, quantity: count }, index) => ({
    flux: count * (photonFlux(spec)?.low ?? 0),
    umol: light.shares[index]?.low ?? 0,
  }))
  const known = isDark && parts.every(({ flux, umol }) => flux > 0 && umol > 0)
  const fluxes = parts.map(({ flux, umol }): Phrase => {
    const arrives = umol / flux
    return phrase`${plain(flux, digitsFor(flux, umol, WHOLE))} µmol/s × ${plain(arrives, digitsFor(arrives, umol, WHOLE))} a m²`
  })
  const sum = fluxes.flatMap((each, index): Phrase => (index === 0 ? each : phrase` + ${each}`))
  const bed = quantity(bedUmol, 'umol/m2/s', 0)
  const share = plain(dimTo, digitsFor(dimTo, value.value, WHOLE))
  return [
    ...(known
      ? [line('Least that leaves the lamps × what of it arrives on a m², integrated over the surface', phrase`${sum} = ${bed}`)]
      : []),
    ...(dimTo < 1 ? [line('Dimmed', phrase`${bed} × ${share} = ${value}`)] : []),
  ]
}

/** Length of light over length of tank. Units: the reader's; they cancel. */
export function workedCoverage({ gear, tank }: Situation, { value }: Finding): ExplainedInput[] {
  if (value === undefined) return []
  // The check rounds to whole millimetres; a light of 36 in is told as that.
  const coveredMm = gear.lights.map(({ spec }) => spec.lengthMm ?? Number.NaN).find((mm) => Math.round(mm) === value.value) ?? value.value
  const share = coveredMm / tank.lengthMm
  const side = (mm: number) => fine(stated(mm, 'mm', Math.max(1, digitsFor(mm / MM_PER_INCH, share, PERCENT))))
  return [line('Of the tank’s length', phrase`${side(coveredMm)} ÷ ${side(tank.lengthMm)} = ${quantity(100 * share, 'percent', 0)}`)]
}
