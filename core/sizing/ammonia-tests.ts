import { phrase, quantity, type Quantity } from '../units/quantity.ts'
import type { Action, Finding, Verdict } from './finding.ts'
import type { Gear } from './gear.ts'
import { makeFinding, type FindingParts } from './make-finding.ts'
import type { SizingSubject } from './report.ts'
import { AMMONIA_STEP_MG_L } from './typical-ranges.ts'
import { settle } from './verdict.ts'

/** The first colour step that says "ready". Common practice: 0.25 mg/L. */
const READY_STEP_MG_L = 0.25

type Make = (verdict: Verdict, reason: Finding['reason'], more?: Partial<FindingParts>) => Finding

/**
 * Whether the test kits can tell that a tank has cycled: ammonia and nitrite, down to 0.25 mg/L. Value: the lowest ammonia step.
 * Without a tank a kit that is not there yet is not missed: the tank is.
 *
 * @example ammoniaTests(subject)?.value // 0.25 mg/L, the lowest mark of the kit
 */
export function ammoniaTests({ gear }: SizingSubject): Finding | null {
  if (gear.testKits.length === 0 && (gear.tank === null || gear.notNeeded['test_water'] !== undefined)) return null
  const action = {
    text: phrase`Choose a test kit for ammonia and nitrite.`,
    want: { slot: 'test_water', quantity: 1, minimum: {} },
  } as const
  const measures = (what: 'measuresAmmonia' | 'measuresNitrite') => {
    if (gear.testKits.some(({ spec }) => spec[what] === true)) return true
    return gear.testKits.some(({ spec }) => spec[what] === undefined) ? undefined : false
  }
  const [ammonia, nitrite] = [measures('measuresAmmonia'), measures('measuresNitrite')]
  const make: Make = (verdict, reason, more = {}) => makeFinding('ammonia_tests', { verdict, reason, ...more })
  if (gear.testKits.length === 0)
    return make('does_not_fit', phrase`No test kit is chosen: nobody could tell when the tank is ready for animals.`, { action })
  if (ammonia === false || nitrite === false)
    return make(
      'does_not_fit',
      phrase`The tests do not measure ${ammonia === false ? 'ammonia' : 'nitrite'}: nobody could tell when the tank is ready for animals.`,
      { action },
    )
  if (ammonia === undefined || nitrite === undefined)
    return make('not_known', phrase`Nobody has stated what the test kit measures; a new tank needs ammonia and nitrite.`, {
      action: { text: phrase`Enter what the kit measures.` },
      missing: ['what the test kit measures'],
    })
  return judgeStep(gear, make, action)
}

/** With ammonia and nitrite measured: whether the steps are fine enough. A kit that states no step may have any of the typical ones. */
function judgeStep(gear: Gear, make: Make, action: Action): Finding {
  const kits = gear.testKits.filter(({ spec }) => spec.measuresAmmonia === true)
  const least = (unstated: number) => quantity(Math.min(...kits.map(({ spec }) => spec.lowestAmmoniaMgL ?? unstated)), 'mg/L', 2)
  const value = least(AMMONIA_STEP_MG_L.high)
  const limit = { kind: 'at_most', high: quantity(READY_STEP_MG_L, 'mg/L', 2) } as const
  const judge = ({ value: step }: Quantity): Verdict => (step <= READY_STEP_MG_L ? 'fits' : 'marginal')
  const verdict = settle(judge(value), judge(least(AMMONIA_STEP_MG_L.low)))
  if (verdict === 'not_known')
    return make(
      'not_known',
      phrase`The tests measure ammonia and nitrite; ready is told at ${limit.high} of ammonia, and the lowest step of the ammonia test is not stated.`,
      {
        limit,
        action: { text: phrase`Enter the lowest step above zero on the ammonia colour card.` },
        missing: ['lowest step of the ammonia test'],
      },
    )
  return verdict === 'fits'
    ? make('fits', phrase`The tests measure ammonia, down to ${value}, and nitrite.`, { value, limit })
    : make('marginal', phrase`The lowest ammonia step is ${value}; ready is told at ${limit.high}.`, { value, limit, action })
}
