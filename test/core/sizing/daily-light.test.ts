import { expect, it } from 'vitest'
import { dailyLight } from '../../../core/sizing/daily-light.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { findingOf } from './sample-build.ts'

/** ANSI/ASABE S640: the product itself, exact. 2.88 and 1.8 by hand; 104.17 µmol/m²s over 8 h make 3. */
it.each([
  [100, 8, 2.88],
  [50, 10, 1.8],
  [104.1667, 8, 3],
  [100, 0, 0],
])('%s µmol/m²s over %s h', (level, hours, mol) => {
  expect(dailyLight(level, hours)).toBeCloseTo(mol, 4)
})

it('is told beside the level, and not where the light stays off', () => {
  expect(sayPhrase(findingOf('light_level').reason, METRIC)).toMatch(/Over 8 h that is \d\.\d to \d\.\d mol\/m² a day\./)
  expect(sayPhrase(findingOf('light_level', {}, { lightHoursPerDay: 0 }).reason, METRIC)).not.toContain('Over')
})
