import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding, Source, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over, type Span } from './span.ts'
import { FLOW_SHARE } from './typical-ranges.ts'

const SOURCE: Source = {
  tag: 'common_practice',
  text: 'How often the water in use goes through the filter, by the animals; media and hoses leave 0.5 to 0.7 of the printed flow.',
}
const DERATING = 'flow that media leave'

/** Printed flow of all filters, L/h; undefined where one does not state it. */
export function ratedFlowLph({ gear }: Pick<Situation, 'gear'>): number | undefined {
  let sum = 0
  for (const { spec, quantity: n } of gear.filters) {
    if (spec.ratedFlowLph === undefined) return undefined
    sum += spec.ratedFlowLph * n
  }
  return gear.filters.length > 0 ? sum : undefined
}

/** A turnover is told to a tenth. */
const turns = (times: number) => quantity(times, 'per_hour', 1)

/** Turnover an hour with loaded media and with clean ones, for one volume of water, to the tenth that is told. @example turnover(1200, 150) // { low: 4, high: 5.6 } */
export const turnover = (ratedLph: number, waterL: number): Span => ({
  low: turns((ratedLph * FLOW_SHARE.low) / waterL).value,
  high: turns((ratedLph * FLOW_SHARE.high) / waterL).value,
})

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

/** Volumes of water that the stated figures allow, L. */
export const waterSpan = ({ corners }: Situation): Span => over(corners, ({ geometry }) => geometry.waterVolumeL)

/** A mark of the table, whole or to a tenth. */
const per = (times: number) => quantity(times, 'per_hour', Number.isInteger(times) ? 0 : 1)

/**
 * Whether the filters turn the water over often enough.
 *
 * Value: turnover an hour with loaded media. Limit: the group's least turnover. A filter without a printed flow, a sponge above all, is not known.
 *
 * @example filterFlow(situation).value // 4.2 times an hour with loaded media, where the group asks for 4
 */
export function filterFlow(situation: Situation): Finding {
  const { conditions, tankUnstated, fillDefaults } = situation
  const { flowFloorPerHour } = conditions.livestock
  const water = waterSpan(situation)
  const limit = { kind: 'at_least', low: per(flowFloorPerHour) } as const
  const needed = Math.ceil((flowFloorPerHour * water.high) / FLOW_SHARE.low / 10) * 10
  const action = {
    text: phrase`Choose a filter printed at ${quantity(needed, 'L/h', 0)} or more.`,
    want: { slot: 'filter', quantity: 1, minimum: { ratedFlowLph: needed } },
  } as const
  const rated = ratedFlowLph(situation)
  if (rated === undefined) return unknownFlow(situation, action)
  const worst = turnover(rated, water.high)
  const best = turnover(rated, water.low)
  const outcome = settled(
    judgeFloor(worst, flowFloorPerHour),
    judgeFloor(best, flowFloorPerHour),
    tankUnstated,
    namesOf([DERATING], fillDefaults),
  )
  return makeFinding('filter_flow', {
    ...outcome,
    value: turns(worst.low),
    limit,
    reason: phrase`${flowWords(rated)}: the water goes through ${turns(worst.high)} with clean media and ${turns(worst.low)} with loaded ones; these animals want at least ${per(flowFloorPerHour)}.`,
    action:
      outcome.verdict === 'fits'
        ? null
        : outcome.verdict === 'marginal'
          ? {
              ...action,
              text: phrase`Rinse the media in tank water every few weeks, or choose a filter printed at ${quantity(needed, 'L/h', 0)} or more.`,
            }
          : action,
    source: SOURCE,
  })
}

function flowWords(ratedLph: number): Phrase {
  return phrase`Of the printed ${quantity(ratedLph, 'L/h', 0)}, media leave ${quantity(ratedLph * FLOW_SHARE.low, 'L/h', 0)} to ${quantity(ratedLph * FLOW_SHARE.high, 'L/h', 0)}`
}

function unknownFlow({ gear, conditions }: Situation, action: NonNullable<Finding['action']>): Finding {
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
    source: SOURCE,
  })
}

/**
 * Whether the flow is too strong for the group. Value: turnover with clean media. Only for groups that are harmed by flow.
 *
 * @example flowCeiling(situation)?.value // 5.9 times an hour with clean media, where the group bears 10
 */
export function flowCeiling(situation: Situation): Finding | null {
  const { conditions, tankUnstated, fillDefaults } = situation
  const ceiling = conditions.livestock.flowCeilingPerHour
  const rated = ratedFlowLph(situation)
  if (ceiling === null || rated === undefined) return null
  const water = waterSpan(situation)
  const worst = turnover(rated, water.low)
  const outcome = settled(
    judgeCeiling(worst, ceiling),
    judgeCeiling(turnover(rated, water.high), ceiling),
    tankUnstated,
    namesOf([DERATING], fillDefaults),
  )
  return makeFinding('flow_ceiling', {
    ...outcome,
    value: turns(worst.high),
    limit: { kind: 'at_most', high: per(ceiling) },
    reason: phrase`${flowWords(rated)}: up to ${turns(worst.high)} with clean media. Above ${per(ceiling)} these animals tire.`,
    action:
      outcome.verdict === 'fits'
        ? null
        : { text: phrase`Spread the return along the glass, throttle the filter at its outlet, or choose a smaller one.` },
    source: SOURCE,
  })
}
