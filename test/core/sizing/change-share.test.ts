import { expect, it } from 'vitest'
import { changesOf } from '../../../core/sizing/change-share.ts'
import type { Verdict } from '../../../core/sizing/finding.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { quantity } from '../../../core/units/quantity.ts'
import { findingOf, group, one, reportOf } from './sample-build.ts'

const asked = (percent: number, verdict: Verdict = 'marginal') => ({ verdict, value: quantity(percent, 'percent', 0) })

/** Own rule, by hand: 68 % a week are two of 34 %; a quarter where less is asked for or nothing is known, and never more than two of 80 %. */
it.each([
  [asked(68), undefined, { count: 2, percent: 34 }],
  [asked(50, 'fits'), undefined, { count: 1, percent: 50 }],
  [asked(51), undefined, { count: 2, percent: 25.5 }],
  [asked(13, 'fits'), undefined, { count: 1, percent: 25 }],
  [asked(68, 'not_known'), undefined, { count: 1, percent: 25 }],
  [undefined, undefined, { count: 1, percent: 25 }],
  [asked(68), 25, { count: 3, percent: 25 }],
  [asked(13, 'fits'), 40, { count: 1, percent: 40 }],
  [asked(160, 'does_not_fit'), undefined, { count: 2, percent: 80 }],
  [asked(161, 'does_not_fit'), undefined, { count: 2, percent: 80, tooLittle: true }],
  [asked(400, 'does_not_fit'), 60, { count: 2, percent: 80, tooLittle: true }],
  [asked(68), 20, { count: 2, percent: 34 }],
] as const)('a week that asks for %o with %s stated is changed as %o', (finding, stated, week) =>
  expect(changesOf(finding, stated)).toEqual(week),
)

it('the cold tap is reckoned with the share that the week asks for at a time', () => {
  const livestock = { ...group('small-tropical'), feedGramsPerDay: 5 }
  const gear = { heaters: [one('Torvane', { powerW: 150 }, 2)] }
  const week = reportOf(gear, { livestock }).findings.find(({ check }) => check === 'weekly_change')?.value?.value ?? NaN
  expect(week).toBeGreaterThan(50)
  const words = sayPhrase(findingOf('heater_holds', gear, { livestock }).reason, METRIC)
  expect(words).toContain(`Changing ${Math.round(week / 2)} % for tap water of 12.0 °C, the share by the weekly change,`)
  // Mixed by hand: 25 °C less half a week's share of the 13 K to the tap.
  expect(reportOf(gear, { livestock }).figures.waterChange?.mixedC).toBeCloseTo(25 - (week / 200) * 13, 1)
})

it('no water change is of more water than there is', () => {
  const livestock = { ...group('small-tropical'), feedGramsPerDay: 25 }
  const words = sayPhrase(findingOf('heater_holds', { heaters: [one('Torvane', { powerW: 150 }, 2)] }, { livestock }).reason, METRIC)
  expect(words).toContain('Changing 80 % for tap water of 12.0 °C')
})
