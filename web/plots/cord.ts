import { framed, label, px, type PlotOptions } from './frame.ts'
import { paintFor } from './palette.ts'

interface CordSteps {
  /** One entry a step, in order: true where it is done. */
  done: readonly boolean[]
  /** Index of the step one is on; null when all are done. */
  current: number | null
}

const LEVEL = 12
const SAG = 31
const ENDS = 6

/** Where the steps' knots lie; two-decimal spacing so that text stays the same on every engine. */
export const cordKnots = (count: number, width: number): number[] =>
  Array.from({ length: count }, (_, index) => (count < 2 ? width / 2 : ENDS + (index * (width - 2 * ENDS)) / (count - 1)))

/**
 * The progress of a setup as a cord that sags at the step one is on: the part already passed thick, done steps as filled knots.
 *
 * @example cordProgress({ done: [true, false, false], current: 1 }, { id: 'progress' })
 */
export function cordProgress(steps: CordSteps, options: PlotOptions & { width?: number }): string {
  const width = options.width ?? 358
  const paint = paintFor(options.paper)
  const count = steps.done.length
  const doneCount = steps.done.filter(Boolean).length
  const knots = cordKnots(count, width)
  const at = steps.current
  const knotAt = at === null ? null : (knots[at] ?? null)
  const pitch = count < 2 ? 40 : (width - 2 * ENDS) / (count - 1)
  const sag = Math.min(24, Math.max(14, pitch))
  const dots = knots.map((x, index) => {
    if (index === at) return ''
    return steps.done[index] === true
      ? `<circle class="knot-done" cx="${px(x)}" cy="${LEVEL}" r="4" fill="${paint('glass')}"/>`
      : `<circle class="knot-open" cx="${px(x)}" cy="${LEVEL}" r="3.4" fill="${paint('paper')}" stroke="${paint('edge')}" stroke-width="1.5"/>`
  })
  return framed(
    {
      ...options,
      width,
      height: 44,
      className: 'cord',
      title: at === null ? `All ${count} steps are done` : `Step ${at + 1} of ${count}`,
      desc: `${doneCount} of ${count} steps are done`,
    },
    cordLine(knotAt, sag, width, paint) +
      dots.join('') +
      (knotAt === null || at === null ? '' : here(Math.min(width - 9.5, Math.max(9.5, knotAt)), at, paint)),
  )
}

function cordLine(knotAt: number | null, sag: number, width: number, paint: ReturnType<typeof paintFor>): string {
  const end = width - ENDS
  const passed = `fill="none" stroke="${paint('glass')}" stroke-width="3"`
  if (knotAt === null) return `<path d="M${ENDS} ${LEVEL}H${px(end)}" ${passed}/>`
  const left = Math.max(ENDS - sag, knotAt - sag)
  const right = Math.min(end + sag, knotAt + sag)
  const down = `C${px(knotAt - sag * 0.5)} ${LEVEL} ${px(knotAt - sag * 0.5)} ${SAG} ${px(knotAt)} ${SAG}`
  const up = `C${px(knotAt + sag * 0.5)} ${SAG} ${px(knotAt + sag * 0.5)} ${LEVEL} ${px(right)} ${LEVEL}`
  const before = knotAt - sag < ENDS ? `M${px(left)} ${LEVEL}${down}` : `M${ENDS} ${LEVEL}H${px(left)}${down}`
  const after = right >= end ? up : `${up}H${px(end)}`
  return `<path d="${before}" ${passed}/><path d="M${px(knotAt)} ${SAG}${after}" fill="none" stroke="${paint('edge')}" stroke-width="1.5"/>`
}

const here = (centre: number, index: number, paint: ReturnType<typeof paintFor>): string => {
  return (
    `<circle class="knot-here" cx="${px(centre)}" cy="${SAG}" r="9" fill="${paint('glass')}"/>` +
    label({ x: centre, y: SAG + 4.3, text: String(index + 1), fill: paint('paper'), anchor: 'middle', weight: 700 })
  )
}
