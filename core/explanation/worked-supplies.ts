import { appliancesOf } from '../sizing/appliances.ts'
import { packVolumeL } from '../sizing/substrate-depth.ts'
import { feedOfMedia, mediaOfOne } from '../sizing/filter-feed.ts'
import { waterSpan } from '../sizing/filter-flow.ts'
import type { Finding } from '../sizing/finding.ts'
import type { Situation } from '../sizing/situation.ts'
import { over } from '../sizing/span.ts'
import { L_PER_IMPERIAL_GALLON } from '../units/factors.ts'
import { phrase, quantity, type Quantity } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { exact, lastDigitOf, line } from './worked-line.ts'

const PERCENT = 0.01
const TENTH = 0.1

/** A volume so fine that the result comes out in gallons too. */
const toReckon = (litres: number, result: number, lastDigit: number): Quantity =>
  exact(litres, 'L', digitsFor(litres / L_PER_IMPERIAL_GALLON, result, lastDigit))

/** Water over what a millilitre treats, of several bottles their mean. @example workedDose(situation, conditionerDose)[0] // '237.3 L ÷ 7.692 L for each mL = 31 mL' */
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
  const [water, ofOne] = [waterL, 1 / dose].map((litres) => toReckon(litres, waterL * dose, lastDigitOf(digits)))
  return water && ofOne ? [line('Dose of the first fill', phrase`${water} ÷ ${ofOne} for each mL = ${quantity(needMl, 'mL', digits)}`)] : []
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

/** Media over what of poor ones takes up a gram of feed. */
export function workedFeed({ gear, conditions }: Situation, { value }: Finding): ExplainedInput[] {
  const mediaL = gear.filters.reduce((sum, { spec, quantity: count }) => sum + count * mediaOfOne(spec).low, 0)
  const grams = feedOfMedia(1, conditions.livestock.targetC).low
  if (value === undefined || mediaL <= 0) return []
  const [media, ofGram] = [mediaL, 1 / grams].map((litres) => toReckon(litres, mediaL * grams, lastDigitOf(value.digits)))
  return media && ofGram ? [line('Feed that poor media take up', phrase`${media} ÷ ${ofGram} for each gram = ${value}`)] : []
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
