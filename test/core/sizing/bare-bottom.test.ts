import { expect, it } from 'vitest'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf } from './sample-build.ts'

const bare = { substrates: [], notNeeded: { substrate: 'bare bottom' } }
const unstated = { assumed: ['substrateDepthMm' as const] }

/** By hand: 57.3 kg of glass and 274.4 L to the rim at 997 kg/m³ are 331 kg, with no bed of any depth. */
it('a bare bottom that is wanted weighs water in place of a bed, and takes no depth as usual', () => {
  const found = findingOf('stand_load', bare, unstated)
  expect(found.limit).toMatchObject({ low: { value: 331 } })
  expect(sayPhrase(found.reason, METRIC)).toContain('Filled to the rim, without substrate, the tank weighs 331 kg')
  expect(found.assumed).not.toContain('substrate depth')
  expect(findingOf('heater_holds', bare, unstated).assumed).not.toContain('substrate depth')
  expect(findingOf('heater_holds', { substrates: [] }, unstated).assumed).toContain('substrate depth')
})
