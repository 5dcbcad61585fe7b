import { expect, it } from 'vitest'
import { mustAsk, sayCounts } from '../../../core/sizing/count-words.ts'
import type { Finding, Verdict } from '../../../core/sizing/finding.ts'
import { findingOf } from './sample-build.ts'

const findings = (...verdicts: Verdict[]): Finding[] => verdicts.map((verdict) => ({ ...findingOf('lid'), verdict }))
const said = (...verdicts: Verdict[]) => sayCounts({ findings: findings(...verdicts) }).map(({ words }) => words)
const floor = (wording: NonNullable<Finding['wording']>, verdict: Verdict): Finding => ({ ...findingOf('floor_load'), verdict, wording })

it('counts in the singular and in the plural, worst first, and no verdict that nothing has', () => {
  expect(said('fits', 'does_not_fit')).toEqual(['1 does not fit', '1 fits'])
  expect(said('fits', 'marginal', 'fits', 'does_not_fit', 'not_known', 'does_not_fit')).toEqual([
    '2 do not fit',
    '1 not known',
    '1 marginal',
    '2 fit',
  ])
  expect(said()).toEqual([])
})

it('tells the floor in its own words, first where somebody is to be asked and last within its allowance', () => {
  const others = findings('marginal', 'fits')
  const of = (wording: NonNullable<Finding['wording']>, verdict: Verdict) => sayCounts({ findings: [...others, floor(wording, verdict)] })
  expect(of('ask before you place it', 'not_known')).toEqual([
    { verdict: 'not_known', words: 'floor: ask before you place it' },
    { verdict: 'marginal', words: '1 marginal' },
    { verdict: 'fits', words: '1 fits' },
  ])
  expect(of('do not place it before an engineer has looked', 'does_not_fit')[0]?.verdict).toBe('does_not_fit')
  expect(of('within the usual allowance', 'marginal').map(({ words }) => words)).toEqual([
    '1 marginal',
    '1 fits',
    'floor: within the usual allowance',
  ])
})

it('knows which words send the reader to somebody', () => {
  const wordings = [
    'ask before you place it',
    'do not place it before an engineer has looked',
    'within the usual allowance',
    undefined,
  ] as const
  expect(wordings.map((wording) => mustAsk(wording === undefined ? {} : { wording }))).toEqual([true, true, false, false])
})

it('tells how many of the fits rest on what is assumed', () => {
  const [one, other] = findings('fits', 'fits')
  const words = sayCounts({
    findings: [
      { ...one!, assumed: [] },
      { ...other!, assumed: ['glass thickness'] },
    ],
  }).map((each) => each.words)
  expect(words).toEqual(['2 fit, 1 assumed'])
})
