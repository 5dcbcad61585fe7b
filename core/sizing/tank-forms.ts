import type { TankSpec } from '../catalog/spec.ts'
import { tankPlan, type TankPlan } from './tank-plan.ts'
import type { Span } from './span.ts'
import { BOW_OVER_LENGTH, ENDS_OVER_BACK } from './typical-ranges.ts'

type PlanSpec = Pick<TankSpec, 'lengthMm' | 'widthMm' | 'shape' | 'bowMm' | 'endMm'>

/**
 * Plans at the ends of what a tank's maker left out of its shape, and the words for it. Area, volume and loss run one way with either figure.
 *
 * @example plansOf({ lengthMm: 900, widthMm: 400, shape: 'bow_front' }).unstated // ['bow of the front']
 */
export function plansOf({ lengthMm, widthMm, shape, bowMm, endMm }: PlanSpec): { plans: TankPlan[]; unstated: string[] } {
  const box = { lengthMm, widthMm }
  if (shape === undefined || shape === 'rectangular') return { plans: [box], unstated: [] }
  if (shape === 'bow_front') {
    if (bowMm !== undefined) return { plans: [{ ...box, form: shape, bowMm }], unstated: [] }
    const most = Math.min(lengthMm * BOW_OVER_LENGTH.high, widthMm / 2)
    const plans = [Math.min(lengthMm * BOW_OVER_LENGTH.low, most), most].map((bow) => ({ ...box, form: shape, bowMm: bow }))
    return { plans, unstated: ['bow of the front'] }
  }
  if (shape === 'corner_cut') {
    if (endMm !== undefined) return { plans: [{ ...box, form: shape, endMm }], unstated: [] }
    const back = Math.min(lengthMm, widthMm)
    const plans = [ENDS_OVER_BACK.low, ENDS_OVER_BACK.high].map((share) => ({ ...box, form: shape, endMm: back * share }))
    return { plans, unstated: ['depth of the ends'] }
  }
  return { plans: [{ ...box, form: shape }], unstated: [] }
}

/**
 * Area that a tank covers, outside, m²; between two ends where its shape is not wholly stated. The thickness of its glass plays no part.
 *
 * @example footprintM2({ lengthMm: 500, widthMm: 500, shape: 'cylinder' }) // { low: 0.19635, high: 0.19635 }
 */
export function footprintM2(tank: PlanSpec): Span {
  const areas = plansOf(tank).plans.map((plan) => tankPlan(plan, 0).areaMm2 / 1e6)
  return { low: Math.min(...areas), high: Math.max(...areas) }
}
