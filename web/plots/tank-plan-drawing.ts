import type { DrawnPlan } from '../../core/quote/revision.ts'
import { tankOutline } from '../../core/sizing/tank-plan.ts'
import { px } from './frame.ts'
import type { Paint } from './palette.ts'

/** A tank seen from above: its back towards the top, its front towards the viewer. */
export interface PlanView {
  plan: DrawnPlan
  lengthMm: number
  widthMm: number
  /** Upper left corner of the box around it. */
  x: number
  y: number
  pxPerMm: number
  fill: string
}

/** How far the wall is drawn beyond the tank. */
const WALL_PAST = 4
/** Between tank and wall. */
const WALL_GAP = 3

/** Shape as a path, to scale: straight panes as lines, bent ones as arcs of their own radius. */
function pathOf({ plan, lengthMm, widthMm, x, y, pxPerMm }: PlanView): string {
  const outline = tankOutline({ lengthMm, widthMm, ...measuresOf(plan) }, 0)
  const place = (at: { x: number; y: number }): string => `${px(x + at.x * pxPerMm)} ${px(y + at.y * pxPerMm)}`
  const first = outline[0]
  if (!first) return ''
  return outline.reduce(
    (path, { from, sagittaMm }, index) => {
      const to = outline[(index + 1) % outline.length]?.from ?? first.from
      if (sagittaMm <= 0) return `${path}L${place(to)}`
      const radius = (Math.hypot(to.x - from.x, to.y - from.y) ** 2 / 4 + sagittaMm ** 2) / (2 * sagittaMm)
      const r = px(radius * pxPerMm)
      return `${path}A${r} ${r} 0 0 1 ${place(to)}`
    },
    `M${place(first.from)}`,
  )
}

const measuresOf = ({ form, bowMm, endMm }: DrawnPlan) => ({
  form,
  ...(bowMm === undefined ? {} : { bowMm }),
  ...(endMm === undefined ? {} : { endMm }),
})

/** The wall or, for a corner tank, both walls behind it. */
function walls({ plan, lengthMm, widthMm, x, y, pxPerMm }: PlanView): string {
  const [right, foot] = [x + lengthMm * pxPerMm + WALL_PAST, y + widthMm * pxPerMm + WALL_PAST]
  const [left, top] = [x - WALL_GAP, y - WALL_GAP]
  const corner = plan.form === 'corner_cut' || plan.form === 'corner_round'
  return corner ? `M${px(left)} ${px(foot)}V${px(top)}H${px(right)}` : `M${px(left - 1)} ${px(top)}H${px(right)}`
}

/** The tank's plan with its water, and the wall behind it. */
export function tankPlanDrawing(view: PlanView, paint: Paint): string {
  return (
    `<path class="tank-plan" d="${pathOf(view)}Z" fill="${view.fill}" stroke="${paint('glass')}" stroke-width="1.6" stroke-linejoin="round"/>` +
    `<path d="${walls(view)}" fill="none" stroke="${paint('ink')}" stroke-width="1.3"/>`
  )
}

/** Upright edges between flat panes that a viewer in front sees, from the left end, mm. */
export function frontEdgesMm(plan: DrawnPlan | undefined, lengthMm: number): number[] {
  if (plan?.form === 'hexagon') return [lengthMm / 4, (lengthMm * 3) / 4]
  return plan?.form === 'corner_cut' && plan.endMm !== undefined ? [plan.endMm] : []
}
