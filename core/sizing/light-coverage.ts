import { phrase, quantity } from '../units/quantity.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import type { Situation } from './situation.ts'

/** Share of the tank's length that fixtures cover. Common practice: three quarters to all of it. */
const LEAST = 0.75
/** Below this the ends are dark whatever the light; between, plants at the ends grow slowly. Own. */
const DARK_ENDS = 0.6
const WHOLE = 1
/** Legs that reach over both rims take this much overhang. Common practice. */
const OVERHANG = 1.1

/**
 * Whether the fixtures are long enough to light the ends and short enough to sit on the rim. Value: mm in all. Limit: 0.75 to 1.0 of the tank.
 *
 * @example lightCoverage(situation)?.limit // 914 to 1219 mm over a tank of 1219 mm
 */
export function lightCoverage({ gear, tank }: Situation): Finding | null {
  if (gear.lights.length === 0) return null
  const source = { tag: 'common_practice', text: 'A light is three quarters as long as the tank to as long as it.' } as const
  const low = quantity(LEAST * tank.lengthMm, 'mm', 0)
  const limit = { kind: 'between', low, high: quantity(tank.lengthMm, 'mm', 0) } as const
  const lengths = gear.lights.flatMap(({ spec, quantity: count }) =>
    spec.lengthMm === undefined ? [] : [{ one: spec.lengthMm, all: spec.lengthMm * count }],
  )
  if (lengths.length < gear.lights.length) {
    return makeFinding('light_coverage', {
      verdict: 'not_known',
      limit,
      reason: phrase`The length of the light is not stated; it should cover at least ${low}.`,
      action: { text: phrase`Enter the light's length.` },
      missing: ['length of the light'],
      source,
    })
  }
  const longest = Math.max(...lengths.map(({ one }) => one))
  const inLine = lengths.reduce((sum, { all }) => sum + all, 0)
  const covered = longest >= low.value ? longest : Math.min(inLine, tank.lengthMm)
  const value = quantity(covered, 'mm', 0)
  const verdict = judge(value.value, tank.lengthMm)
  const short = value.value < low.value
  const action = short
    ? {
        text: phrase`Choose a light of at least ${low}, or two in line.`,
        want: { slot: 'light', quantity: 1, minimum: { lengthMm: low.value } } as const,
      }
    : { text: phrase`Make sure its legs reach both rims, or choose a shorter one.` }
  return makeFinding('light_coverage', {
    verdict,
    value,
    limit,
    reason: short
      ? phrase`${value} of light over ${limit.high} of tank leaves the ends dark.`
      : value.value > limit.high.value
        ? phrase`The light is ${value} long and the tank ${limit.high}: it stands over.`
        : phrase`${value} of light over ${limit.high} of tank.`,
    action: verdict === 'fits' ? null : action,
    source,
  })
}

/** Whole millimetres against whole millimetres, as they are told. */
function judge(coveredMm: number, tankMm: number): Verdict {
  const mark = (share: number) => quantity(share * tankMm, 'mm', 0).value
  if (coveredMm < mark(DARK_ENDS) || coveredMm > mark(OVERHANG)) return 'does_not_fit'
  return coveredMm < mark(LEAST) || coveredMm > mark(WHOLE) ? 'marginal' : 'fits'
}
