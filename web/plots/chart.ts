import { axisOf, ticksWidth, type Axis } from './axis.ts'
import { label, px, textWidth } from './frame.ts'
import type { Paint } from './palette.ts'

export interface Area {
  left: number
  right: number
  top: number
  bottom: number
}

/** What a line or a mark of the chart means, under it: a sample and its words. */
export interface Key {
  /** Drawn between x and x + 26 at the height y. */
  sample: (x: number, y: number) => string
  text: string
}

type UprightAxis = Omit<Parameters<typeof axisOf>[0], 'from' | 'to' | 'count'>
type LyingAxis = UprightAxis

interface ChartOf {
  width: number
  /** Of the area that is drawn in. */
  tall: number
  x: LyingAxis
  y: UprightAxis
  /** Said over the upright axis and under the lying one; the unit is added. */
  names: { x: string; y: string }
  keys: Key[]
  /** Room right of the area for names of its bands. */
  aside?: number
}

export interface Chart {
  area: Area
  x: Axis
  y: Axis
  width: number
  height: number
  /** Axes, their figures and names, and the keys. */
  frame: (paint: Paint) => string
}

/** Height of the area that is drawn in: paper is dearer than a screen. */
export const tallOf = (paper: boolean | undefined): number => (paper === true ? 84 : 150)

const HEAD = 24
/** Figures of the lying axis and its name. */
const FOOT = 40
const KEY_ROW = 18
const SAMPLE = 26
const SIZE = 12

/** Lays a chart out: figures as wide as they are, keys in as many rows as the width asks for. Nothing is smaller than 12 px. */
export function chartOf({ width, tall, x, y, names, keys, aside = 0 }: ChartOf): Chart {
  const [top, bottom] = [HEAD, HEAD + tall]
  const upright = axisOf({ ...y, from: bottom, to: top, count: tall < 120 ? 3 : 5 })
  const left = Math.ceil(ticksWidth(upright)) + 8
  const right = width - Math.max(14, aside)
  const lying = axisOf({ ...x, from: left, to: right, count: Math.max(2, Math.floor((right - left) / 58)) })
  const area = { left, right, top, bottom }
  const height = bottom + FOOT + keysHeight(keys, width)
  const frame = (paint: Paint): string =>
    uprightFigures(upright, area, paint) +
    lyingFigures(lying, area, paint) +
    label({ x: 0, y: 13, text: `${names.y}, ${upright.unit}`, fill: paint('ink-2') }) +
    label({ x: left, y: bottom + 34, text: `${names.x}, ${lying.unit}`, fill: paint('ink-2') }) +
    drawKeys(keys, width, bottom + FOOT + 12, paint)
  return { area, x: lying, y: upright, width, height, frame }
}

const uprightFigures = (axis: Axis, { left, right, bottom }: Area, paint: Paint): string =>
  axis.ticks
    .map(({ at, text }) => {
      const line = `<path d="M${px(left)} ${px(at)}H${px(right)}" stroke="${paint(Math.abs(at - bottom) < 0.5 ? 'edge' : 'rule')}"/>`
      return line + label({ x: left - 6, y: at + 4, text, anchor: 'end', fill: paint('ink-2') })
    })
    .join('')

/** Figures that would run over the sheet's edge are left out, their ticks stay. */
const lyingFigures = (axis: Axis, { left, right, bottom }: Area, paint: Paint): string =>
  `<path d="M${px(left)} ${px(bottom)}H${px(right)}" stroke="${paint('edge')}"/>` +
  axis.ticks
    .map(({ at, text }) => {
      const half = textWidth(text, SIZE) / 2
      const said = at - half >= 0 && at + half <= right + 14
      const figure = said ? label({ x: at, y: bottom + 17, text, anchor: 'middle', fill: paint('ink-2') }) : ''
      return `<path d="M${px(at)} ${px(bottom)}v4" stroke="${paint('edge')}"/>${figure}`
    })
    .join('')

function keyRows(keys: readonly Key[], width: number): Key[][] {
  const rows: Key[][] = []
  let used = Infinity
  for (const key of keys) {
    const wide = keyWidth(key)
    if (used + wide > width) {
      rows.push([])
      used = 0
    }
    rows.at(-1)?.push(key)
    used += wide + 14
  }
  return rows
}

/** What the keys take under a drawing of this width. */
export function keysHeight(keys: readonly Key[], width: number): number {
  const rows = keyRows(keys, width).length
  return rows === 0 ? 0 : rows * KEY_ROW + 4
}

/** Keys in rows; `y` is the foot of the first row's letters. */
export const drawKeys = (keys: readonly Key[], width: number, y: number, paint: Paint): string =>
  keyRows(keys, width)
    .map((row, index) => keyRow(row, y + index * KEY_ROW, paint))
    .join('')

const keyWidth = ({ text }: Key): number => SAMPLE + 6 + textWidth(text, SIZE)

function keyRow(row: readonly Key[], y: number, paint: Paint): string {
  let x = 0
  return row
    .map((key) => {
      const drawn = key.sample(x, y - 4) + label({ x: x + SAMPLE + 6, y, text: key.text, fill: paint('ink') })
      x += keyWidth(key) + 14
      return drawn
    })
    .join('')
}

/** Manners of a line that differ without colour. */
export type Manner = 'solid' | 'dashed' | 'dotted'
const DASHES: Record<Manner, string> = { solid: '', dashed: ' stroke-dasharray="6 3.5"', dotted: ' stroke-dasharray="1.5 3"' }

/** The look of a line, for its path and for its key. */
export const strokeOf = (colour: string, manner: Manner, width = 1.8): string =>
  `fill="none" stroke="${colour}" stroke-width="${width}"${DASHES[manner]}`

/** A key whose sample is the line itself. */
export const lineKey = (text: string, stroke: string): Key => ({
  text,
  sample: (x, y) => `<path d="M${px(x)} ${px(y)}h${SAMPLE}" ${stroke}/>`,
})

/** A path through points. */
export const through = (points: ReadonlyArray<readonly [x: number, y: number]>): string =>
  points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('')
