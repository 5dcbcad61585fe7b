import { phrase, quantity } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import type { SizingSubject } from './report.ts'

/** The first colour step that says "ready". Common practice: 0.25 mg/L. */
const READY_STEP_MG_L = 0.25

/** Whether the test kits can tell that a tank has cycled: ammonia and nitrite, down to 0.25 mg/L. */
export function ammoniaTests({ gear }: SizingSubject): Finding | null {
  if (gear.testKits.length === 0 && gear.notNeeded['test_water'] !== undefined) return null
  const source = {
    tag: 'common_practice',
    text: 'Ready when ammonia and nitrite both read 0.25 mg/L or less a day after a dose, on two days running.',
  } as const
  const action = {
    text: phrase`Choose a test kit for ammonia and nitrite.`,
    want: { slot: 'test_water', quantity: 1, minimum: {} },
  } as const
  const measures = (what: 'measuresAmmonia' | 'measuresNitrite') => {
    if (gear.testKits.some(({ spec }) => spec[what] === true)) return true
    return gear.testKits.some(({ spec }) => spec[what] === undefined) ? undefined : false
  }
  const [ammonia, nitrite] = [measures('measuresAmmonia'), measures('measuresNitrite')]
  const make = (verdict: Finding['verdict'], reason: Finding['reason'], more: Partial<Finding> = {}) =>
    makeFinding('ammonia_tests', { verdict, reason, source, ...more })
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
  const lowest = gear.testKits.flatMap(({ spec }) =>
    spec.measuresAmmonia === true && spec.lowestAmmoniaMgL !== undefined ? [spec.lowestAmmoniaMgL] : [],
  )
  const limit = { kind: 'at_most', high: quantity(READY_STEP_MG_L, 'mg/L', 2) } as const
  if (lowest.length === 0) return make('fits', phrase`The tests measure ammonia and nitrite.`)
  const value = quantity(Math.min(...lowest), 'mg/L', 2)
  return value.value <= READY_STEP_MG_L
    ? make('fits', phrase`The tests measure ammonia, down to ${value}, and nitrite.`, { value, limit })
    : make('marginal', phrase`The lowest ammonia step is ${value}; ready is told at ${limit.high}.`, { value, limit, action })
}
