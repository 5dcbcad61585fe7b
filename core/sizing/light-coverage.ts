import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Action, Finding, Verdict } from './finding.ts'
import type { LightEven } from './light-along.ts'
import { makeFinding } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { assumedOf } from './words.ts'

/** Share of the tank's length that fixtures cover. Common practice: three quarters to all of it. */
const LEAST = 0.75
/** Below this the ends are dark whatever the light; between, plants at the ends grow slowly. Own. */
const DARK_ENDS = 0.6
const WHOLE = 1
/** Legs that reach over both rims take this much overhang. Common practice. */
const OVERHANG = 1.1
/** Plants before the front pane get less than this of the light in the middle: another row is due. Own. */
const DARK_FRONT = 0.6
const NEAR_FRONT = 0.15

/**
 * Whether the fixtures are long enough to light the ends, short enough to sit on the rim, and light the front of a planted tank too.
 *
 * Value: mm in all. Limit: 0.75 to 1.0 of the tank. A front with less than 0.6 of the light in the middle is *marginal* where plants are to grow.
 *
 * @example lightCoverage(situation, lies?.even)?.limit // 914 to 1219 mm over a tank of 1219 mm
 */
export function lightCoverage({ gear, tank, conditions }: Situation, even: LightEven | undefined): Finding | null {
  if (gear.lights.length === 0) return null
  const low = quantity(LEAST * tank.lengthMm, 'mm', 0)
  const limit = { kind: 'between', low, high: quantity(tank.lengthMm, 'mm', 0) } as const
  const coveredMm = coveredOf(gear.lights, low.value, tank.lengthMm)
  if (coveredMm === undefined) {
    return makeFinding('light_coverage', {
      verdict: 'not_known',
      limit,
      reason: phrase`The length of the light is not stated; it should cover at least ${low}.`,
      action: { text: phrase`Enter the light's length.` },
      missing: ['length of the light'],
    })
  }
  const value = quantity(coveredMm, 'mm', 0)
  const byLength = judge(value.value, tank.lengthMm)
  const dim = even !== undefined && even.frontShare < DARK_FRONT
  // So near the mark, another depth of bed or water would turn it.
  const near = even !== undefined && Math.abs(even.frontShare - DARK_FRONT) < NEAR_FRONT
  const darkFront = dim && conditions.plants !== 'none'
  const short = value.value < low.value
  const sits = short
    ? phrase`${value} of light over ${limit.high} of tank leaves the ends dark.`
    : value.value > limit.high.value
      ? phrase`The light is ${value} long and the tank ${limit.high}: it stands over.`
      : phrase`${value} of light over ${limit.high} of tank.`
  return makeFinding('light_coverage', {
    verdict: darkFront && byLength === 'fits' ? 'marginal' : byLength,
    value,
    limit,
    reason: phrase`${sits}${evenWords(even)}${darkFront ? ' Plants at the front grow slowly.' : ''}`,
    action: byLength === 'fits' && !darkFront ? null : actionOf(byLength, short, low.value),
    assumed:
      byLength === 'fits'
        ? assumedOf(conditions, [
            ...(dim || near ? (['plants'] as const) : []),
            ...(near ? (['substrateDepthMm', 'waterBelowRimMm'] as const) : []),
          ])
        : [],
  })
}

/** The longest fixture, or several shorter ones in line, mm; undefined where a length is not stated. */
function coveredOf(lights: Situation['gear']['lights'], enoughMm: number, tankMm: number): number | undefined {
  let [longest, inLine] = [0, 0]
  for (const { spec, quantity: count } of lights) {
    if (spec.lengthMm === undefined) return undefined
    longest = Math.max(longest, spec.lengthMm)
    inLine += spec.lengthMm * count
  }
  return longest >= enoughMm ? longest : Math.min(inLine, tankMm)
}

/** How even it is: ends and front against the middle. */
function evenWords(even: LightEven | undefined): Phrase {
  if (!even) return phrase``
  const share = (of: number) => quantity(100 * of, 'percent', 0)
  return phrase` Before the end panes it gives ${share(even.endsShare)} of the light in the middle, before the front pane ${share(even.frontShare)}.`
}

function actionOf(byLength: Verdict, short: boolean, leastMm: number): Action {
  if (byLength === 'fits') return { text: phrase`Hang a second row, choose a wider light, or keep plants that need less in front.` }
  if (!short) return { text: phrase`Make sure its legs reach both rims, or choose a shorter one.` }
  return {
    text: phrase`Choose a light of at least ${quantity(leastMm, 'mm', 0)}, or two in line.`,
    want: { slot: 'light', quantity: 1, minimum: { lengthMm: leastMm } },
  }
}

/** Whole millimetres against whole millimetres, as they are told. */
function judge(coveredMm: number, tankMm: number): Verdict {
  const mark = (share: number) => quantity(share * tankMm, 'mm', 0).value
  if (coveredMm < mark(DARK_ENDS) || coveredMm > mark(OVERHANG)) return 'does_not_fit'
  return coveredMm < mark(LEAST) || coveredMm > mark(WHOLE) ? 'marginal' : 'fits'
}
