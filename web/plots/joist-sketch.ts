import type { JoistConditions } from '../../core/sizing/conditions.ts'
import { framed, label, px, sign, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

type Lie = NonNullable<JoistConditions['joistLie']>

const WIDTH = 96
const HEIGHT = 64

/** A wall from above, hatched as a plan has it. */
function wallAbove(paint: Paint): string {
  const strokes = Array.from({ length: 13 }, (_, index) => `M${px(2 + index * 7.2)} 9l5-5`)
  return `<path d="M2 3.5H94M2 9.5H94" stroke="${paint('ink')}" stroke-width="1.4"/><path d="${strokes.join('')}" stroke="${paint('ink')}"/>`
}

/** Joists under the boards, as the hidden lines that they are. */
const joists = (path: string, paint: Paint): string =>
  `<path d="${path}" stroke="${paint('edge')}" stroke-width="2.4" stroke-dasharray="5 2.5"/>`
const downTheRoom = [8, 24, 40, 56, 72, 88].map((x) => `M${x} 10V62`).join('')
const alongTheRoom = [18, 30, 42, 54].map((y) => `M2 ${y}H94`).join('')

const tankAt = (y: number, paint: Paint): string =>
  `<rect x="22" y="${y}" width="52" height="17" fill="${paint('water')}" stroke="${paint('glass')}" stroke-width="1.8"/>`

const SHAPES: Record<Lie | 'unknown', (paint: Paint) => string> = {
  bearing_wall: (paint) => wallAbove(paint) + joists(downTheRoom, paint) + tankAt(11.5, paint),
  across: (paint) => wallAbove(paint) + joists(downTheRoom, paint) + tankAt(32, paint),
  along: (paint) => wallAbove(paint) + joists(alongTheRoom, paint) + tankAt(27.5, paint),
  unknown: (paint) =>
    wallAbove(paint) +
    tankAt(27, paint) +
    `<path d="M44 32.4c0-2.4 1.7-3.7 3.8-3.7s3.7 1.4 3.7 3.4c0 3-3.8 3-3.8 5.9M47.7 40.4v1.8" fill="none" stroke="${paint('ink')}" stroke-width="1.6"/>`,
}

/** The tank from above, and the joists under it: how it lies on them. Its words stand beside it, so it is silent. */
export function joistSketch(lie: Lie | 'unknown', options: { paper?: boolean } = {}): string {
  const paint = paintFor(options.paper)
  return sign({ width: WIDTH, height: HEIGHT, className: 'sketch' }, SHAPES[lie](paint))
}

/** Each half of the figure: side by side where there is room for both, else one under the other. */
const HALF = { width: 164, height: 110 }

/** What the two figures of a floor of joists are: how far apart, from middle to middle, and how far from one bearing to the next. */
export function joistFigures(options: PlotOptions & { width?: number }): string {
  const paint = paintFor(options.paper)
  const beside = (options.width ?? 2 * HALF.width) >= 2 * HALF.width
  const move = beside ? `${HALF.width} 0` : `0 ${HALF.height}`
  return framed(
    {
      ...options,
      width: beside ? 2 * HALF.width : HALF.width,
      height: beside ? HALF.height : 2 * HALF.height,
      className: 'sketch-figure',
      title: 'What to measure of the joists',
      desc: 'First, three joists cut across under the floorboards: the spacing is from the middle of one joist to the middle of the next. Then one joist from the side on two walls: the span is from wall to wall.',
    },
    `${cutAcross(paint)}<g transform="translate(${move})">${fromTheSide(paint)}</g>`,
  )
}

const arrow = (from: number, to: number, y: number, paint: Paint): string =>
  `<path d="M${from} ${y}H${to}M${from + 4} ${y - 3}l-4 3 4 3M${to - 4} ${y - 3}l4 3-4 3" fill="none" stroke="${paint('pen')}" stroke-width="1.5"/>`

function cutAcross(paint: Paint): string {
  const beams = [16, 58, 100].map(
    (x) => `<rect x="${x}" y="30" width="10" height="34" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.4"/>`,
  )
  return (
    `<rect x="6" y="24" width="116" height="6" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.4"/>` +
    beams.join('') +
    `<path d="M21 34V84M63 34V84" stroke="${paint('pen')}" stroke-dasharray="3 2.5"/><path d="M112 48h10" stroke="${paint('edge')}"/>` +
    arrow(21, 63, 80, paint) +
    label({ x: 6, y: 16, text: 'floorboards', fill: paint('ink-2') }) +
    label({ x: 125, y: 52, text: 'joist', fill: paint('ink-2') }) +
    label({ x: 6, y: 103, text: 'Spacing, middle to middle', fill: paint('ink') })
  )
}

function fromTheSide(paint: Paint): string {
  const hatch = (x: number): string => Array.from({ length: 4 }, (_, index) => `M${x} ${50 + index * 9}l10-7`).join('')
  return (
    `<rect x="6" y="24" width="118" height="6" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.4"/>` +
    `<rect x="6" y="30" width="118" height="12" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.4"/>` +
    `<path d="M8 42v44M18 42v44M112 42v44M122 42v44" stroke="${paint('ink')}" stroke-width="1.4"/><path d="${hatch(8)}${hatch(112)}" stroke="${paint('ink')}"/>` +
    arrow(18, 112, 66, paint) +
    label({ x: 6, y: 16, text: 'joist, from its side', fill: paint('ink-2') }) +
    label({ x: 6, y: 103, text: 'Span, wall to wall', fill: paint('ink') })
  )
}
