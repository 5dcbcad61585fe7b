import { DRAIN_RESERVE } from '../sizing/drain-down.ts'
import type { Finding } from '../sizing/finding.ts'
import type { Situation } from '../sizing/situation.ts'
import { PIPES_L, SIPHON_BELOW_MM } from '../sizing/typical-ranges.ts'
import { fine, phrase, stated } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { exact, line, plain } from './worked-line.ts'

const MM3_PER_LITRE = 1e6
/** Of what is told, L: a tenth, and in gallons four of them. */
const TOLD_L = 0.1

/**
 * What runs down when the return pump stops, at its most, and what of the sump's room may be used for it.
 *
 * Units: the reader's. Source: as `drainsBack`; upright panes hold in each share of their depth the same share of the water.
 *
 * @example workedDrain(situation, drainDown)[1] // { name: 'Runs down at most', value: '245.3 L × 0.061 + 1.0 L = 16.7 L', from: 'reckoned' }
 */
export function workedDrain(situation: Situation, { value, limit }: Finding): ExplainedInput[] {
  const { corners, sump, conditions } = situation
  if (value === undefined) return []
  const siphonMm = conditions.siphonBelowMm ?? SIPHON_BELOW_MM.high
  const pipes = exact(conditions.pipeVolumeL ?? PIPES_L.high, 'L', 2)
  const ways = corners.map(({ geometry }) => ({ geometry, downL: (geometry.insidePlanMm2 * siphonMm) / MM3_PER_LITRE }))
  const most = ways.toSorted((a, b) => Math.min(b.downL, b.geometry.waterVolumeL) - Math.min(a.downL, a.geometry.waterVolumeL))[0]
  if (most === undefined) return []
  const { geometry, downL } = most
  const { columnVolumeL, waterVolumeL } = geometry
  const share = downL / columnVolumeL
  const outOfTank =
    downL < waterVolumeL
      ? phrase`${exact(columnVolumeL, 'L', digitsFor(columnVolumeL, downL, TOLD_L))} × ${plain(share, digitsFor(share, downL, TOLD_L))}`
      : phrase`${exact(waterVolumeL, 'L', 2)}, all of the water,`
  const shareDigits = digitsFor(share, downL, TOLD_L)
  const side = (mm: number) => fine(stated(mm, 'mm', 1))
  const insideMm = (columnVolumeL * MM3_PER_LITRE) / geometry.insidePlanMm2
  const depth = phrase`${side(siphonMm)} ÷ ${side(insideMm)}, a share of ${plain(share, shareDigits)}`
  const runs = [
    ...(downL < waterVolumeL ? [line('Depth to the siphon ÷ depth inside, to the water line', depth)] : []),
    line('Runs down at most, with the pipes', phrase`${outOfTank} + ${pipes} = ${value}`),
  ]
  if (!sump || limit?.kind !== 'at_most') return runs
  const freeL = sump.freeL.low
  const usable = phrase`${exact(freeL, 'L', 2)} × ${plain(1 - DRAIN_RESERVE, 1)} = ${exact(freeL * (1 - DRAIN_RESERVE), 'L', 1)}`
  return [...runs, line('Room in the sump, a fifth kept free', usable)]
}
