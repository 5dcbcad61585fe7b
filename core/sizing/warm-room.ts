import { asJudged, phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import { appliancesHeatW, appliancesOf } from './appliances.ts'
import { equilibriumC } from './equilibrium.ts'
import { evaporationWords } from './evaporation-words.ts'
import type { Finding, Verdict } from './finding.ts'
import type { Heating } from './heating.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { coolingNeededW, fanned } from './summer-cooling.ts'
import { assumedOf } from './words.ts'

/**
 * How warm the water gets by itself in the warmest room, heaters off, pumps and lamps on, a chiller's stated cooling taken off.
 *
 * Value: balance temperature in °C at usual losses. Limit: the highest temperature these animals are comfortable at; above it *marginal*, above their
 * danger mark *does not fit*: no heater has to fail for that.
 * Source: own, from the heat balance.
 *
 * @example warmRoom(situation, heating).value // 25.5 °C in a room of 24 °C, where the animals are comfortable to 28 °C
 */
export function warmRoom(situation: Situation, heating: Heating): Finding {
  const { conditions, lossUnstated, fillDefaults } = situation
  const { highestC, dangerC } = conditions.livestock
  const chiller = chillerOf(situation)
  const balanceC = (end: 'low' | 'high', coolingW: number) =>
    over(heating.warmUsual, ({ loss }) => equilibriumC(loss, heating.applianceHeatW[end] - coolingW))[end]
  // A chiller switches off at its setting: it never brings the water below what the animals are comfortable at.
  const reached = (end: 'low' | 'high') => {
    const warmC = balanceC(end, 0)
    const cooledC =
      chiller.coolingW === 0 ? warmC : Math.max(balanceC(end, chiller.coolingW), Math.min(warmC, conditions.livestock.highestC, dangerC))
    return quantity(cooledC, 'degC', 1)
  }
  const warmest = reached('high')
  const limit = stated(Math.min(highestC, dangerC), 'degC', 1)
  const dangerMark = asJudged(stated(dangerC, 'degC', 1))
  const judge = (waterC: number): Verdict => (waterC > dangerMark ? 'does_not_fit' : waterC > asJudged(limit) ? 'marginal' : 'fits')
  const outcome = settled(
    judge(warmest.value),
    judge(reached('low').value),
    namesOf(heating.applianceUnstated, lossUnstated),
    namesOf(assumedOf(conditions, ['warmestRoomC']), fillDefaults),
  )
  if (chiller.unstated && outcome.verdict !== 'fits') return unstatedChiller(chiller.name)
  const room = stated(conditions.warmestRoomC, 'degC', 1)
  return makeFinding('warm_room', {
    ...outcome,
    value: warmest,
    limit: { kind: 'at_most', high: limit },
    reason: phrase`In the warmest room, ${room}, ${warmedBy(situation)} to ${warmest}${chiller.coolingW > 0 ? ' with the chiller on' : ''}; these animals are comfortable up to ${limit} and in danger from ${stated(dangerC, 'degC', 1)}.${evaporationWords(situation, heating)}`,
    action: outcome.verdict === 'fits' ? null : { text: coolerBy(situation, heating, limit.value) },
  })
}

interface Chiller {
  name: string
  coolingW: number
  /** One is there, and its maker does not say how much it cools. */
  unstated: boolean
}

function chillerOf({ gear }: Situation): Chiller {
  const chillers = appliancesOf(gear).filter(({ kind }) => kind === 'chiller')
  const coolingW = chillers.reduce((sum, { spec, quantity: count }) => sum + (spec.coolingW ?? 0) * count, 0)
  return { name: chillers[0]?.name ?? '', coolingW, unstated: chillers.some(({ spec }) => spec.coolingW === undefined) }
}

const unstatedChiller = (name: string): Finding =>
  makeFinding('warm_room', {
    verdict: 'not_known',
    reason: phrase`Without cooling the water gets too warm in the warmest room; how much heat ${name} takes out of it is not stated.`,
    action: { text: phrase`Enter the chiller's cooling power, not what it draws from the outlet.` },
    missing: ['cooling power of the chiller'],
  })

/** What warms the water with every heater off. */
function warmedBy({ gear }: Situation): string {
  const pump = gear.filters.length > 0 || appliancesHeatW(gear).high > 0
  const lamp = gear.lights.length > 0
  if (pump && lamp) return 'pump and lamp alone bring the water'
  if (pump || lamp) return `the ${pump ? 'pump' : 'lamp'} alone brings the water`
  return 'the room alone brings the water'
}

/** What cools, from the cheapest, and what each would do. An open top loses by evaporation what a lid keeps. */
function coolerBy({ gear, conditions }: Situation, heating: Heating, heldC: number): Phrase {
  const heatW = heating.applianceHeatW.high
  const fanC = quantity(over(heating.warmOpen, ({ loss }) => equilibriumC(fanned(loss), heatW)).high, 'degC', 1)
  const chillerW = quantity(tens(over(heating.warmUsual, ({ loss }) => coolingNeededW(loss, heatW, heldC)).high), 'W', 0)
  const open =
    gear.lid === null || conditions.livestock.lidNeeded
      ? phrase`a fan across the surface`
      : phrase`the lid off on hot days with a fan across the surface`
  const lid = gear.lid !== null && conditions.livestock.lidNeeded ? phrase` under mesh that keeps these animals in` : phrase``
  return phrase`Plan for summer: a cooler place, shorter hours of light, ${open}${lid} (it would settle at about ${fanC}), or a chiller that takes out ${chillerW} or more. Or choose animals for warm water.`
}

/** A figure to choose by: up to the next ten. */
const tens = (watts: number): number => Math.ceil(watts / 10) * 10
