import type { SubstrateSpec } from '../catalog/spec.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Action, Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { exactly, over, sumOf, type Span } from './span.ts'
import { BULK_KG_PER_L } from './typical-ranges.ts'
import { judgeAtLeast } from './verdict.ts'
import { assumedOf } from './words.ts'

/** Within a tenth of the wanted depth is as good as it: beds are not level. Own. */
const GOOD_SHARE = 0.9
/** From here on the bed is thinner than asked and still a bed. Own. */
const THIN_SHARE = 0.7

/** Bulk litres of one pack; undefined where the pack states neither litres nor kilograms. @example packVolumeL({ type: 'gravel', packMassKg: 8 }) // { low: 4.7, high: 5.3 } */
export function packVolumeL(spec: SubstrateSpec): Span | undefined {
  if (spec.packVolumeL !== undefined) return exactly(spec.packVolumeL)
  if (spec.packMassKg === undefined) return undefined
  const bulk = BULK_KG_PER_L[spec.type ?? 'unknown']
  return { low: spec.packMassKg / bulk.high, high: spec.packMassKg / bulk.low }
}

/** What was asked for, and what every answer about it shares. */
interface WantedBed {
  wantedMm: number
  areaM2: Span
  takes: Phrase
  /** From here on the bed is as good as the wanted one, whole mm. */
  goodMm: number
  base: Pick<Finding, 'limit'>
  action: Action
  defaults: string[]
}

function wantedBed({ conditions, corners }: Situation): WantedBed {
  const areaM2 = over(corners, ({ geometry }) => geometry.insidePlanMm2 / 1e6)
  const wanted = quantity(conditions.substrateDepthMm, 'mm', 0)
  const good = quantity(Math.max(1, conditions.substrateDepthMm * GOOD_SHARE), 'mm', 0)
  const takes = phrase`a bed of ${wanted} takes about ${quantity(conditions.substrateDepthMm * areaM2.high, 'L', 0)}`
  return {
    wantedMm: conditions.substrateDepthMm,
    areaM2,
    takes,
    goodMm: good.value,
    base: { limit: { kind: 'at_least', low: good } },
    action: { text: phrase`Choose as many packs as it needs: ${takes}.`, want: { slot: 'substrate', quantity: 1, minimum: {} } },
    defaults: assumedOf(conditions, ['substrateDepthMm']),
  }
}

/**
 * Whether the packs make the bed that is wanted. Value: mm at the thin end. Limit: 0.9 of the wanted depth; *marginal* from 0.7 of it. Nothing is judged of a
 * bare floor that nobody asked a bed for and no plant needs.
 *
 * @example substrateDepth(situation)?.value // 54 mm, where 45 mm are asked
 */
export function substrateDepth(situation: Situation): Finding | null {
  const { gear, conditions } = situation
  if (Math.round(conditions.substrateDepthMm) <= 0 || (gear.substrates.length === 0 && mayStayBare(situation))) return null
  const bed = wantedBed(situation)
  if (gear.substrates.length === 0)
    return makeFinding('substrate_depth', {
      ...bed.base,
      verdict: 'does_not_fit',
      value: quantity(0, 'mm', 0),
      reason: phrase`No substrate is chosen; ${bed.takes}.`,
      action: bed.action,
      assumed: bed.defaults,
    })
  const volumes = gear.substrates.map(({ spec, quantity: count }) => {
    const one = packVolumeL(spec)
    return one && { low: one.low * count, high: one.high * count }
  })
  const stated = volumes.filter((volume) => volume !== undefined)
  if (stated.length === volumes.length) return boughtBed(situation, bed, sumOf(stated))
  return makeFinding('substrate_depth', {
    ...bed.base,
    verdict: 'not_known',
    reason: phrase`A pack states neither litres nor weight; ${bed.takes}.`,
    action: { text: phrase`Enter the pack's litres or weight.` },
    assumed: bed.defaults,
    missing: ['litres or weight of a pack'],
  })
}

/** Told so, or nobody asked for a bed and nothing is to grow in one. */
const mayStayBare = ({ gear, conditions }: Situation): boolean =>
  gear.notNeeded['substrate'] !== undefined || (conditions.plants === 'none' && conditions.assumed.includes('substrateDepthMm'))

function boughtBed({ gear, tankUnstated }: Situation, bed: WantedBed, bought: Span): Finding {
  const thin = quantity(bought.low / bed.areaM2.high, 'mm', 0)
  const thick = quantity(bought.high / bed.areaM2.low, 'mm', 0)
  const judge = (mm: number): Verdict => (mm >= bed.goodMm ? 'fits' : judgeAtLeast(mm, bed.wantedMm * THIN_SHARE, Infinity))
  const byMass = gear.substrates.some(({ spec }) => spec.packVolumeL === undefined)
  const outcome = settled(judge(thin.value), judge(thick.value), namesOf(byMass ? ['litres of a pack'] : [], tankUnstated), bed.defaults)
  return makeFinding('substrate_depth', {
    ...outcome,
    ...bed.base,
    value: thin,
    reason: phrase`The packs make a bed of about ${thin}; ${bed.takes}.`,
    action: outcome.verdict === 'fits' ? null : bed.action,
  })
}
