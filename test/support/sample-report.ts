import type { ToldFinding } from '../../core/sizing/finding.ts'
import type { ToldReport } from '../../core/sizing/report.ts'
import { phrase, quantity } from '../../core/units/quantity.ts'

const practice = { tag: 'common_practice', text: 'usual in the trade' } as const
const plain: Pick<ToldFinding, 'action' | 'assumed' | 'missing' | 'source'> = { action: null, assumed: [], missing: [], source: practice }

/** A report written by hand: every verdict, the floor's own words, an assumed and a missing input. It is a sample, not the engine's answer. */
const FINDINGS: ToldFinding[] = [
  {
    ...plain,
    check: 'heater_stuck',
    title: 'Heater stuck on',
    verdict: 'does_not_fit',
    value: quantity(36.4, 'degC', 1),
    limit: { kind: 'at_most', high: quantity(32, 'degC', 1) },
    margin: quantity(-4.4, 'K', 1),
    reason: phrase`One heater that sticks on in a room of ${quantity(26, 'degC', 0)} takes the water to ${quantity(36.4, 'degC', 1)}.`,
    action: { text: phrase`Take two heaters of ${quantity(75, 'W', 0)} in place of one.` },
    assumed: ['warmest room'],
    source: { tag: 'published', text: 'heat balance, EN ISO 6946 and ASHRAE evaporation' },
    caution: 'Unplug everything before hands go in.',
    hurtRank: 2,
  },
  {
    ...plain,
    check: 'stand_load',
    title: 'Stand load',
    verdict: 'not_known',
    value: quantity(247.8, 'kg', 0),
    reason: phrase`Filled to the rim the tank weighs ${quantity(247.8, 'kg', 0)}; the stand states no load.`,
    action: { text: phrase`Ask the store what the stand may carry before you order it.` },
    missing: ['rated load of the stand'],
    hurtRank: 1,
  },
  {
    ...plain,
    check: 'floor_load',
    title: 'Floor',
    verdict: 'marginal',
    wording: 'ask before you place it',
    value: quantity(0.83, 'share', 2),
    limit: { kind: 'at_most', high: quantity(0.5, 'share', 2) },
    reason: phrase`Across the joists by the wall it uses 0.83 of what one joist was meant to carry.`,
    action: { text: phrase`Ask a licensed structural engineer before you place it.` },
    assumed: ['joist span', 'joist spacing'],
    source: { tag: 'published', text: 'IRC table R301.5 and statics of a joist' },
    hurtRank: 1,
  },
  {
    ...plain,
    check: 'light_level',
    title: 'Light at the substrate',
    verdict: 'marginal',
    value: quantity(28, 'umol/m2/s', 0),
    limit: { kind: 'between', low: quantity(30, 'umol/m2/s', 0), high: quantity(60, 'umol/m2/s', 0) },
    reason: phrase`About enough for plants with low demands.`,
    action: { text: phrase`Choose plants with low demands, or a light of at least ${quantity(3000, 'lm', 0)}.` },
    hurtRank: 8,
  },
  {
    ...plain,
    check: 'heater_holds',
    title: 'Heater holds the target',
    verdict: 'fits',
    value: quantity(141, 'W', 0),
    limit: { kind: 'at_most', high: quantity(300, 'W', 0) },
    reason: phrase`The coldest room costs ${quantity(141, 'W', 0)}; both heaters give ${quantity(300, 'W', 0)}.`,
    hurtRank: 4,
  },
  {
    ...plain,
    check: 'filter_flow',
    title: 'Filter turnover',
    verdict: 'fits',
    value: quantity(4.3, 'per_hour', 1),
    limit: { kind: 'between', low: quantity(4, 'per_hour', 0), high: quantity(10, 'per_hour', 0) },
    reason: phrase`Flow after head and media, over the water in the tank.`,
    hurtRank: 6,
  },
  {
    ...plain,
    check: 'electrical_load',
    title: 'Electrical load',
    verdict: 'fits',
    value: quantity(357, 'W', 0),
    limit: { kind: 'at_most', high: quantity(1440, 'W', 0) },
    reason: phrase`All at once on a circuit of ${quantity(15, 'A', 0)}.`,
    source: { tag: 'published', text: 'NEC 210.20(A), continuous load' },
    hurtRank: 1,
  },
]

/** The sample for one build: A has everything, the others fewer faults. */
export function sampleReport(index: number, waterVolumeL: number): ToldReport {
  const findings = index === 0 ? FINDINGS : FINDINGS.filter((finding) => index === 1 || finding.verdict !== 'does_not_fit')
  const count = (verdict: ToldFinding['verdict']) => findings.filter((finding) => finding.verdict === verdict).length
  return {
    findings,
    counts: { does_not_fit: count('does_not_fit'), not_known: count('not_known'), marginal: count('marginal'), fits: count('fits') },
    pageOne: findings.flatMap((finding, at) => (finding.verdict === 'fits' ? [] : [at])).slice(0, 3),
    figures: {
      waterVolumeL,
      grossVolumeL: waterVolumeL * 1.15,
      emptyMassKg: 40.2,
      brimMassKg: 247.8,
      substrateMassKg: 36.3,
      heaterPowerW: 150,
      dripLoop: { neededMm: 1697, lowPointMm: 200, exitHeightMm: 1240, outletHeightMm: 300, distanceMm: 600 },
      energy: energyOf(index),
    },
  }
}

/** A year as the report tells it, a little more for each build. */
const energyOf = (index: number) => ({
  items: [
    { what: 'Heating', kwhPerYear: 410 + index * 20, lowKwhPerYear: 260 + index * 20, highKwhPerYear: 780 + index * 20 },
    { what: 'Filter', kwhPerYear: 157.8 },
    { what: 'Light', kwhPerYear: 102.3 },
  ],
  kwhPerYear: 670.1 + index * 20,
  lowKwhPerYear: 520.1 + index * 20,
  highKwhPerYear: 1040.1 + index * 20,
  costMinorPerYear: 11392 + index * 340,
  lowCostMinorPerYear: 8842 + index * 340,
  highCostMinorPerYear: 17682 + index * 340,
})
