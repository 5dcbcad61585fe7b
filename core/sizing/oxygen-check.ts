import { phrase, quantity, stated, type Phrase, type Quantity } from '../units/quantity.ts'
import { appliancesOf } from './appliances.ts'
import type { Delivery } from './filter-delivery.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { over, sumOf, type Span } from './span.ts'
import { feedGrams, feedWords, stockFeed, type StockFeed } from './stock-feed.ts'
import { jetPowerW, oxygenOfFeed, stillTransfer, stirredBy, surfaceOxygen, type Surface } from './surface-oxygen.ts'

/** The figures of gases are fitted to about here. */
const WARMEST_C = 35
/** What a small air pump's bubbles do to the water they rise through, W. Own: 100 L/h of air rising 0.3 m. */
export const BUBBLES_W = 0.08

/**
 * Whether the surface takes up the oxygen that the group's feeding costs, in water as warm as these animals like it at most.
 *
 * Value: grams of feed a day that the surface carries with the return pointed away from it. Limit: what a usual stock eats; *marginal* where it takes a
 * return pointed at the surface. Told beside it is what is left in a power cut. Plants that breathe by night and decay come on top; air is thinner above the sea.
 *
 * @example oxygenCheck(situation, deliveryOf(situation))?.value // 6.9 g of oxygen a day through the surface, where 1 g is asked
 */
export function oxygenCheck(situation: Situation, delivery: Delivery | undefined): Finding | null {
  const { gear, conditions } = situation
  if (gear.filters.length === 0) return null
  const stock = stockFeed(situation)
  const eaten = feedGrams(stock.grams.high)
  const still = carriedBy(situation, (surface) => ({ low: stillTransfer(surface), high: stillTransfer(surface) }))
  const bubbles = appliancesOf(gear).some(({ kind }) => kind === 'air_pump') ? BUBBLES_W : 0
  if (delivery === undefined && bubbles === 0 && eaten.value > still.least.value) return unknownFlow(situation, stock, eaten, still.least)
  const power = returnPowerW(delivery)
  const stirred = carriedBy(situation, (surface, waterKg) => ({
    low: stirredBy(surface, power.low + bubbles, waterKg).low,
    high: stirredBy(surface, power.high + bubbles, waterKg).high,
  }))
  const verdict: Verdict = eaten.value <= stirred.least.value ? 'fits' : eaten.value <= stirred.most.value ? 'marginal' : 'does_not_fit'
  return makeFinding('surface_oxygen', {
    verdict,
    value: stirred.least,
    limit: { kind: 'at_least', low: eaten },
    reason: reasonOf(situation, stock, stirred, still.least),
    action: verdict === 'fits' ? null : { text: ACTION },
    assumed: namesOf(
      ['movement of the surface', stock.assumed],
      conditions.altitudeM === undefined ? ['height above the sea'] : [],
      situation.tankUnstated,
      situation.fillDefaults,
    ),
  })
}

const ACTION = phrase`Point the filter's return at the surface or add an air pump; feed less, or keep fewer animals. Watch for gasping at dawn.`

/** As warm as these animals like it at most, °C. @example warmestOf(situation) // 28 */
export const warmestOf = ({ conditions }: Situation): number => Math.min(conditions.livestock.highestC, WARMEST_C)

interface Carried {
  least: Quantity
  most: Quantity
}

/** Grams of feed a day whose oxygen passes the surface, over every tank the stated figures allow. */
function carriedBy(situation: Situation, transferOf: (surface: Surface, waterKg: number) => Span): Carried {
  const need = oxygenOfFeed()
  const { livestock, altitudeM } = situation.conditions
  const { water } = livestock
  const ends = situation.corners.map(({ geometry, mass }) => {
    const areaM2 = geometry.insidePlanMm2 / 1e6
    const surface = { areaM2, waterC: warmestOf(situation), water, altitudeM }
    const { low, high } = transferOf(surface, mass.waterKg)
    return { low: surfaceOxygen(surface, low) / need.high, high: surfaceOxygen(surface, high) / need.low }
  })
  return { least: feedGrams(over(ends, ({ low }) => low).low), most: feedGrams(over(ends, ({ high }) => high).high) }
}

/** What the filters' returns put into the water, with loaded media and with clean ones, W. @example returnPowerW(undefined) // { low: 0, high: 0 } */
export function returnPowerW(delivery: Delivery | undefined): Span {
  const power = ({ flow, hoseMm, count }: Delivery['each'][number]): Span => ({
    low: count * jetPowerW(flow.loaded.low, hoseMm),
    high: count * jetPowerW(flow.clean.high, hoseMm),
  })
  return sumOf((delivery?.each ?? []).map(power))
}

function reasonOf(situation: Situation, stock: StockFeed, { least, most }: Carried, still: Quantity): Phrase {
  const { altitudeM } = situation.conditions
  const where = altitudeM === undefined ? phrase`at the height of the sea` : phrase`at ${stated(altitudeM, 'm', 0)} above the sea`
  return phrase`${feedWords(stock)}. At ${quantity(warmestOf(situation), 'degC', 1)} and ${where} the surface takes up the oxygen for ${least} with the return pointed away from it and for ${most} with the return pointed at it; in a power cut for ${still}.`
}

const unknownFlow = (situation: Situation, stock: StockFeed, eaten: Quantity, still: Quantity): Finding =>
  makeFinding('surface_oxygen', {
    verdict: 'not_known',
    limit: { kind: 'at_least', low: eaten },
    reason: phrase`${feedWords(stock)}; a surface that nothing stirs takes up the oxygen for ${still}. How much the filter stirs it is not known without its flow.`,
    action: { text: phrase`Enter the printed flow of the filter, or add an air pump.` },
    missing: ['flow of the filter'],
    assumed: namesOf([stock.assumed], situation.tankUnstated, situation.fillDefaults),
  })
