import type { ReaderUnits } from '../../core/units/quantity.ts'
import { sayLength } from '../../core/units/say.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

interface Outlet {
  heightMm: number
  distanceMm: number
}

const HEIGHT = 128
const FLOOR = 104
const TOP = 14
/** Right side of the tank, drawn as high as most stand: this much above the floor. */
const TANK_RIGHT = 60
const USUAL_RIM_MM = 1250
/** Widest drawing, and what the outlet's height takes to its right. */
const WIDEST = 300
const BESIDE = 66

/** Where the outlet lies, to one scale with the height of a usual tank; a far one stands behind a break in the wall. */
export function outletPlace({ heightMm, distanceMm }: Outlet, width = WIDEST): { x: number; y: number; broken: boolean } {
  const pxPerMm = (FLOOR - TOP) / Math.max(USUAL_RIM_MM, heightMm)
  const x = TANK_RIGHT + Math.max(26, distanceMm * pxPerMm)
  const most = width - BESIDE
  return { x: Math.min(x, most), y: FLOOR - heightMm * pxPerMm, broken: x > most }
}

/** The tank against the wall with its outlet: which height and which distance are asked for, drawn to what was entered. */
export function outletSketch(outlet: Outlet, options: PlotOptions & { reader: ReaderUnits; width?: number }): string {
  const paint = paintFor(options.paper)
  const width = Math.min(WIDEST, options.width ?? WIDEST)
  const at = outletPlace(outlet, width)
  const [height, distance] = [sayLength(outlet.heightMm, options.reader), sayLength(outlet.distanceMm, options.reader)]
  return framed(
    {
      ...options,
      width,
      height: HEIGHT,
      className: 'sketch-figure',
      title: 'The tank and the outlet',
      desc: `Seen from the room: the outlet is ${height} above the floor and ${distance} along the wall from the side of the tank.`,
    },
    `<path d="M4 ${FLOOR}H${px(width - 4)}" stroke="${paint('ink')}" stroke-width="1.5"/>` +
      tank((FLOOR - TOP) / Math.max(USUAL_RIM_MM, outlet.heightMm), paint) +
      across(at, distance, paint) +
      upright(at, height, paint) +
      plate(at, paint),
  )
}

/** The right half of a tank on its stand, cut off at the left where it goes on. */
function tank(pxPerMm: number, paint: Paint): string {
  const rim = FLOOR - USUAL_RIM_MM * pxPerMm
  const bottom = FLOOR - 720 * pxPerMm
  return (
    `<rect x="8" y="${px(rim + 4)}" width="${TANK_RIGHT - 8}" height="${px(bottom - rim - 4)}" fill="${paint('water')}"/>` +
    `<path d="M8 ${px(rim)}H${TANK_RIGHT}V${px(bottom)}H8M8 ${px(rim + 4)}H${TANK_RIGHT}" fill="none" stroke="${paint('glass')}" stroke-width="1.5"/>` +
    `<path d="M8 ${px(bottom + 1.5)}H${TANK_RIGHT + 2}M${TANK_RIGHT - 3} ${px(bottom + 1.5)}V${FLOOR}" stroke="${paint('ink')}" stroke-width="1.5"/>`
  )
}

type Place = ReturnType<typeof outletPlace>

const plate = (at: Place, paint: Paint): string =>
  `<rect x="${px(at.x - 8)}" y="${px(at.y - 7)}" width="16" height="14" rx="1.5" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.5"/>` +
  `<path d="M${px(at.x - 2.5)} ${px(at.y - 2)}v4M${px(at.x + 2.5)} ${px(at.y - 2)}v4" stroke="${paint('ink')}" stroke-width="1.4"/>`

/** Distance along the wall, under the floor line. */
function across(at: Place, words: string, paint: Paint): string {
  const y = FLOOR + 8
  const wide = textWidth(words, 12)
  const middle = (TANK_RIGHT + at.x) / 2
  const gap = at.broken
    ? `<path d="M${px(middle - 4)} ${FLOOR + 4}l4-8M${px(middle + 1)} ${FLOOR + 4}l4-8" stroke="${paint('ink')}" stroke-width="1.2"/>`
    : ''
  const ends = `M${TANK_RIGHT} ${y - 4}v8M${px(at.x)} ${y - 4}v8M${TANK_RIGHT} ${y}H${px(at.x)}`
  const x = Math.max(TANK_RIGHT + wide / 2 - 6, middle)
  return `<path d="${ends}" stroke="${paint('pen')}" stroke-width="1.5"/>${gap}${label({ x, y: y + 15, text: words, fill: paint('ink'), anchor: 'middle' })}`
}

function upright(at: Place, words: string, paint: Paint): string {
  const x = at.x + 18
  const middle = Math.min(FLOOR - 4, Math.max((at.y + FLOOR) / 2 + 4, 14))
  return `<path d="M${px(x)} ${px(at.y)}V${FLOOR}M${px(x - 4)} ${px(at.y)}h8" stroke="${paint('pen')}" stroke-width="1.5"/>${label({ x: x + 6, y: middle, text: words, fill: paint('ink') })}`
}
