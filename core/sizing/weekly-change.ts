import { PPM_PER_DKH } from '../units/factors.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { ALKALINITY_G_PER_N, ammoniaOfFeed, NITRATE_G_PER_N } from '../water/nitrogen.ts'
import { shareToHold } from '../water/steady-change.ts'
import { EASY_PERCENT, MOST_PERCENT } from './change-share.ts'
import { waterSpan } from './filter-flow.ts'
import type { Finding, Verdict } from './finding.ts'
import { isNarrow } from './narrow.ts'
import { makeFinding } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { feedWords, stockFeed } from './stock-feed.ts'

const DAYS = 7
/** Nitrate that is borne right before a change, mg/L: fish of fresh water, and salt water with invertebrates. Common practice. */
export const NITRATE_MG_L = { fresh: 40, salt: 20 } as const

/** What a week's feed adds and takes in so much water: mg/L of nitrate, German degrees of carbonate hardness. @example weekOf(5, 237.7132) // { nitrateMgL: 27.0, khDegrees: 2.4 } */
export function weekOf(feedGramsPerDay: number, waterL: number): { nitrateMgL: number; khDegrees: number } {
  const nitrogenMgL = (ammoniaOfFeed(feedGramsPerDay) * DAYS * 1000) / waterL
  return { nitrateMgL: nitrogenMgL * NITRATE_G_PER_N, khDegrees: (nitrogenMgL * ALKALINITY_G_PER_N) / PPM_PER_DKH }
}

const percentOf = (nitrateMgL: number, limit: number) => quantity(shareToHold(nitrateMgL, limit) * 100, 'percent', 0)

/**
 * How much water a week has to be changed so that nitrate stays where the animals bear it, and what carbonate hardness it costs.
 *
 * Value: percent a week, for the stock at its hungriest. Limit: half of the water; *marginal* up to four fifths. Plants take some of it up; what the tap
 * water brings comes on top.
 *
 * @example weeklyChange(situation).value // 13 percent a week for 1 g of feed a day in 238 L
 */
export function weeklyChange(situation: Situation): Finding {
  const { conditions, waterUnstated, fillDefaults } = situation
  const stock = stockFeed(situation)
  const water = waterSpan(situation)
  const limit = NITRATE_MG_L[conditions.livestock.water]
  const most = weekOf(stock.grams.high, water.low)
  const least = weekOf(stock.grams.low, water.high)
  const value = percentOf(most.nitrateMgL, limit)
  const judge = (percent: number): Verdict => (percent <= EASY_PERCENT ? 'fits' : percent <= MOST_PERCENT ? 'marginal' : 'does_not_fit')
  const best = percentOf(weekOf(stock.grams.high, water.high).nitrateMgL, limit)
  const outcome = settled(judge(value.value), judge(best.value), waterUnstated, [stock.assumed, ...fillDefaults])
  const hold = phrase`${quantity(limit, 'mg/L', 0)} of nitrate`
  return makeFinding('weekly_change', {
    ...outcome,
    value,
    limit: { kind: 'at_most', high: quantity(EASY_PERCENT, 'percent', 0) },
    reason: phrase`${feedWords(stock)}. In a week it adds ${span(least.nitrateMgL, most.nitrateMgL, 'mg/L')} of nitrate and uses up ${span(least.khDegrees, most.khDegrees, 'dKH')} of carbonate hardness. ${changeWords(value.value, hold)} Plants take some of it up; what the tap water brings comes on top.`,
    action:
      outcome.verdict === 'fits'
        ? null
        : { text: phrase`${lessOfIt(value.value)}, keep fewer animals, or choose a larger tank. Test nitrate and KH.` },
  })
}

const changeWords = (percent: number, hold: Phrase): Phrase =>
  percent <= 100
    ? phrase`A change of ${quantity(percent, 'percent', 0)} a week keeps it at about ${hold}.`
    : percent <= 2 * MOST_PERCENT
      ? phrase`No one change a week keeps it at ${hold}; two of ${quantity(percent / 2, 'percent', 0)} each do.`
      : phrase`No one change a week keeps it at ${hold}, nor do two.`

/** Splitting helps as long as neither half is more than animals can be left with. */
const lessOfIt = (percent: number): string => (percent <= 2 * MOST_PERCENT ? 'Split it into two changes a week, feed less' : 'Feed less')

function span(low: number, high: number, unit: 'mg/L' | 'dKH'): Phrase {
  const [least, most] = [quantity(low, unit, 1), quantity(high, unit, 1)]
  return least.value === most.value || isNarrow(least, most) ? phrase`${most}` : phrase`${least} to ${most}`
}
