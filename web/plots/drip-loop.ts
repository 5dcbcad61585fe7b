import type { Plug } from '../../core/sizing/cords.ts'
import type { SizingFigures } from '../../core/sizing/report.ts'
import { sayAtLeastLength, sayLength } from '../../core/units/say.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { measuredIn } from '../../core/units/reader.ts'
import { framed, label, px, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

export type DripLoopFigures = NonNullable<SizingFigures['dripLoop']>
interface DripLoopOptions extends PlotOptions {
  reader: ReaderUnits
  /** Whose cord it is: "heater cord". */
  what?: string
  /** Rim above the floor, of a cord that leaves inside the stand: what it belongs to stands there, the tank above it. Absent is a cord over the rim. */
  rimMm?: number | undefined
  /** What it is plugged into; else what the figures say. */
  to?: Plug
  /** Outside height of the tank; where it is not known the tank is drawn at a usual one. */
  tankHeightMm?: number
}

const WIDTH = 358
const HEIGHT = 264
const FLOOR = 226
/** Under the words that a low point near the floor has below it. */
const NOTE = 259
/** Highest point drawn: the arc of the cord over the rim needs the rest. */
const TOP = 34
const TANK_LEFT = 8
const TANK_RIGHT = 140
/** Farthest the outlet is drawn from the tank, and the nearest at which its words still have room. */
const OUTLET_LEFT = 176
const OUTLET_RIGHT = 244

const PLUG_WORDS: Record<Plug, string> = {
  outlet: 'outlet',
  strip: 'strip beside the rim',
  wall_strip: 'strip on the wall beside the outlet',
}
const PLUG_LABELS: Record<Plug, string> = { outlet: 'Outlet', strip: 'Strip', wall_strip: 'Strip' }
/** From one line of words to the next. */
const LINE = 17

interface Places {
  /** The tank's rim; the exit where the cord comes over it. */
  rim: number
  exit: number
  outlet: number
  low: number
  outletX: number
  lowX: number
  toY: (mm: number) => number
}

/** Heights to one scale; sideways the outlet keeps its distance on that scale as far as the sheet is wide. */
export function dripLoopPlaces(figures: DripLoopFigures, rimMm = figures.exitHeightMm): Places {
  const highest = Math.max(rimMm, figures.exitHeightMm, figures.outletHeightMm, 1)
  const pxPerMm = (FLOOR - TOP) / highest
  const toY = (mm: number): number => FLOOR - mm * pxPerMm
  // A shallow hang needs its length sideways, or the cord would be drawn across itself.
  const least = figures.exitHeightMm - figures.lowPointMm < highest * 0.3 ? OUTLET_RIGHT - 24 : OUTLET_LEFT
  const outletX = Math.min(OUTLET_RIGHT, Math.max(least, TANK_RIGHT + figures.distanceMm * pxPerMm))
  return {
    rim: toY(rimMm),
    exit: toY(figures.exitHeightMm),
    outlet: toY(figures.outletHeightMm),
    low: toY(Math.max(0, figures.lowPointMm)),
    outletX,
    lowX: outletX - 26,
    toY,
  }
}

/** How a cord is led so that water drips off before the outlet, drawn to the heights of this room. */
export function dripLoopDrawing(figures: DripLoopFigures, options: DripLoopOptions): string {
  const paint = paintFor(options.paper)
  const at = dripLoopPlaces(figures, options.rimMm)
  const say = (mm: number): string => sayLength(mm, options.reader)
  const drop = sayAtLeastLength(Math.max(0, figures.outletHeightMm - figures.lowPointMm), options.reader)
  const what = options.what ?? 'cord'
  const to = options.to ?? figures.to ?? 'outlet'
  return framed(
    {
      ...options,
      width: WIDTH,
      height: HEIGHT,
      className: 'loop',
      title: 'A drip loop',
      desc: `The ${what} leaves the ${options.rimMm === undefined ? 'tank' : 'stand'} ${say(figures.exitHeightMm)} above the floor, hangs down to a low point ${say(figures.lowPointMm)} above the floor, and rises at least ${drop} to the ${PLUG_WORDS[to]} at ${say(figures.outletHeightMm)}. Water running along the cord drips off at the low point.`,
    },
    `<path d="M4 ${FLOOR}H354" stroke="${paint('ink')}" stroke-width="1.5"/>` +
      tank(at, options.tankHeightMm, paint) +
      cord(at, paint) +
      outlet(at, paint) +
      levels(at, drop, paint) +
      words(at, figures, say, { what, to }, paint) +
      label({ x: TANK_LEFT, y: NOTE, text: roundingWords(options.reader), fill: paint('ink-2'), size: 13 }),
  )
}

/** To what the drawn lengths are told, and that the one to keep to is rounded up. @example roundingWords(US) // 'To 0.1 in, the drop rounded up' */
export const roundingWords = (reader: ReaderUnits): string =>
  measuredIn(reader).length === 'in' ? `To 0${reader.decimal}1 in, the drop rounded up` : `To 0${reader.decimal}1 cm, the drop rounded up`

/** The tank hangs from the height at which cords leave it, as tall as it is, with some of its stand left to be seen. */
function tank(at: Places, heightMm: number | undefined, paint: Paint): string {
  const { rim } = at
  const isLow = at.exit > rim
  const tall = heightMm === undefined ? (FLOOR - rim) * 0.42 : at.toY(0) - at.toY(heightMm)
  const bottom = rim + Math.min(Math.max(tall, 24), FLOOR - rim - 12)
  const wide = TANK_RIGHT - TANK_LEFT
  return (
    `<rect x="${TANK_LEFT}" y="${px(rim + 6)}" width="${wide}" height="${px(bottom - rim - 6)}" fill="${paint('water')}"/>` +
    `<path d="M${TANK_LEFT} ${px(rim + 6)}h${wide}" stroke="${paint('glass')}" stroke-width="1.3"/><path d="M${TANK_LEFT + 12} ${px(rim + 11)}h12M${TANK_LEFT + 15} ${px(rim + 15)}h6" stroke="${paint('glass')}" stroke-width="1.1"/>` +
    `<rect class="loop-tank" x="${TANK_LEFT}" y="${px(rim)}" width="${wide}" height="${px(bottom - rim)}" fill="none" stroke="${paint('glass')}" stroke-width="1.6"/>` +
    `<path d="M${TANK_LEFT - 2} ${px(rim)}h${wide + 4}M${TANK_LEFT - 2} ${px(bottom)}h${wide + 4}" stroke="${paint('ink')}" stroke-width="3.2"/>` +
    `<path d="M${TANK_LEFT + 1} ${px(bottom)}V${FLOOR}M${TANK_RIGHT - 1} ${px(bottom)}V${FLOOR}M${(TANK_LEFT + TANK_RIGHT) / 2} ${px(bottom + 5)}V${FLOOR - 3}" stroke="${paint('ink')}" stroke-width="1.3"/>` +
    (isLow
      ? `<rect class="loop-low" x="${TANK_RIGHT - 40}" y="${px(at.exit + 8)}" width="28" height="${px(Math.max(8, FLOOR - at.exit - 8))}" rx="2" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.3"/>`
      : `<rect x="${TANK_RIGHT - 26}" y="${px(rim + 12)}" width="8" height="${px(Math.max(12, (bottom - rim) * 0.6))}" rx="2" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.3"/>`)
  )
}

function cord(at: Places, paint: Paint): string {
  const start = TANK_RIGHT - 22
  const over = at.exit - 14
  const down = `M${px(start)} ${px(at.exit + 12)}C${px(start)} ${px(over)} ${px(TANK_RIGHT)} ${px(over - 4)} ${px(TANK_RIGHT + 8)} ${px(at.exit + 2)}`
  const fall = `C${px(TANK_RIGHT + 20)} ${px(at.exit + (at.low - at.exit) * 0.4)} ${px(at.lowX - 26)} ${px(at.low)} ${px(at.lowX)} ${px(at.low)}`
  const rise = `C${px(at.lowX + 18)} ${px(at.low)} ${px(at.outletX)} ${px(at.outlet + (at.low - at.outlet) * 0.6)} ${px(at.outletX)} ${px(at.outlet + 6)}`
  return `<path class="loop-cord" d="${down}${fall}${rise}" fill="none" stroke="${paint('pen')}" stroke-width="3"/>${drop(at.lowX, Math.min(at.low + 4, FLOOR - 10), paint)}`
}

const drop = (x: number, y: number, paint: Paint): string =>
  `<path d="M${px(x)} ${px(y)}c2.6 3.6 3.9 5.4 3.9 7.2a3.9 3.9 0 0 1-7.8 0c0-1.8 1.3-3.6 3.9-7.2z" fill="${paint('pen')}"/>`

const outlet = (at: Places, paint: Paint): string =>
  `<rect x="${px(at.outletX - 8)}" y="${px(at.outlet - 7)}" width="16" height="14" rx="1.5" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.5"/>` +
  `<path d="M${px(at.outletX - 2.5)} ${px(at.outlet - 2)}v4M${px(at.outletX + 2.5)} ${px(at.outlet - 2)}v4" stroke="${paint('ink')}" stroke-width="1.4"/>`

/** The two levels and the distance between them: the one figure to measure. */
function levels(at: Places, drop: string, paint: Paint): string {
  const x = 306
  const middle = (at.outlet + at.low) / 2
  return (
    `<path class="loop-levels" d="M${px(at.outletX + 12)} ${px(at.outlet)}H350M${px(at.lowX + 8)} ${px(at.low)}H350" stroke="${paint('edge')}" stroke-dasharray="3 3"/>` +
    `<path d="M${x} ${px(at.outlet)}V${px(at.low)}M${x - 4} ${px(at.outlet)}h8M${x - 4} ${px(at.low)}h8" stroke="${paint('ink')}" stroke-width="1.2"/>` +
    label({ x: x + 7, y: middle + 4.5, text: drop, fill: paint('ink'), weight: 660, size: 13, ground: paint('sheet') })
  )
}

/** The sheet has room for so many letters beside the tank; the whole name is in the description. */
const LETTERS = 24
const shortened = (name: string): string => (name.length <= LETTERS ? name : `${name.slice(0, LETTERS - 1).trimEnd()}…`)

/** Under the rim as far as the words of a cord that leaves inside the stand reach, and those of an outlet above them. */
const RISES_THROUGH = 72

/** Words beside their levels, moved apart where the levels lie close together. */
function words(
  at: Places,
  figures: DripLoopFigures,
  say: (mm: number) => string,
  { what, to }: { what: string; to: Plug },
  paint: Paint,
): string {
  const quiet = { fill: paint('ink-2'), size: 13, ground: paint('sheet') }
  const beside = at.outletX + 14
  const outletAbove = at.outlet < at.exit + 24
  const exitY = at.exit > at.rim ? at.rim + 24 : outletAbove ? Math.min(FLOOR - 40, at.low + 46) : at.exit + 4
  const outletY = Math.max(14, Math.min(at.outlet - 12, at.low - 12))
  const lowY = at.low + 17 > FLOOR - 2 ? FLOOR + 16 : at.low + 17
  const leaves = { x: TANK_RIGHT + 26, y: exitY }
  const whose = { x: TANK_RIGHT + 26, y: exitY + 18 }
  if (at.exit > at.rim && at.outlet < at.rim + RISES_THROUGH) {
    // The cord goes up where the words would stand: they go under the floor, its name over the tank where the low point's words are down there too.
    Object.assign(leaves, { x: TANK_LEFT, y: FLOOR + 16 })
    Object.assign(whose, lowY > FLOOR ? { x: TANK_LEFT, y: at.rim - 12 } : { x: TANK_RIGHT + 50, y: FLOOR + 16 })
  }
  const plug = { x: outletAbove ? TANK_RIGHT + 60 : beside, y: outletY }
  // A strip on the wall has its place in a line above, where the words of the cord leave it room.
  const wall = { x: plug.x, y: outletY - LINE }
  const hasRoom = wall.y > 12 && [leaves, whose].every(({ y }) => Math.abs(y - wall.y) > LINE)
  const isOnWall = to === 'wall_strip'
  return (
    label({
      ...leaves,
      text: `Leaves the ${at.exit > at.rim ? 'stand' : 'tank'} at ${say(figures.exitHeightMm)}`,
      ...quiet,
    }) +
    label({ ...whose, text: shortened(what), fill: paint('pen'), size: 13, weight: 560, ground: paint('sheet') }) +
    label({
      ...plug,
      text: `${isOnWall && !hasRoom ? 'On wall' : PLUG_LABELS[to]} at ${say(figures.outletHeightMm)}`,
      ...quiet,
    }) +
    (isOnWall && hasRoom ? label({ ...wall, text: 'On the wall:', ...quiet }) : '') +
    label({
      x: at.lowX + 9,
      y: lowY,
      text: `Low point, ${say(Math.max(0, figures.lowPointMm))}`,
      fill: paint('ink'),
      weight: 660,
      size: 13,
      ground: paint('sheet'),
    })
  )
}
