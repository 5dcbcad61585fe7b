import { expect, it } from 'vitest'
import { CHECK_TITLES } from '../../../core/sizing/check-titles.ts'
import { hurtRankOf } from '../../../core/sizing/hurt-rank.ts'
import { CHECKS, SOURCE_WORDS, VERDICT_WORDS, VERDICTS } from '../../../core/sizing/finding.ts'

it('gives each check a title of its own and a rank of its own, from 1 on', () => {
  const titles = CHECKS.map((check) => CHECK_TITLES[check])
  expect(new Set(titles).size).toBe(CHECKS.length)
  for (const title of titles) expect(title).toMatch(/^[A-Z][a-z]/)
  expect(CHECKS.map(hurtRankOf).sort((a, b) => a - b)).toEqual(CHECKS.map((_, index) => index + 1))
})

it('ranks people before animals, animals before things, and comfort last', () => {
  const ranks = (['heater_stuck', 'drain_down', 'stand_load', 'heater_holds', 'lid', 'stand_wet', 'light_level'] as const).map(hurtRankOf)
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
})

it('has four verdicts, worst first, and words for each and for each kind of source', () => {
  expect(VERDICTS.map((verdict) => VERDICT_WORDS[verdict])).toEqual(['does not fit', 'not known', 'marginal', 'fits'])
  expect(Object.values(SOURCE_WORDS)).toEqual(['published', 'common practice', 'quoted from memory, unchecked', 'our own reckoning'])
})
