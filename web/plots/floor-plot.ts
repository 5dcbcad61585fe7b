import type { FloorPlan } from '../../core/sizing/floor-plan.ts'
import { quantity, type ReaderUnits } from '../../core/units/quantity.ts'
import { sayLength, sayQuantity } from '../../core/units/say.ts'
import { drawKeys, keysHeight, lineKey, type Key } from './chart.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

interface FloorOptions extends PlotOptions {
  reader: ReaderUnits
  width: number
}

/** Walls at the top and the foot, and the span between them at most. */
const WALL = 12
const TOP = 18
const TALLEST = 190
/** Left for the tank's joists; right of them the span is told. */
const SIDE = 84
const FOOT = 30
/** Joists shown beyond the tank on either side, in spacings. */
const BEYOND = 2.6

export interface FloorPlaces {
  pxPerMm: number
  /** Inner faces of the two supports. */
  near: number
  far: number
  left: number
  right: number
  joists: number[]
  /** Which of them takes most. */
  worst: number
  tank: Box
  /** Where it would be worst, if that is not where it stands. */
  elsewhere: Box | null
}
interface Box {
  x: number
  y: number
  wide: number
  tall: number
}

/** Everything to one scale: the span upright, the joists side by side, the tank where it was answered to stand, else where the worst case has it. */
export function floorPlaces(plan: FloorPlan, width: number): FloorPlaces {
  const room = width - SIDE
  const pxPerMm = Math.min(TALLEST / plan.spanMm, room / (plan.acrossMm + 2 * BEYOND * plan.spacingMm))
  const near = TOP + WALL
  const far = near + plan.spanMm * pxPerMm
  const [wide, tall] = [plan.acrossMm * pxPerMm, plan.alongMm * pxPerMm]
  const middle = room / 2
  // A panel or a foot at the tank's end is worst right over a joist; a whole base with its middle over one.
  const atEnd = plan.path === 'feet' || (plan.path === 'end_panels' && plan.lie !== 'along')
  const worst = middle - (atEnd ? wide / 2 : 0)
  const pitch = plan.spacingMm * pxPerMm
  const first = worst - Math.floor((worst - 4) / pitch) * pitch
  const joists = Array.from({ length: Math.floor((room - 4 - first) / pitch) + 1 }, (_, index) => first + index * pitch)
  const boxAt = (centreMm: number): Box => ({ x: middle - wide / 2, y: near + centreMm * pxPerMm - tall / 2, wide, tall })
  const tank = boxAt(plan.answeredCentreMm ?? plan.centreMm)
  const elsewhere = plan.answeredCentreMm === undefined ? null : boxAt(plan.centreMm)
  return { pxPerMm, near, far, left: 0, right: room, joists, worst, tank, elsewhere }
}

const PATH_WORDS: Record<FloorPlan['path'], string> = {
  full: 'on its whole base',
  end_panels: 'on a panel at each end',
  feet: 'on four feet',
}
const LIE_WORDS: Record<FloorPlan['lie'], string> = {
  bearing_wall: 'across the joists, at the wall they rest on',
  across: 'across the joists',
  along: 'along the joists',
}

/** The plan in one sentence, with its figures. */
export function sayFloor(plan: FloorPlan, reader: ReaderUnits): string {
  const worst = plan.lieStated && plan.pathStated ? '' : ' The worst of what nobody has stated is drawn.'
  const elsewhere =
    plan.answeredCentreMm === undefined
      ? ''
      : ' That is with the tank close to a support, where it would be worst: the dashed outline shows it.'
  return `The tank of ${sayQuantity(quantity(plan.massKg, 'kg', 0), reader)} lies ${LIE_WORDS[plan.lie]}, ${PATH_WORDS[plan.path]}; joists span ${sayLength(plan.spanMm, reader)}, ${sayLength(plan.spacingMm, reader)} apart, and the one that takes most takes ${plan.loadPercent} % of its allowance in ${plan.governs}.${elsewhere}${worst} Screening only, never an approval.`
}

/** The tank on its joists from above, to scale: which joist takes most, through what, and how long and how far apart the joists are. */
export function floorPlot(plan: FloorPlan, options: FloorOptions): string {
  const { width, reader } = options
  const paint = paintFor(options.paper)
  const at = floorPlaces(plan, width)
  const keys = keysOf(plan, at, reader, paint)
  const foot = at.far + WALL + FOOT
  return framed(
    {
      ...options,
      width,
      height: foot + keysHeight(keys, width),
      className: 'plot floor-plot',
      title: 'The tank on the joists, from above',
      desc: sayFloor(plan, reader),
    },
    label({ x: 0, y: 12, text: plan.lie === 'bearing_wall' ? 'wall that carries the joists' : 'wall or beam', fill: paint('ink-2') }) +
      support(at.near - WALL, at, paint) +
      support(at.far, at, paint) +
      joists(at, paint) +
      elsewhere(at, paint) +
      tank(plan, at, paint) +
      span(at, sayLength(plan.spanMm, reader), paint) +
      spacing(at, plan, sayLength(plan.spacingMm, reader), paint) +
      drawKeys(keys, width, foot + 12, paint),
  )
}

function keysOf(plan: FloorPlan, at: FloorPlaces, reader: ReaderUnits, paint: Paint): Key[] {
  const unstated = plan.lieStated && plan.pathStated ? [] : ['worst of what nobody stated']
  return [
    { text: `tank, ${sayQuantity(quantity(plan.massKg, 'kg', 0), reader)}`, sample: (x, y) => box(x, y - 5, 26, 10, paint) },
    {
      text: `stands ${PATH_WORDS[plan.path]}`,
      sample: (x, y) =>
        plan.path === 'full'
          ? `<path d="M${px(x)} ${px(y + 5)}l9-10M${px(x + 8)} ${px(y + 5)}l9-10M${px(x + 16)} ${px(y + 5)}l9-10" stroke="${paint('ink')}" stroke-width=".8"/>`
          : `<rect x="${px(x + 8)}" y="${px(y - 5)}" width="10" height="10" fill="${paint('ink')}"/>`,
    },
    lineKey(`takes ${plan.loadPercent} % of its allowance`, worstStroke(paint)),
    ...(at.elsewhere && !hasRoomBeside(at) ? [lineKey(WORST_HERE, dashedStroke(paint))] : []),
    ...unstated.map((text) => ({ text, sample: () => '' })),
  ]
}

const joistStroke = (paint: Paint): string => `stroke="${paint('edge')}" stroke-width="2" stroke-dasharray="7 3"`
const worstStroke = (paint: Paint): string => `fill="none" stroke="${paint('pen')}" stroke-width="4"`

const dashedStroke = (paint: Paint): string => `fill="none" stroke="${paint('pen')}" stroke-width="1.6" stroke-dasharray="5 3"`

const WORST_HERE = 'worst here'
/** Its row beside the sheet ends above the words of the span. */
const worstRow = (at: FloorPlaces): number => Math.min((at.elsewhere?.y ?? 0) + at.tank.tall / 2, (at.near + at.far) / 2 - 26)
const hasRoomBeside = (at: FloorPlaces): boolean => worstRow(at) >= at.near + 6

/** The outline of the tank where it would be worst, with its words beside the span; too little room moves them among the keys. */
function elsewhere(at: FloorPlaces, paint: Paint): string {
  if (at.elsewhere === null) return ''
  const { x, y, wide, tall } = at.elsewhere
  const outline = `<rect class="floor-elsewhere" x="${px(x)}" y="${px(y)}" width="${px(wide)}" height="${px(tall)}" ${dashedStroke(paint)}/>`
  if (!hasRoomBeside(at)) return outline
  const row = worstRow(at)
  return (
    `${outline}<path d="M${px(x + wide)} ${px(row)}H${px(at.right + 19)}" stroke="${paint('pen')}" stroke-width=".8"/>` +
    label({ x: at.right + 21, y: row + 4, text: WORST_HERE, fill: paint('pen') })
  )
}

const box = (x: number, y: number, wide: number, tall: number, paint: Paint): string =>
  `<rect x="${px(x)}" y="${px(y)}" width="${px(wide)}" height="${px(tall)}" fill="${paint('water')}" stroke="${paint('glass')}" stroke-width="1.8"/>`

function support(y: number, at: FloorPlaces, paint: Paint): string {
  const strokes = Array.from(
    { length: Math.floor((at.right - 10) / 9) },
    (_, index) => `M${px(at.left + 2 + index * 9)} ${px(y + WALL)}l9-${WALL}`,
  )
  return (
    `<path d="M${at.left} ${px(y)}H${px(at.right)}M${at.left} ${px(y + WALL)}H${px(at.right)}" stroke="${paint('ink')}" stroke-width="1.4"/>` +
    `<path d="${strokes.join('')}" stroke="${paint('edge')}"/>`
  )
}

const joists = (at: FloorPlaces, paint: Paint): string =>
  `<path d="${at.joists.map((x) => `M${px(x)} ${px(at.near)}V${px(at.far)}`).join('')}" ${joistStroke(paint)}/>` +
  `<path class="floor-worst" d="M${px(at.worst)} ${px(at.near)}V${px(at.far)}" ${worstStroke(paint)}/>`

/** Its outline, and through what it hands its load on: all of it hatched, a bar at each end of its length, or a block at each corner. */
function tank(plan: FloorPlan, at: FloorPlaces, paint: Paint): string {
  const { x, y, wide, tall } = at.tank
  const solid = (left: number, top: number, w: number, h: number): string =>
    `<rect class="floor-load" x="${px(left)}" y="${px(top)}" width="${px(w)}" height="${px(h)}" fill="${paint('ink')}"/>`
  const outline = `<rect class="floor-tank" x="${px(x)}" y="${px(y)}" width="${px(wide)}" height="${px(tall)}" fill="${paint('water')}" fill-opacity=".72" stroke="${paint('glass')}" stroke-width="2"/>`
  if (plan.path === 'full') {
    const count = Math.floor((wide + tall) / 8)
    const lines = Array.from({ length: count }, (_, index) => hatchLine((index + 1) * 8, at.tank)).join('')
    return `${outline}<path class="floor-load" d="${lines}" stroke="${paint('ink')}" stroke-width=".8"/>`
  }
  if (plan.path === 'feet') {
    const corners = [[x, y], [x + wide - 6, y], [x, y + tall - 6], [x + wide - 6, y + tall - 6]] as const // prettier-ignore
    return outline + corners.map(([left, top]) => solid(left, top, 6, 6)).join('')
  }
  return plan.lie === 'along'
    ? outline + solid(x, y, wide, 4) + solid(x, y + tall - 4, wide, 4)
    : outline + solid(x - 2, y, 4, tall) + solid(x + wide - 2, y, 4, tall)
}

/** One line of a hatch at 45 degrees, cut off at the outline; `along` is how far its foot lies along bottom and right side. */
function hatchLine(along: number, { x, y, wide, tall }: FloorPlaces['tank']): string {
  const from = along <= tall ? [x, y + along] : [x + along - tall, y + tall]
  const to = along <= wide ? [x + along, y] : [x + wide, y + along - wide]
  return `M${px(from[0] ?? 0)} ${px(from[1] ?? 0)}L${px(to[0] ?? 0)} ${px(to[1] ?? 0)}`
}

function span(at: FloorPlaces, words: string, paint: Paint): string {
  const x = at.right + 14
  const middle = (at.near + at.far) / 2
  return (
    `<path d="M${px(x)} ${px(at.near)}V${px(at.far)}M${px(x - 5)} ${px(at.near)}h10M${px(x - 5)} ${px(at.far)}h10" stroke="${paint('ink')}" stroke-width="1.2"/>` +
    label({ x: x + 7, y: middle - 3, text: 'span', fill: paint('ink-2') }) +
    label({ x: x + 7, y: middle + 12, text: words, fill: paint('ink') })
  )
}

/** Between two joists, under the lower wall. */
function spacing(at: FloorPlaces, plan: FloorPlan, words: string, paint: Paint): string {
  const from = at.joists[0] ?? 0
  const to = from + plan.spacingMm * at.pxPerMm
  const y = at.far + WALL + 10
  const text = `${words} from joist to joist`
  const x = Math.min(to + 8, at.right + SIDE - textWidth(text, 12) - 2)
  return (
    `<path d="M${px(from)} ${px(y)}H${px(to)}M${px(from)} ${px(y - 4)}v8M${px(to)} ${px(y - 4)}v8" stroke="${paint('ink')}" stroke-width="1.2"/>` +
    label({ x: Math.max(to + 6, Math.max(0, x)), y: y + 4, text, fill: paint('ink') })
  )
}
