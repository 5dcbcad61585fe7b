import type { AssembledBuild } from '../../core/quote/revision.ts'
import { sayLength } from '../../core/units/say.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { frontEdgesMm, tankPlanDrawing } from './tank-plan-drawing.ts'
import { LIGHT, paintFor, type Paint } from './palette.ts'

export type TankFigure = NonNullable<AssembledBuild['drawing']> & { letter: string }

interface TankOptions extends PlotOptions {
  reader: ReaderUnits
  width?: number
  /** Whole on paper, cut short on a screen, where rows are dear. */
  stand: 'whole' | 'cut'
}

/** Least space between front and side. */
const GAP = 14
const EDGE = 5
const TOP = 5
/** How much of a cut stand is seen. */
const CUT_STAND = 13
const DIMENSION_ROW = 20
/** A stand nobody measured is drawn at the height most are built to. */
const USUAL_STAND_MM = 700
/** Tallest drawing of a whole stand with its tank, so that a row of drawings stays a row. */
const MOST_WHOLE = 108
const MOST_CUT = 62

interface Lay {
  pxPerMm: number
  /** Baseline: under the tanks where stands are cut, the floor where they are whole. */
  base: number
  height: number
}

const standMm = (tank: TankFigure): number => tank.standHeightMm ?? USUAL_STAND_MM

/** Width of the second view, mm: the side of a box, else the tank from above, which a side would not tell. */
const secondMm = (tank: TankFigure): number => (tank.plan ? tank.lengthMm : tank.widthMm)
/** A plan stands on the tank's own foot and may rise above its rim. */
const riseMm = (tank: TankFigure): number => (tank.plan ? Math.max(tank.heightMm, tank.widthMm) : tank.heightMm)
/** What is told under the second view. */
const secondWords = (tank: TankFigure, reader: ReaderUnits): string => `${sayLength(tank.widthMm, reader)}${tank.plan ? ' deep' : ''}`

/** The distance between front and side that keeps both figures under them apart. */
function gapOf(tank: TankFigure, pxPerMm: number, reader: ReaderUnits): number {
  const words = (textWidth(sayLength(tank.lengthMm, reader), 12) + textWidth(secondWords(tank, reader), 12)) / 2 + 8
  return Math.max(GAP, words - ((tank.lengthMm + secondMm(tank)) / 2) * pxPerMm)
}

function layOut(tanks: readonly TankFigure[], width: number, options: TankOptions): Lay {
  const whole = options.stand === 'whole'
  const widest = Math.max(...tanks.map((tank) => tank.lengthMm + secondMm(tank)))
  const tallest = Math.max(...tanks.map((tank) => riseMm(tank) + (whole ? standMm(tank) : 0)))
  const pxPerMm = Math.min((width - GAP - 2 * EDGE - 4) / widest, (whole ? MOST_WHOLE : MOST_CUT) / tallest)
  const base = TOP + tallest * pxPerMm
  return { pxPerMm, base, height: base + (whole ? 0 : CUT_STAND) + DIMENSION_ROW }
}

/**
 * Front and side of every build to one scale, with the water's surface by its drafting sign and length and depth under them.
 * One drawing a build, in order; empty text for a build without a tank.
 *
 * Units: millimetres in. Lengths are told in the reader's units.
 */
export function tankDrawings(tanks: ReadonlyArray<TankFigure | null>, options: TankOptions): string[] {
  const drawn = tanks.filter((tank) => tank !== null)
  if (drawn.length === 0) return tanks.map(() => '')
  const width = options.width ?? 196
  const lay = layOut(drawn, width, options)
  return tanks.map((tank) => (tank === null ? '' : drawTank(tank, lay, width, options)))
}

function drawTank(tank: TankFigure, lay: Lay, width: number, options: TankOptions): string {
  const paint = paintFor(options.paper)
  const front = tank.lengthMm * lay.pxPerMm
  const side = secondMm(tank) * lay.pxPerMm
  const gap = gapOf(tank, lay.pxPerMm, options.reader)
  const left = (width - front - gap - side) / 2
  const view = (x: number, wide: number, isFront: boolean): string => box({ x, wide, isFront }, tank, lay, options, paint)
  const whole = options.stand === 'whole'
  const say = (mm: number): string => sayLength(mm, options.reader)
  const floor = whole ? `<path d="M1 ${px(lay.base)}H${px(width - 1)}" stroke="${paint('ink')}" stroke-width="1.3"/>` : ''
  const row = lay.height - 7
  return framed(
    {
      ...options,
      id: `${options.id}-${tank.letter}`,
      width,
      height: lay.height,
      className: 'elevation',
      title: `Build ${tank.letter}, front and ${tank.plan ? 'from above' : 'side'}, to scale`,
      desc: `${say(tank.lengthMm)} long, ${say(tank.widthMm)} deep, ${say(tank.heightMm)} high; all builds are drawn to one scale`,
    },
    view(left, front, true) +
      (tank.plan ? above(left + front + gap, tank, tank.plan, lay, options, paint) : view(left + front + gap, side, false)) +
      floor +
      dimension(left, front, say(tank.lengthMm), row, paint) +
      dimension(left + front + gap, side, secondWords(tank, options.reader), row, paint),
  )
}

/** The tank from above, its front on the line of the tank's foot. */
function above(x: number, tank: TankFigure, plan: NonNullable<TankFigure['plan']>, lay: Lay, options: TankOptions, paint: Paint): string {
  const { lengthMm, widthMm } = tank
  const foot = footOf(tank, lay, options)
  return tankPlanDrawing(
    { plan, lengthMm, widthMm, x, y: foot - widthMm * lay.pxPerMm, pxPerMm: lay.pxPerMm, fill: waterFill(options.paper) },
    paint,
  )
}

/** The line that the tank stands on. */
const footOf = (tank: TankFigure, lay: Lay, { stand }: TankOptions): number =>
  lay.base - (stand === 'whole' ? standMm(tank) * lay.pxPerMm : 0)

interface View {
  x: number
  wide: number
  isFront: boolean
}

/** Water takes a deeper tint on a chosen column, which sets `--water-fill`. */
const waterFill = (paper: boolean | undefined): string => (paper === true ? LIGHT.water : `var(--water-fill, var(--water, ${LIGHT.water}))`)

function box(view: View, tank: TankFigure, lay: Lay, options: TankOptions, paint: Paint): string {
  const whole = options.stand === 'whole'
  const bottom = footOf(tank, lay, options)
  const tall = tank.heightMm * lay.pxPerMm
  const top = bottom - tall
  const surface = top + Math.min(tank.waterBelowRimMm * lay.pxPerMm, tall * 0.9)
  const bed = bottom - Math.min(tank.substrateDepthMm * lay.pxPerMm, tall * 0.6)
  const right = view.x + view.wide
  const x = px(view.x)
  const across = px(right)
  const bedLine =
    tank.substrateDepthMm > 0 ? `<path d="M${x} ${px(bed)}H${across}" stroke="${paint('edge')}" stroke-dasharray="1.5 2.5"/>` : ''
  const sign =
    view.isFront && view.wide > 26
      ? `<path d="M${px(view.x + 6)} ${px(surface + 4)}h9M${px(view.x + 8.2)} ${px(surface + 7)}h4.6" stroke="${paint('glass')}"/>`
      : ''
  return (
    `<rect class="tank-water" x="${x}" y="${px(surface)}" width="${px(view.wide)}" height="${px(bottom - surface)}" fill="${waterFill(options.paper)}"/>` +
    bedLine +
    `<path d="M${x} ${px(surface)}H${across}" stroke="${paint('glass')}" stroke-width="1.2"/>${sign}` +
    `<rect class="tank-glass" x="${x}" y="${px(top)}" width="${px(view.wide)}" height="${px(tall)}" fill="none" stroke="${paint('glass')}" stroke-width="1.6"/>` +
    edges(view, tank, top, bottom, lay, paint) +
    rims(view.x, right, top, bottom, tank.style, paint) +
    stand(view, bottom + (tank.style === 'rimless' ? 1.5 : 2.6), whole ? lay.base : bottom + CUT_STAND, whole, paint)
  )
}

/** Edges between the panes of a hexagon or a cut corner. */
function edges(view: View, tank: TankFigure, top: number, bottom: number, lay: Lay, paint: Paint): string {
  const at = frontEdgesMm(tank.plan, tank.lengthMm).map((mm) => `M${px(view.x + mm * lay.pxPerMm)} ${px(top)}V${px(bottom)}`)
  return at.length === 0 ? '' : `<path d="${at.join('')}" stroke="${paint('glass')}"/>`
}

/** A rim is drawn as the dark band it is; a brace as a short line inside each end; a rimless tank has neither. */
function rims(left: number, right: number, top: number, bottom: number, style: TankFigure['style'], paint: Paint): string {
  if (style === 'rimless') return ''
  const band = (y: number): string => `M${px(left - 1.2)} ${px(y)}H${px(right + 1.2)}`
  if (style === 'rimmed') return `<path d="${band(top)}${band(bottom - 0.4)}" stroke="${paint('ink')}" stroke-width="3"/>`
  const reach = Math.min(10, (right - left) / 4)
  return `<path d="M${px(left)} ${px(top + 1.5)}h${px(reach)}M${px(right)} ${px(top + 1.5)}h${px(-reach)}" stroke="${paint('glass')}" stroke-width="2.6"/>`
}

function stand(view: View, top: number, foot: number, whole: boolean, paint: Paint): string {
  const left = view.x + 1
  const right = view.x + view.wide - 1
  const middle = whole && view.isFront && view.wide > 30 ? `M${px((left + right) / 2)} ${px(top + 3.5)}V${px(foot - 3)}` : ''
  return `<path d="M${px(left - 3)} ${px(top)}H${px(right + 3)}M${px(left)} ${px(top)}V${px(foot)}M${px(right)} ${px(top)}V${px(foot)}${middle}" stroke="${paint('ink')}" stroke-width="1.3" fill="none"/>`
}

/** A figure under its side, between two ticks where there is room for the lines that reach them. */
function dimension(x: number, wide: number, text: string, y: number, paint: Paint): string {
  const words = textWidth(text, 12)
  const middle = x + wide / 2
  const reach = (wide - words) / 2 - 3
  const ends = wide >= words + 4 ? `M${px(x)} ${px(y - 3)}v6M${px(x + wide)} ${px(y - 3)}v6` : ''
  const arms = reach > 4 ? `M${px(x)} ${px(y)}h${px(reach)}M${px(x + wide)} ${px(y)}h${px(-reach)}` : ''
  const lines = ends + arms === '' ? '' : `<path d="${ends}${arms}" stroke="${paint('edge')}"/>`
  return lines + label({ x: middle, y: y + 4, text, anchor: 'middle', fill: paint('ink-2') })
}
