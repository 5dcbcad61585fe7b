import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { freshToLower, salinityAfter } from '../water/salt-balance.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import { evaporationLPerDay } from './heat-loss.ts'
import type { Heating } from './heating.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over, type Span } from './span.ts'
import { assumedOf } from './words.ts'

/** Salinity may rise by such a share in a day, percent: half a gram in a kilogram, borne for good, and a whole one, borne now and then. Common practice. */
const EASY_A_DAY = 1.5
const MOST_A_DAY = 3
const DAYS = 7
/** Lower than this animals of the open sea are harmed by a day of it. Common practice. */
const LOWEST_SALINITY = 32
/** More than a tank loses in a week is gone: nothing is told of a tank that runs dry. Own. */
const MOST_LOST = 0.9

const perMille = (value: number) => quantity(value, 'g/kg', 1)

/** Salinity after days without a top-up, g/kg; of a litre that evaporates a kilogram goes. @example salinityWithout(200, 2, 1) // 35.35 */
export function salinityWithout(waterKg: number, litresPerDay: number, days: number): number {
  const lost = Math.min(Math.max(0, litresPerDay) * days, waterKg * MOST_LOST)
  return salinityAfter(SALINITY.salt, waterKg, -lost)
}

const risePercent = (waterKg: number, litresPerDay: number) =>
  quantity((salinityWithout(waterKg, litresPerDay, 1) / SALINITY.salt - 1) * 100, 'percent', 1)

/**
 * How far salinity drifts while nobody tops up, and what an automatic top-up may hold at most. Only in salt water.
 *
 * Value: rise in a day at the high end of evaporation, percent. Limit: 1.5 percent; *marginal* up to 3.
 *
 * @example salinityDrift(situation, heating)?.value // 0.8 percent in a day
 */
export function salinityDrift(situation: Situation, heating: Heating): Finding | null {
  const { conditions, corners, sump, lossUnstated, fillDefaults } = situation
  if (conditions.livestock.water !== 'salt') return null
  const { targetC } = conditions.livestock
  const lost: Span = {
    low: Math.max(0, over(heating.warmAsBuilt, ({ loss }) => evaporationLPerDay(loss, targetC)).low),
    high: Math.max(0, over(heating.cold, ({ loss }) => evaporationLPerDay(loss, targetC)).high),
  }
  const waterKg = over(corners, ({ mass }) => mass.waterKg + (sump?.runningKg ?? 0))
  const after = (days: number) => ({
    low: perMille(salinityWithout(waterKg.high, lost.low, days)),
    high: perMille(salinityWithout(waterKg.low, lost.high, days)),
  })
  const [day, week] = [after(1), after(DAYS)]
  const value = risePercent(waterKg.low, lost.high)
  const judge = (value: number): Verdict => (value <= EASY_A_DAY ? 'fits' : value <= MOST_A_DAY ? 'marginal' : 'does_not_fit')
  const best = risePercent(waterKg.high, over(heating.cold, ({ loss }) => evaporationLPerDay(loss, targetC)).low)
  const outcome = settled(
    judge(value.value),
    judge(best.value),
    namesOf(lossUnstated),
    namesOf(assumedOf(conditions, ['coldestRoomC', 'warmestRoomC']), fillDefaults),
  )
  return makeFinding('salinity_drift', {
    ...outcome,
    value,
    limit: { kind: 'at_most', high: quantity(EASY_A_DAY, 'percent', 1) },
    reason: phrase`${between(quantity(lost.low, 'L/day', 1), quantity(lost.high, 'L/day', 1))} evaporate and leave their salt: without a top-up salinity rises from ${perMille(SALINITY.salt)} to ${between(day.low, day.high)} in a day and ${between(week.low, week.high)} in a week. ${reservoir(waterKg.low)}`,
    action: {
      text:
        outcome.verdict === 'fits'
          ? phrase`Top up every day with fresh water, never with salt water, and measure salinity each week.`
          : phrase`Lay a lid on, or top up by a device that does it all day; always with fresh water, never with salt water.`,
    },
  })
}

const between = (low: ReturnType<typeof quantity>, high: ReturnType<typeof quantity>): Phrase =>
  low.value === high.value ? phrase`${high}` : phrase`${low} to ${high}`

/** What an automatic top-up may hold so that a stuck switch harms nobody. */
function reservoir(waterKg: number): Phrase {
  const most = quantity(Math.floor(freshToLower(SALINITY.salt, waterKg, LOWEST_SALINITY) * 2) / 2, 'L', 1)
  const example = quantity(waterKg / 10, 'L', 1)
  return phrase`An automatic top-up that sticks runs its whole reservoir in: ${example} lower it from ${perMille(SALINITY.salt)} to ${perMille(salinityAfter(SALINITY.salt, waterKg, example.value))}; with ${most} or less it stays above ${perMille(LOWEST_SALINITY)}.`
}
