import type { LightAlong } from '../../core/sizing/light-along.ts'
import { PLANT_LIGHT } from '../../core/sizing/light-level.ts'
import type { Conditions } from '../../core/sizing/conditions.ts'
import { quantity, type ReaderUnits } from '../../core/units/quantity.ts'
import { sayQuantity } from '../../core/units/say.ts'
import { chartOf, lineKey, strokeOf, tallOf, through, type Chart } from './chart.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { markedFill, paintFor, type Paint } from './palette.ts'
import { spread } from './spread.ts'

type Plants = Conditions['plants']
interface LightOptions extends PlotOptions {
  reader: ReaderUnits
  width: number
  /** What is to grow: its band is the one that counts. */
  plants: Plants
}

const AXIS_NAME = 'Light at the substrate'
/** Room for the names of the bands, right of them. */
const ASIDE = 92
const NAMES: Record<Exclude<Plants, 'none'>, string> = { low: 'low light', medium: 'medium light', high: 'high light' }
const BANDS = ['high', 'medium', 'low'] as const

const sayLight = (umol: number, reader: ReaderUnits): string => sayQuantity(quantity(umol, 'umol/m2/s', 0), reader)
const sayShare = (share: number): string => `${Math.round(share * 100)} %`

/** The plot in one sentence, with its figures. */
export function sayLightAlong({ points, endsShare, frontShare, dimmedTo }: LightAlong, plants: Plants, reader: ReaderUnits): string {
  const middle = points[Math.floor(points.length / 2)]
  const want =
    plants === 'none'
      ? ''
      : ` Plants of ${NAMES[plants]} want ${sayLight(PLANT_LIGHT[plants].low, reader).replace(/ .*$/, '')} to ${sayLight(PLANT_LIGHT[plants].high, reader)}.`
  const range = (share: number): string =>
    `${sayLight((middle?.lowUmol ?? 0) * share, reader).replace(/ .*$/, '')} to ${sayLight((middle?.highUmol ?? 0) * share, reader)}`
  const begin =
    dimmedTo === undefined
      ? `Undimmed, ${range(1)} reach the substrate in the middle of the tank`
      : `Dimmed to ${sayShare(dimmedTo)}, ${range(dimmedTo)} reach the substrate in the middle of the tank, undimmed ${range(1)}`
  return `${begin}; at the ends it is ${sayShare(endsShare)} of that, at the front pane ${sayShare(frontShare)}.${want}`
}

interface Line {
  name: string
  of: (point: LightAlong['points'][number]) => number
  stroke: string
  /** Null for a line that has the key of the one before it. */
  key: string | null
}

/** At most and at least, undimmed; where the lights are dimmed that range is the one that counts, and the undimmed lies thin behind it. */
function linesOf({ dimmedTo }: LightAlong, paint: Paint): Line[] {
  const bright: Line['of'] = ({ highUmol }) => highUmol
  const dark: Line['of'] = ({ lowUmol }) => lowUmol
  if (dimmedTo === undefined)
    return [
      { name: 'light-bright', of: bright, key: 'undimmed, at most', stroke: strokeOf(paint('ink'), 'solid', 2) },
      { name: 'light-dark', of: dark, key: 'undimmed, at least', stroke: strokeOf(paint('ink'), 'dashed', 2) },
    ]
  const [solid, thin] = [strokeOf(paint('ink'), 'solid', 2), strokeOf(paint('ink-2'), 'dashed', 1)]
  return [
    {
      name: 'light-dimmed-bright',
      of: (point) => bright(point) * dimmedTo,
      key: `dimmed to ${sayShare(dimmedTo)}, most and least`,
      stroke: solid,
    },
    { name: 'light-dimmed-dark', of: (point) => dark(point) * dimmedTo, key: null, stroke: solid },
    { name: 'light-bright', of: bright, key: 'undimmed, most and least', stroke: thin },
    { name: 'light-dark', of: dark, key: null, stroke: thin },
  ]
}

/** Light at the substrate from one end of the tank to the other, over the bands of light that kinds of plants want. */
export function lightPlot(figure: LightAlong, options: LightOptions): string {
  const { reader, width, plants } = options
  const paint = paintFor(options.paper)
  const tall = tallOf(options.paper)
  const { points } = figure
  const lines = linesOf(figure, paint)
  const brightest = Math.max(...points.map(({ highUmol }) => highUmol), plants === 'none' ? 40 : PLANT_LIGHT[plants].high)
  const chart = chartOf({
    width,
    tall,
    x: { unit: 'mm', low: 0, high: Math.max(1, points.at(-1)?.alongMm ?? 1), reader },
    y: { unit: 'umol/m2/s', low: 0, high: brightest * 1.08, reader, nice: true },
    names: { x: 'From end to end', y: AXIS_NAME },
    keys: lines.flatMap(({ key, stroke }) => (key === null ? [] : [lineKey(key, stroke)])),
    aside: ASIDE,
  })
  const drawn = lines.map(({ name, of, stroke }) => {
    const path = through(points.map((point) => [chart.x.place(point.alongMm), chart.y.place(of(point))] as const))
    return `<path class="${name}" d="${path}" ${stroke}/>`
  })
  return framed(
    {
      ...options,
      width,
      height: chart.height,
      className: 'plot light-plot',
      title: 'Light along the tank',
      desc: sayLightAlong(figure, plants, reader),
    },
    chosenBand(plants, chart, options.paper) + chart.frame(paint) + bands(plants, chart, paint) + plantsOf(chart, paint) + drawn.join(''),
  )
}

/** Over the names of the bands, where the axis' own name leaves room. */
const plantsOf = ({ area, y }: Chart, paint: Paint): string =>
  textWidth(`${AXIS_NAME}, ${y.unit}`, 12) > area.right + 11
    ? ''
    : label({ x: area.right + 15, y: 13, text: 'plants of', fill: paint('ink-2') })

/** Ends of a band on the sheet. The highest goes on to the top. */
function bandLevels(plants: Exclude<Plants, 'none'>, { area, y }: Chart): { top: number; bottom: number } {
  const inside = (level: number): number => Math.min(area.bottom, Math.max(area.top, level))
  return { top: plants === 'high' ? area.top : inside(y.place(PLANT_LIGHT[plants].high)), bottom: inside(y.place(PLANT_LIGHT[plants].low)) }
}

function chosenBand(plants: Plants, chart: Chart, paper: boolean | undefined): string {
  if (plants === 'none') return ''
  const { top, bottom } = bandLevels(plants, chart)
  return `<rect class="light-band" x="${px(chart.area.left)}" y="${px(top)}" width="${px(chart.area.right - chart.area.left)}" height="${px(bottom - top)}" fill="${markedFill(paper)}"/>`
}

/** Bands that the scale reaches, named beside it; those that lie close have their names moved apart. */
function bands(plants: Plants, chart: Chart, paint: Paint): string {
  const { area } = chart
  const shown = BANDS.map((band) => ({ band, ...bandLevels(band, chart) })).filter(({ top, bottom }) => bottom - top > 1)
  const rows = spread(
    shown.map(({ top, bottom }) => (top + bottom) / 2 - 8),
    shown.map(() => 16),
    area.top,
    area.bottom + 8,
  )
  const edges = shown.map(({ bottom }) => `M${px(area.left)} ${px(bottom)}H${px(area.right)}`).join('')
  const brackets = shown
    .map(({ band, top, bottom }, index) => {
      const own = band === plants
      const x = area.right + 4
      const middle = (rows[index] ?? top) + 8
      return (
        `<path d="M${px(x)} ${px(top + 1.5)}h3V${px(bottom - 1.5)}h-3M${px(x + 3)} ${px((top + bottom) / 2)}L${px(x + 8)} ${px(middle)}" fill="none" stroke="${paint(own ? 'glass' : 'edge')}" stroke-width="${own ? 2 : 1.2}"/>` +
        label({ x: x + 11, y: middle + 4, text: NAMES[band], fill: paint(own ? 'glass' : 'ink-2'), ...(own ? { weight: 640 } : {}) })
      )
    })
    .join('')
  return `<path d="${edges}" stroke="${paint('glass')}" stroke-dasharray="2 3"/>${brackets}`
}
