import type { TankForm } from '../catalog/tank-shape.ts'
import { planFigures, type Outline, type PlanFigures, type Side } from './plan-outline.ts'

/** A tank seen from above: the box around it, and what its shape needs besides. Millimetres, outside. */
export interface TankPlan {
  lengthMm: number
  widthMm: number
  /** Absent is rectangular. */
  form?: TankForm
  /** Bow-front: how far the front's middle stands out before its ends. */
  bowMm?: number
  /** Corner with a cut front: depth of the short end on either back. */
  endMm?: number
}

const straight = (x: number, y: number): Side => ({ from: { x, y }, sagittaMm: 0 })

/** An arc about its centre, standing out from a chord by what its radius leaves. */
const sagittaOf = (radiusMm: number, chordMm: number): number => radiusMm - Math.sqrt(Math.max(0, radiusMm ** 2 - chordMm ** 2 / 4))

function rectangle({ lengthMm: l, widthMm: w }: TankPlan, t: number): Outline {
  return [straight(t, t), straight(l - t, t), straight(l - t, w - t), straight(t, w - t)]
}

/** The front is an arc on the tank's length; the inner one has the same centre and a radius that is less by the pane. */
function bowFront({ lengthMm: l, widthMm: w, bowMm: bow = 0 }: TankPlan, t: number): Outline {
  const radius = (l ** 2 / 4 + bow ** 2) / (2 * bow)
  const ends = w - radius + Math.sqrt(Math.max(0, (radius - t) ** 2 - (l / 2 - t) ** 2))
  return [straight(t, t), straight(l - t, t), { from: { x: l - t, y: ends }, sagittaMm: w - t - ends }, straight(t, ends)]
}

function cylinder({ lengthMm: d }: TankPlan, t: number): Outline {
  const radius = d / 2 - t
  return [
    { from: { x: t, y: d / 2 }, sagittaMm: radius },
    { from: { x: d - t, y: d / 2 }, sagittaMm: radius },
  ]
}

/** Front and back are half the length; the slanted sides move inwards by the pane, square to themselves. */
function hexagon({ lengthMm: l, widthMm: w }: TankPlan, t: number): Outline {
  const slant = Math.hypot(l / 4, w / 2)
  const [half, depth] = [l / 2 - (t * slant) / (w / 2), w / 2 - t]
  const front = half - ((l / 4) * depth) / (w / 2)
  const [x, y] = [l / 2, w / 2]
  return [
    straight(x - half, y),
    straight(x - front, y - depth),
    straight(x + front, y - depth),
    straight(x + half, y),
    straight(x + front, y + depth),
    straight(x - front, y + depth),
  ]
}

/** The backs run along y = 0 and x = 0; the front is cut from the right end to the lower one. */
function cornerCut({ lengthMm: l, widthMm: w, endMm: end = 0 }: TankPlan, t: number): Outline {
  const cut = Math.hypot(w - end, l - end)
  const reach = (w - end) * l + (l - end) * end - t * cut
  const right = (reach - (w - end) * (l - t)) / (l - end)
  const lower = (reach - (l - end) * (w - t)) / (w - end)
  return [straight(t, t), straight(l - t, t), straight(l - t, right), straight(lower, w - t), straight(t, w - t)]
}

function cornerRound({ lengthMm: r }: TankPlan, t: number): Outline {
  const reach = Math.sqrt(Math.max(0, (r - t) ** 2 - t ** 2))
  return [straight(t, t), { from: { x: reach, y: t }, sagittaMm: sagittaOf(r - t, Math.SQRT2 * (reach - t)) }, straight(t, reach)]
}

const OUTLINES: Record<TankForm, (plan: TankPlan, insetMm: number) => Outline> = {
  rectangular: rectangle,
  bow_front: bowFront,
  cylinder,
  hexagon,
  corner_cut: cornerCut,
  corner_round: cornerRound,
}

/**
 * Outline of a tank, moved inwards by so much: 0 gives the outside, the thickness of the panes the inside.
 *
 * Units:  mm. Range: a plan that `planFault` accepts and an inset that leaves something inside (`insideBox`).
 * Source: geometry; every pane is as thick as the others.
 */
export const tankOutline = (plan: TankPlan, insetMm: number): Outline => OUTLINES[plan.form ?? 'rectangular'](plan, insetMm)

/** Area, length all round, centre and lever of a tank's plan. A rectangle's are the plain products, to the last bit. */
export function tankPlan(plan: TankPlan, insetMm: number): PlanFigures {
  if ((plan.form ?? 'rectangular') !== 'rectangular') return planFigures(tankOutline(plan, insetMm))
  const [length, width] = [plan.lengthMm - 2 * insetMm, plan.widthMm - 2 * insetMm]
  return {
    areaMm2: length * width,
    roundMm: 2 * (length + width),
    centre: { x: plan.lengthMm / 2, y: plan.widthMm / 2 },
    leverMm: Math.min(length, width) / 2,
  }
}

/** Whether panes of this thickness leave something inside: every inner side still runs the way of its outer one. */
export function leavesInside(plan: TankPlan, glassMm: number): boolean {
  if ((plan.form ?? 'rectangular') === 'rectangular') return 2 * glassMm < Math.min(plan.lengthMm, plan.widthMm)
  const [outer, inner] = [tankOutline(plan, 0), tankOutline(plan, glassMm)]
  return outer.every(({ from: a }, index) => {
    const next = (index + 1) % outer.length
    const [b, p, q] = [outer[next]?.from ?? a, inner[index]?.from ?? a, inner[next]?.from ?? a]
    return (b.x - a.x) * (q.x - p.x) + (b.y - a.y) * (q.y - p.y) > 0
  })
}

/**
 * Length and depth of the box around the inside.
 *
 * @example insideBox({ lengthMm: 500, widthMm: 500, form: 'cylinder' }, 10) // { lengthMm: 480, widthMm: 480 }
 */
export function insideBox(plan: TankPlan, glassMm: number): { lengthMm: number; widthMm: number } {
  if (plan.form !== 'hexagon' && plan.form !== 'corner_round')
    return { lengthMm: plan.lengthMm - 2 * glassMm, widthMm: plan.widthMm - 2 * glassMm }
  const xs = tankOutline(plan, glassMm).map(({ from }) => from.x)
  const lengthMm = Math.max(...xs) - Math.min(...xs)
  return { lengthMm, widthMm: plan.form === 'hexagon' ? plan.widthMm - 2 * glassMm : lengthMm }
}

/** Share of a round tank that faces the wall, as far as insulation behind it goes. Own. */
const BACK_OF_ROUND = 0.25

/** Length of wall that the tank turns to the room's, mm: what a sheet of insulation behind it covers. */
export function backMm({ lengthMm, widthMm, form = 'rectangular' }: TankPlan): number {
  if (form === 'cylinder') return Math.PI * lengthMm * BACK_OF_ROUND
  if (form === 'hexagon') return lengthMm / 2
  return form === 'corner_cut' || form === 'corner_round' ? lengthMm + widthMm : lengthMm
}

/** Makers round to the millimetre and to half an inch. Own. */
const ROUND_SLACK_MM = 13

export type PlanFault = { code: 'not_round' } | { code: 'bow_too_deep'; mostMm: number } | { code: 'ends_too_deep'; mostMm: number }

/**
 * What is wrong with a plan; null where it is one. A cylinder and a quarter round are as deep as they are long, within half an inch; a bow is less than
 * half the length and leaves ends; the ends of a cut corner are shorter than both backs.
 */
export function planFault({ lengthMm, widthMm, form, bowMm, endMm }: TankPlan): PlanFault | null {
  if (form === 'cylinder' || form === 'corner_round') return Math.abs(lengthMm - widthMm) > ROUND_SLACK_MM ? { code: 'not_round' } : null
  const most = Math.floor(form === 'bow_front' ? Math.min(lengthMm / 2, widthMm * 0.9) : Math.min(lengthMm, widthMm) * 0.9)
  if (form === 'bow_front' && bowMm !== undefined && bowMm > most) return { code: 'bow_too_deep', mostMm: most }
  if (form === 'corner_cut' && endMm !== undefined && endMm > most) return { code: 'ends_too_deep', mostMm: most }
  return null
}
