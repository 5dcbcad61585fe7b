import { appliancesOf } from '../sizing/appliances.ts'
import { packVolumeL } from '../sizing/substrate-depth.ts'
import { feedOfMedia, mediaOfOne } from '../sizing/filter-feed.ts'
import { waterSpan } from '../sizing/filter-flow.ts'
import type { Finding } from '../sizing/finding.ts'
import type { Situation } from '../sizing/situation.ts'
import { over } from '../sizing/span.ts'
import { phrase, quantity } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { exact, lastDigitOf, line, plain } from './worked-line.ts'

const PERCENT = 0.01
const TENTH = 0.1

/** Water × dose of the label, of several bottles their mean. @example workedDose(situation, conditionerDose)[0] // '237.3 L × 0.130 mL a litre = 31 mL' */
export function workedDose(situation: Situation, { limit }: Finding): ExplainedInput[] {
  if (limit?.kind !== 'at_least') return []
  const { value: needMl, digits } = limit.low
  const waterL = waterSpan(situation).high
  const { contentMl, treatsL } = situation.gear.conditioners.reduce(
    (sum, { spec: { packVolumeMl = 0, doseMlPerL = 0 }, quantity: count }) => ({
      contentMl: sum.contentMl + packVolumeMl * count,
      treatsL: sum.treatsL + (doseMlPerL > 0 ? (packVolumeMl * count) / doseMlPerL : 0),
    }),
    { contentMl: 0, treatsL: 0 },
  )
  if (treatsL <= 0) return []
  const dose = contentMl / treatsL
  const to = (factor: number): number => digitsFor(factor, waterL * dose, lastDigitOf(digits))
  return [
    line(
      'Dose of the first fill',
      phrase`${plain(waterL, to(waterL))} L × ${plain(dose, to(dose))} mL a litre = ${quantity(needMl, 'count', digits)} mL`,
    ),
  ]
}

/** Litres of all packs, at the fewest, over the litres of the bed that is wanted. */
export function workedBed({ gear, corners, conditions }: Situation): ExplainedInput[] {
  const packs = gear.substrates.map(({ spec, quantity: count }) => (packVolumeL(spec)?.low ?? Number.NaN) * count)
  const boughtL = packs.reduce((sum, each) => sum + each, 0)
  const wantedL = (over(corners, ({ geometry }) => geometry.insidePlanMm2).high * conditions.substrateDepthMm) / 1e6
  const share = boughtL / wantedL
  if (!(share > 0) || !Number.isFinite(share)) return []
  const [bought, wanted] = [boughtL, wantedL].map((litres) => exact(litres, 'L', digitsFor(litres, share, PERCENT)))
  if (!bought || !wanted) return []
  return [line('Of the bed that is wanted, at least', phrase`${bought} ÷ ${wanted} = ${quantity(100 * share, 'percent', 0)}`)]
}

/** Litres of media × feed that a litre of poor ones takes up. */
export function workedFeed({ gear, conditions }: Situation, { value }: Finding): ExplainedInput[] {
  const mediaL = gear.filters.reduce((sum, { spec, quantity: count }) => sum + count * mediaOfOne(spec).low, 0)
  const grams = feedOfMedia(1, conditions.livestock.targetC).low
  if (value === undefined || mediaL <= 0) return []
  const to = (factor: number): number => digitsFor(factor, mediaL * grams, lastDigitOf(value.digits))
  return [line('Feed that poor media take up', phrase`${plain(mediaL, to(mediaL))} L × ${plain(grams, to(grams))} g a litre = ${value}`)]
}

/** What the box of the skimmer names over the water. */
export function workedSkimmer(situation: Situation): ExplainedInput[] {
  const skimmers = appliancesOf(situation.gear).filter(({ kind }) => kind === 'skimmer')
  const namedL = skimmers.reduce((sum, { spec, quantity: count }) => sum + count * (spec.ratedVolumeL ?? Number.NaN), 0)
  const waterL = waterSpan(situation).high
  const times = namedL / waterL
  if (!(times > 0) || !Number.isFinite(times)) return []
  const [named, water] = [namedL, waterL].map((litres) => exact(litres, 'L', digitsFor(litres, times, TENTH)))
  return named && water ? [line('Of the water in use', phrase`${named} ÷ ${water} = ${quantity(times, 'count', 1)} times`)] : []
}
