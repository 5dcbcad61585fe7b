import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { LivestockGroup } from './conditions.ts'
import { flowShare, type Delivery } from './filter-delivery.ts'
import type { Action, Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import type { SourceName } from './sources.ts'
import { over, type Span } from './span.ts'

/** A turnover is told to a tenth. */
const turns = (times: number) => quantity(times, 'per_hour', 1)

/** Turnover an hour with loaded media and with clean ones, for one volume of water, to the tenth that is told. @example turnover({ loaded: 600, clean: 840 }, 150) // { low: 4, high: 5.6 } */
export const turnover = ({ loaded, clean }: { loaded: number; clean: number }, waterL: number): Span => ({
  low: turns(loaded / waterL).value,
  high: turns(clean / waterL).value,
})

/** The weakest and the strongest turnover that the stated figures allow. */
function turnovers({ loaded, clean }: Delivery, water: Span): { weakest: Span; strongest: Span } {
  return {
    weakest: turnover({ loaded: loaded.low, clean: clean.low }, water.high),
    strongest: turnover({ loaded: loaded.high, clean: clean.high }, water.low),
  }
}

/** Enough with loaded media *fits*; only with clean ones is *marginal*: it is reached after each rinse and lost before the next. */
function judgeFloor(turns: Span, floor: number): Verdict {
  if (turns.high < floor) return 'does_not_fit'
  return turns.low < floor ? 'marginal' : 'fits'
}

/** Never above the ceiling *fits*; above it only with clean media is *marginal*. */
function judgeCeiling(turns: Span, ceiling: number): Verdict {
  if (turns.low > ceiling) return 'does_not_fit'
  return turns.high > ceiling ? 'marginal' : 'fits'
}

/** Volumes of water in the tank itself that the stated figures allow, L: what a return stirs. */
export const tankWater = ({ corners }: Pick<Situation, 'corners'>): Span => over(corners, ({ geometry }) => geometry.waterVolumeL)

/** The same with what stands in a sump: what is dosed, changed and filtered. */
export function waterSpan(situation: Pick<Situation, 'corners' | 'sump'>): Span {
  const { low, high } = tankWater(situation)
  const { sump } = situation
  return sump ? { low: low + sump.runningL.low, high: high + sump.runningL.high } : { low, high }
}

/** A mark of the table, whole or to a tenth. */
const per = (times: number) => quantity(times, 'per_hour', Number.isInteger(times) ? 0 : 1)

/**
 * Whether the filters turn the water over often enough.
 *
 * Value: turnover an hour with loaded media. Limit: the group's least turnover. A filter without a printed flow, a sponge above all, is not known.
 *
 * @example filterFlow(situation, deliveryOf(situation)).value // 4.2 times an hour with loaded media, where the group asks for 4
 */
export function filterFlow(situation: Situation, delivery: Delivery | undefined): Finding {
  const { conditions, gear, waterUnstated, fillDefaults } = situation
  const { flowFloorPerHour } = conditions.livestock
  const water = waterSpan(situation)
  const limit = { kind: 'at_least', low: per(flowFloorPerHour) } as const
  const types = gear.filters.length > 0 ? gear.filters.map(({ spec }) => spec.type) : [undefined]
  const needed = Math.ceil((flowFloorPerHour * water.high) / Math.min(...types.map((type) => flowShare(type).low)) / 10) * 10
  const choose = (begin: string): Action => ({
    text: phrase`${begin} a filter printed at ${quantity(needed, 'L/h', 0)} or more.`,
    want: { slot: 'filter', quantity: 1, minimum: { ratedFlowLph: needed } },
  })
  if (delivery === undefined) return unknownFlow(situation, choose('Choose'))
  const { weakest, strongest } = turnovers(delivery, water)
  const outcome = settled(
    judgeFloor(weakest, flowFloorPerHour),
    judgeFloor(strongest, flowFloorPerHour),
    namesOf(waterUnstated, delivery.unstated),
    namesOf(delivery.defaults, fillDefaults),
  )
  return makeFinding('filter_flow', {
    ...outcome,
    value: turns(weakest.low),
    limit,
    reason: phrase`${flowWords(delivery)}: the water goes through ${allTurns(weakest, strongest, delivery.lifts)}; ${marks(conditions.livestock)}.`,
    action: outcome.verdict === 'fits' ? null : choose(beginOf(outcome.verdict, delivery.lifts)),
    source: sourceOf(delivery),
  })
}

/** What may be done in place of another filter. */
function beginOf(verdict: Verdict, lifts: boolean): string {
  if (verdict === 'does_not_fit') return 'Choose'
  if (verdict === 'not_known') return 'Enter what is missing, or choose'
  return `${lifts ? 'Measure the flow at the return' : 'Rinse the media in tank water every few weeks'}, or choose`
}

const sourceOf = ({ byCurve }: Delivery): SourceName => (byCurve === 'none' ? 'filter_flow' : 'pump_curve')

/** One figure where both ends are told alike. */
function between({ low, high }: Span): Phrase {
  return low === high ? phrase`${turns(low)}` : phrase`${turns(low)} to ${turns(high)}`
}
function litres({ low, high }: Span): Phrase {
  const [least, most] = [quantity(low, 'L/h', 0), quantity(high, 'L/h', 0)]
  return least.value === most.value ? phrase`${least}` : phrase`${least} to ${most}`
}

function marks({ flowFloorPerHour, flowCeilingPerHour }: LivestockGroup): Phrase {
  const least = phrase`these animals want at least ${per(flowFloorPerHour)}`
  return flowCeilingPerHour === null ? least : phrase`${least} and bear ${per(flowCeilingPerHour)} at most`
}

function flowWords({ ratedLph, loaded, clean, byCurve, lifts }: Delivery): Phrase {
  const rated = quantity(ratedLph, 'L/h', 0)
  if (lifts) return phrase`Of the printed ${rated}, the rise to the tank leaves ${litres({ low: loaded.low, high: clean.high })}`
  if (byCurve === 'none')
    return phrase`Of the printed ${rated}, media leave ${quantity(loaded.low, 'L/h', 0)} to ${quantity(clean.high, 'L/h', 0)}`
  const what = byCurve === 'all' ? 'hoses and media' : 'hoses and media, or media alone,'
  return phrase`Of the printed ${rated}, ${what} leave ${litres(clean)} when clean and ${litres(loaded)} when loaded`
}

function unknownFlow({ gear, conditions }: Situation, action: Action): Finding {
  const none = gear.filters.length === 0
  const least = per(conditions.livestock.flowFloorPerHour)
  return makeFinding('filter_flow', {
    verdict: none ? 'does_not_fit' : 'not_known',
    limit: { kind: 'at_least', low: least },
    reason: none
      ? phrase`No filter is chosen. These animals want the water turned over at least ${least}.`
      : phrase`No flow is stated for ${gear.filters.find(({ spec }) => spec.ratedFlowLph === undefined)?.name ?? 'the filter'}; a sponge's depends on its air pump.`,
    action: none ? action : { text: phrase`Enter the printed flow, or measure it: litres caught in a minute, times sixty.` },
    missing: none ? [] : ['flow of the filter'],
  })
}

/**
 * Whether the flow is too strong for the group. Value: turnover with clean media. Only for groups that are harmed by flow.
 *
 * @example flowCeiling(situation, deliveryOf(situation))?.value // 5.9 times an hour with clean media, where the group bears 10
 */
export function flowCeiling(situation: Situation, delivery: Delivery | undefined): Finding | null {
  const { conditions, tankUnstated, fillDefaults } = situation
  const ceiling = conditions.livestock.flowCeilingPerHour
  if (ceiling === null || delivery === undefined) return null
  // By the water of the tank alone: what lies in a sump does not slow the current that the animals stand in.
  const { weakest, strongest } = turnovers(delivery, tankWater(situation))
  const outcome = settled(
    judgeCeiling(strongest, ceiling),
    judgeCeiling(weakest, ceiling),
    namesOf(tankUnstated, delivery.unstated),
    namesOf(delivery.defaults, fillDefaults),
  )
  return makeFinding('flow_ceiling', {
    ...outcome,
    value: turns(strongest.high),
    limit: { kind: 'at_most', high: per(ceiling) },
    reason: phrase`${flowWords(delivery)}: ${outcome.verdict === 'not_known' ? allTurns(weakest, strongest, delivery.lifts) : mostTurns(strongest, delivery.lifts)}. Above ${per(ceiling)} these animals tire.`,
    action: calmer(outcome.verdict),
    source: sourceOf(delivery),
  })
}

const mostTurns = ({ high }: Span, lifts: boolean): Phrase => phrase`up to ${turns(high)} ${lifts ? 'at best' : 'with clean media'}`

/** Both ends of what clean media leave and of what loaded ones do, once where they are the same. */
function allTurns(weakest: Span, strongest: Span, lifts: boolean): Phrase {
  const [best, worst] = [between({ low: weakest.high, high: strongest.high }), between({ low: weakest.low, high: strongest.low })]
  const [atBest, atWorst] = lifts ? ['at best', 'at worst'] : ['with clean media', 'with loaded ones']
  return weakest.low === weakest.high && strongest.low === strongest.high
    ? phrase`${best} ${atBest} and ${atWorst} alike`
    : phrase`${best} ${atBest} and ${worst} ${atWorst}`
}

function calmer(verdict: Verdict): Finding['action'] {
  if (verdict === 'fits') return null
  if (verdict === 'not_known')
    return { text: phrase`Enter what is missing. Until then spread the return along the glass, or throttle the filter at its outlet.` }
  return { text: phrase`Spread the return along the glass, throttle the filter at its outlet, or choose a smaller one.` }
}
