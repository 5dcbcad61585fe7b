import type { Conditions } from '../../core/sizing/conditions.ts'
import { px, sign } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

type Floor = Conditions['floor']

const WIDTH = 96
const HEIGHT = 64
/** Upper side of the floor, and the floor of the room below. */
const LEVEL = 34
const BELOW = 60

/** A tank on its stand, seen from the front: the same in every sketch of a floor, so that what differs is the floor. */
const tank = (paint: Paint): string =>
  `<rect x="32" y="8" width="32" height="11" fill="${paint('water')}"/>` +
  `<path d="M32 6v13h32V6M32 9h32" fill="none" stroke="${paint('glass')}" stroke-width="1.3"/>` +
  `<path d="M31 20.3h34M33.5 20.3V${LEVEL}M62.5 20.3V${LEVEL}" fill="none" stroke="${paint('ink')}" stroke-width="1.4"/>`

const surface = (paint: Paint, dash = ''): string => `<path d="M3 ${LEVEL}H93" stroke="${paint('ink')}" stroke-width="1.6"${dash}/>`

/** A room below: its floor, and a door that only a room has. */
const roomBelow = (paint: Paint): string =>
  `<path d="M3 ${BELOW}H93M76 ${BELOW}V48h9v12" fill="none" stroke="${paint('edge')}" stroke-width="1.2"/>`

/** Stones in concrete, as drawings of buildings have them. */
const stones = (y: number, paint: Paint): string =>
  [9, 22, 36, 51, 64, 79, 88]
    .map((x, index) => `<path d="M${px(x)} ${px(y + (index % 2) * 3)}l2.6 3.4h-4.4z" fill="none" stroke="${paint('ink-2')}"/>`)
    .join('')

const soil = (paint: Paint): string => {
  const strokes = Array.from({ length: 9 }, (_, index) => `M${px(7 + index * 10)} 48l-4 6M${px(11 + index * 10)} 52l-3.4 5`)
  return `<path d="${strokes.join('')}" stroke="${paint('edge')}" stroke-width="1.1"/>`
}

const SHAPES: Record<Floor, (paint: Paint) => string> = {
  ground_slab: (paint) =>
    surface(paint) + `<path d="M3 44.5H93" stroke="${paint('ink')}" stroke-width="1.2"/>` + stones(36, paint) + soil(paint),
  timber_upper: (paint) =>
    surface(paint) +
    `<path d="M3 37.2H93" stroke="${paint('ink')}"/>` +
    [6, 23, 40, 57, 74, 89]
      .map((x) => `<rect x="${x}" y="37.2" width="4" height="9" fill="${paint('sheet')}" stroke="${paint('ink')}" stroke-width="1.2"/>`)
      .join('') +
    roomBelow(paint),
  concrete_upper: (paint) =>
    surface(paint) + `<path d="M3 44.5H93" stroke="${paint('ink')}" stroke-width="1.6"/>` + stones(36, paint) + roomBelow(paint),
  unknown: (paint) =>
    surface(paint, ' stroke-dasharray="4 3"') +
    `<path d="M43.6 45.4c0-3 2-4.6 4.5-4.6s4.4 1.7 4.4 4.1c0 3.8-4.6 3.8-4.6 7.6M47.9 56v2.2" fill="none" stroke="${paint('ink')}" stroke-width="1.8"/>`,
}

/** What the tank's floor is, cut open: a slab on the ground, joists or concrete over a room, or nobody knows. Its words stand beside it, so it is silent. */
export const floorSketch = (floor: Floor, options: { paper?: boolean } = {}): string => {
  const paint = paintFor(options.paper)
  return sign({ width: WIDTH, height: HEIGHT, className: 'sketch' }, tank(paint) + SHAPES[floor](paint))
}
