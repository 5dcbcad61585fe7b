import type { SubstrateSpec } from '../catalog/spec.ts'
import { phrase, quantity } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
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

/** Whether the packs make the bed that is wanted. Value: mm at the thin end. Limit: the wanted depth; *marginal* from 0.7 of it, *fits* from 0.9. */
export function substrateDepth(situation: Situation): Finding | null {
  const { gear, conditions, corners } = situation
  const wantedMm = conditions.substrateDepthMm
  if (wantedMm <= 0 || (gear.substrates.length === 0 && gear.notNeeded['substrate'] !== undefined)) return null
  const areaM2 = over(corners, ({ geometry }) => (geometry.insideLengthMm * geometry.insideWidthMm) / 1e6)
  const wanted = quantity(wantedMm, 'mm', 0)
  const neededL = quantity(wantedMm * areaM2.high, 'L', 0)
  const source = {
    tag: 'common_practice',
    text: 'A bed is bulk volume over floor area; gravel and sand 1.5 to 1.7 kg a litre, active soil about 1.0.',
  } as const
  const base = { limit: { kind: 'at_least', low: wanted } as const, source }
  const defaults = assumedOf(conditions, ['substrateDepthMm'])
  const action = {
    text: phrase`A bed of ${wanted} takes about ${neededL}.`,
    want: { slot: 'substrate', quantity: 1, minimum: {} },
  } as const
  const packs = gear.substrates.map(({ spec, quantity: count }) => ({
    volume: packVolumeL(spec),
    count,
    byMass: spec.packVolumeL === undefined,
  }))
  if (packs.length === 0)
    return makeFinding('substrate_depth', {
      ...base,
      verdict: 'does_not_fit',
      value: quantity(0, 'mm', 0),
      reason: phrase`No substrate is chosen; a bed of ${wanted} was asked for.`,
      action,
      assumed: defaults,
    })
  const volumes = packs.flatMap(({ volume, count }) => (volume ? [{ low: volume.low * count, high: volume.high * count }] : []))
  if (volumes.length < packs.length)
    return makeFinding('substrate_depth', {
      ...base,
      verdict: 'not_known',
      reason: phrase`A pack states neither litres nor weight; a bed of ${wanted} takes about ${neededL}.`,
      action: { text: phrase`Enter the pack's litres or weight.` },
      assumed: defaults,
      missing: ['litres or weight of a pack'],
    })
  const bought = sumOf(volumes)
  const thin = quantity(bought.low / areaM2.high, 'mm', 0)
  const judge = (mm: number) => judgeAtLeast(mm, wantedMm * THIN_SHARE, wantedMm * (GOOD_SHARE - THIN_SHARE))
  const unstated = namesOf(packs.some(({ byMass }) => byMass) ? ['litres of a pack'] : [], situation.tankUnstated)
  const outcome = settled(judge(thin.value), judge(quantity(bought.high / areaM2.low, 'mm', 0).value), unstated, defaults)
  return makeFinding('substrate_depth', {
    ...outcome,
    ...base,
    value: thin,
    reason: phrase`The packs make a bed of about ${thin}; ${wanted} was asked for, which takes about ${neededL}.`,
    action: outcome.verdict === 'fits' ? null : action,
  })
}
