import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Conditions } from './conditions.ts'
import { dailyLight } from './daily-light.ts'
import type { Action, Finding, Verdict } from './finding.ts'
import type { BedLight } from './light-at-bed.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import type { Span } from './span.ts'
import { assumedOf } from './words.ts'

/** µmol/m²s at the substrate by kind of plants. Common practice; for the undemanding and for none the upper mark guards against algae. */
export const PLANT_LIGHT: Record<Conditions['plants'], Span> = {
  none: { low: 0, high: 60 },
  low: { low: 15, high: 30 },
  medium: { low: 30, high: 60 },
  high: { low: 60, high: 120 },
}
/** Hours a day beyond which light feeds algae rather than plants: 8 to 10 once plants grow, a little more for the demanding. Common practice. */
const LONGEST_DAY_H: Record<Conditions['plants'], number> = { none: 10, low: 10, medium: 10, high: 12 }
/** The bright end may pass the upper mark by this share: the mark is a habit, and the bright end is the clearest water under the lowest light. Own. */
const BRIGHT_BAND = 0.25
const CLARITY = 'clarity of the water and height of the light'

/** A reading of the light: two marginal readings on opposite sides of the band are no agreement. */
type Reading = 'dark' | 'darkish' | 'good' | 'bright'
const VERDICT_OF: Record<Reading, Verdict> = { dark: 'does_not_fit', darkish: 'marginal', good: 'fits', bright: 'marginal' }

function read(light: Span, mark: Span, dimmable: boolean): Reading {
  if (light.high < mark.low) return 'dark'
  if (light.low < mark.low) return 'darkish'
  return dimmable || (light.low <= mark.high && light.high <= mark.high * (1 + BRIGHT_BAND)) ? 'good' : 'bright'
}

const level = (value: number) => quantity(value, 'umol/m2/s', 0)
const bandOf = ({ low, high }: Span) => ({ kind: 'between', low: level(low), high: level(high) }) as const
const round = ({ low, high }: Span): Span => ({ low: Math.round(low), high: Math.round(high) })
const allDim = ({ lights }: Situation['gear']): boolean => lights.every(({ spec }) => spec.dimmable === true)

/**
 * Share to which the lights are dimmed before they are judged; 1 where one of them cannot be, where none needs it, and where what is not stated decides.
 *
 * Source: own; the bands of `PLANT_LIGHT`.
 *
 * @example dimmedShare(situation, light) // 0.57: plants of medium light under twice what they use
 */
export function dimmedShare({ conditions, gear }: Situation, light: BedLight): number {
  const mark = PLANT_LIGHT[conditions.plants]
  const [dim, bright] = [round(light.dim), round(light.bright)]
  return allDim(gear) && read(dim, mark, true) === read(bright, mark, true) ? dimmingShare(dim, mark) : 1
}

/**
 * Whether the light at the substrate suits the plants.
 *
 * Value: the dark end in µmol/m²s. Limit: the band of the plants. Too bright is *marginal* at worst, and *fits* where the light can be dimmed.
 *
 * @example lightLevel(situation, light)?.value // 33 µmol/m²s, where plants of medium light want 30 to 60
 */
export function lightLevel(situation: Situation, light: BedLight | undefined): Finding | null {
  const { conditions, gear } = situation
  const mark = PLANT_LIGHT[conditions.plants]
  const defaults = assumedOf(conditions, ['plants', 'waterBelowRimMm', 'substrateDepthMm', 'lightHoursPerDay'])
  if (!light) return conditions.plants === 'none' || gear.notNeeded['light'] !== undefined ? null : noLight(mark, defaults)
  const dimmable = allDim(gear)
  const [dim, bright] = [round(light.dim), round(light.bright)]
  const [worst, best] = [read(dim, mark, dimmable), read(bright, mark, dimmable)]
  const unstated = light.fluxUnstated ? [coloured(situation) ? 'photon flux of the light' : 'lumens or photon flux of the light'] : []
  const rest = namesOf(defaults, [CLARITY])
  const outcome =
    worst === best
      ? settled(VERDICT_OF[worst], VERDICT_OF[best], unstated, rest)
      : { verdict: 'not_known' as const, assumed: rest, missing: unstated }
  const known = outcome.verdict !== 'not_known'
  const long = outcome.verdict === 'fits' && conditions.lightHoursPerDay > LONGEST_DAY_H[conditions.plants]
  const dimTo = known ? dimmedShare(situation, light) : 1
  const shown = round({ low: dim.low * dimTo, high: bright.high * dimTo })
  return makeFinding('light_level', {
    ...outcome,
    ...(long ? { verdict: 'marginal' } : {}),
    ...(known ? { value: level(worst === 'bright' ? shown.high : shown.low) } : {}),
    limit: bandOf(mark),
    reason: phrase`${reasonOf(conditions.plants, shown, mark, dimTo)}${overDay(shown, conditions.lightHoursPerDay)}${caveats(situation, long)}`,
    action:
      outcome.verdict === 'fits'
        ? long
          ? { text: phrase`Set the timer to ${quantity(LONGEST_DAY_H[conditions.plants], 'h', 0)} a day or less.` }
          : null
        : known
          ? actionOf(dim, mark, light)
          : {
              text: phrase`Enter the light's ${coloured(situation) ? 'photon flux: lumens tell nothing of coloured light' : 'lumens or its photon flux'}.`,
            },
  })
}

/** A light of colours whose maker states no photon flux. */
const coloured = ({ gear }: Situation): boolean =>
  gear.lights.some(({ spec }) => spec.spectrum === 'coloured' && spec.photonFluxUmolS === undefined)

/** What else decides about algae: hours, and food for plants that are given much light; and what lumens leave out. */
function caveats({ gear, conditions }: Situation, long: boolean): Phrase {
  const hours = long ? phrase` So many hours feed algae.` : phrase``
  const fed = (gear.appliances ?? []).some(({ kind }) => kind === 'co2')
  const food =
    conditions.plants === 'high' && !fed ? phrase` Without carbon dioxide and fertiliser, light that strong feeds algae.` : phrase``
  const lumens = gear.lights.some(({ spec }) => spec.photonFluxUmolS === undefined)
    ? phrase` Reckoned for white light without lenses; a maker's photon flux would be nearer.`
    : phrase``
  return phrase`${hours}${food}${lumens}`
}

/** Share to which a dimmer is turned so that the bright end meets the upper mark, or the dark end the lower one if that is more. */
function dimmingShare(light: Span, mark: Span): number {
  if (light.high <= mark.high || light.low <= 0) return 1
  return Math.min(1, Math.max(mark.high / light.high, mark.low / light.low))
}

function reasonOf(plants: Conditions['plants'], shown: Span, mark: Span, dimTo: number): Phrase {
  const range = ({ low, high }: Span) => phrase`${quantity(low, 'count', 0)} to ${level(high)}`
  const reach = phrase`${range(shown)} reach the substrate`
  const begin = dimTo < 1 ? phrase`Dimmed to about ${quantity(100 * dimTo, 'percent', 0)}, ${reach}` : reach
  return plants === 'none'
    ? phrase`${begin}; without plants more than ${level(mark.high)} feeds algae.`
    : phrase`${begin}; these plants want ${range(mark)}.`
}

/** What a day's hours make of it; nothing where the light stays off. */
function overDay({ low, high }: Span, hours: number): Phrase {
  if (hours === 0) return phrase``
  const day = (value: number) => dailyLight(value, hours)
  return phrase` Over ${quantity(hours, 'h', Number.isInteger(hours) ? 0 : 1)} that is ${quantity(day(low), 'count', 1)} to ${quantity(day(high), 'mol/m2/day', 1)}.`
}

function actionOf(light: Span, mark: Span, bed: BedLight): Action {
  if (light.low >= mark.low) return { text: phrase`Shorten the hours, raise the light, or dim it: more light than plants use feeds algae.` }
  const lumens = Math.ceil(mark.low / bed.perLumenLow / 100) * 100
  return {
    text: phrase`Choose plants for less light, or a light of at least ${quantity(lumens, 'lm', 0)}.`,
    want: { slot: 'light', quantity: 1, minimum: { luminousFluxLm: lumens } },
  }
}

function noLight(mark: Span, assumed: string[]): Finding {
  return makeFinding('light_level', {
    verdict: 'does_not_fit',
    limit: bandOf(mark),
    reason: phrase`No light is chosen; these plants want ${level(mark.low)} to ${level(mark.high)} at the substrate.`,
    action: { text: phrase`Choose a light.`, want: { slot: 'light', quantity: 1, minimum: {} } },
    assumed,
  })
}
