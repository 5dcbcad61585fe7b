import { framed, label, px, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

const WIDTH = 358
const HEIGHT = 168

/** A spirit level lying on a stand, its bubble between the marks. */
function spiritLevel(x: number, y: number, paint: Paint): string {
  return (
    `<rect x="${px(x)}" y="${px(y)}" width="92" height="16" rx="1" fill="${paint('sheet')}" stroke="${paint('pen')}" stroke-width="1.8"/>` +
    `<rect x="${px(x + 30)}" y="${px(y + 4)}" width="32" height="8" rx="4" fill="${paint('water')}" stroke="${paint('pen')}" stroke-width="1.2"/>` +
    `<path d="M${px(x + 41)} ${px(y + 4)}v8M${px(x + 51)} ${px(y + 4)}v8" stroke="${paint('pen')}"/><circle cx="${px(x + 46)}" cy="${px(y + 8)}" r="2.8" fill="${paint('pen')}"/>`
  )
}

/** The stand from the front, with a shim under the foot that stands low. */
function front(paint: Paint): string {
  return (
    `<path d="M6 146H168" stroke="${paint('ink')}" stroke-width="1.5"/>` +
    `<path d="M14 62H160M20 62V146M154 62V142M87 66V142" stroke="${paint('ink')}" stroke-width="1.5" fill="none"/>` +
    `<path d="M145 146h18v-4h-18z" fill="${paint('pen')}"/>` +
    spiritLevel(41, 45, paint)
  )
}

/** The stand's top seen from above: the ways in which to lay the level: along, across, corner to corner. */
function above(paint: Paint): string {
  const way = `fill="none" stroke="${paint('pen')}" stroke-width="3" stroke-linecap="round"`
  return (
    `<rect x="206" y="58" width="138" height="72" fill="none" stroke="${paint('ink')}" stroke-width="1.5"/>` +
    `<path d="M226 67H324M226 121H324M215 76V112M335 76V112M236 82L314 106M314 82L236 106" ${way}/>`
  )
}

/** How to check a stand: the level along, across, and corner to corner; shims go under the stand, never between stand and tank. */
export function levelDrawing(options: PlotOptions): string {
  const paint = paintFor(options.paper)
  const quiet = { fill: paint('ink-2'), size: 13 }
  return framed(
    {
      ...options,
      width: WIDTH,
      height: HEIGHT,
      className: 'level-sketch',
      title: 'Checking the stand with a spirit level',
      desc: 'Left, the stand from the front with a spirit level on its top and a shim under one foot. Right, the top from above: the level is laid along front and back, across both ends, and on both diagonals.',
    },
    front(paint) +
      above(paint) +
      label({ x: 6, y: 22, text: 'From the front', ...quiet }) +
      label({ x: 206, y: 22, text: 'From above,', ...quiet }) +
      label({ x: 206, y: 39, text: 'every way it is laid', ...quiet }) +
      label({ x: 6, y: 163, text: 'Shim under the foot', fill: paint('ink'), size: 13, weight: 640 }),
  )
}
