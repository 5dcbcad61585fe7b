import type { HeatCurve } from '../../core/sizing/heat-curve.ts'
import { quantity, stated, type ReaderUnits } from '../../core/units/quantity.ts'
import { sayQuantity } from '../../core/units/say.ts'
import { chartOf, lineKey, strokeOf, tallOf, through, type Area, type Chart } from './chart.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { markedFill, paintFor, type Paint } from './palette.ts'
import { spread } from './spread.ts'

interface HeatOptions extends PlotOptions {
  reader: ReaderUnits
  width: number
}

/** Over the area: "this room" stands in its first row. */
const ROOM_ROW = 16
const LINE_ROW = 15

const sayWatts = (watts: number, reader: ReaderUnits): string => sayQuantity(quantity(watts, 'W', 0), reader)
/** To the digits of the findings beside it. */
const sayRoom = (celsius: number, reader: ReaderUnits): string => sayQuantity(stated(celsius, 'degC', 1), reader)

interface HeaterLine {
  watts: number
  text: string
}

function heaterLines({ oneHeaterW, allHeatersW }: HeatCurve, reader: ReaderUnits): HeaterLine[] {
  if (oneHeaterW === undefined || allHeatersW === undefined) return []
  if (allHeatersW <= oneHeaterW) return [{ watts: oneHeaterW, text: `the heater, ${sayWatts(oneHeaterW, reader)}` }]
  return [
    { watts: allHeatersW, text: `all heaters, ${sayWatts(allHeatersW, reader)}` },
    { watts: oneHeaterW, text: `one heater, ${sayWatts(oneHeaterW, reader)}` },
  ]
}

/** The plot in one sentence, with its figures. */
export function sayHeat(figure: HeatCurve, reader: ReaderUnits): string {
  const coldest = lossAt(figure, figure.coldestRoomC)
  const loses = `With the room at its coldest, ${sayRoom(figure.coldestRoomC, reader)}, holding ${sayRoom(figure.targetC, reader)} takes ${sayWatts(coldest.low, reader)} to ${sayWatts(coldest.high, reader)}`
  const [all, one] = heaterLines(figure, reader)
  if (all === undefined) return `${loses}; how strong the heaters are is not known.`
  const alone = one === undefined ? '' : `, one of them alone ${sayWatts(one.watts, reader)}`
  return `${loses}; ${one === undefined ? 'the heater gives' : 'all heaters give'} ${sayWatts(all.watts, reader)}${alone}.`
}

function lossAt({ points }: HeatCurve, roomC: number): { low: number; high: number } {
  const after = points.findIndex((point) => point.roomC >= roomC)
  const [a, b] = [points[Math.max(0, after - 1)], points[after === -1 ? points.length - 1 : after]]
  if (a === undefined || b === undefined) return { low: 0, high: 0 }
  const share = b.roomC === a.roomC ? 0 : (roomC - a.roomC) / (b.roomC - a.roomC)
  const between = (from: number, to: number): number => from + (to - from) * share
  return { low: between(a.lowW, b.lowW), high: between(a.highW, b.highW) }
}

/** Heat that holds the target against the temperature of the room: most, as usual and least, with the heaters' own lines and this room marked. */
export function heatPlot(figure: HeatCurve, options: HeatOptions): string {
  const { reader, width } = options
  const paint = paintFor(options.paper)
  const tall = tallOf(options.paper)
  const { points } = figure
  const lines = heaterLines(figure, reader)
  // Over the highest heater its name and "this room" have their rows.
  const most = Math.max(
    1,
    ...points.map(({ highW }) => highW * 1.1),
    ...lines.map(({ watts }) => (watts * tall) / (tall - ROOM_ROW - LINE_ROW - 2)),
  )
  const strokes = {
    high: strokeOf(paint('ink'), 'solid'),
    usual: strokeOf(paint('ink'), 'dashed'),
    low: strokeOf(paint('ink'), 'dotted', 2),
  }
  const chart = chartOf({
    width,
    tall,
    x: { unit: 'degC', low: points[0]?.roomC ?? 10, high: points.at(-1)?.roomC ?? 30, reader },
    y: { unit: 'W', low: 0, high: most, reader, nice: true },
    names: { x: 'Temperature of the room', y: `Heat that holds ${sayRoom(figure.targetC, reader)}` },
    keys: [
      lineKey('most it may lose', strokes.high),
      lineKey('as usual', strokes.usual),
      lineKey('least, lid on', strokes.low),
      ...(lines.length > 0 ? [lineKey('what heaters give', heaterStroke(paint))] : []),
    ],
  })
  const at = (pick: (point: HeatCurve['points'][number]) => number): string =>
    through(points.map((point) => [chart.x.place(point.roomC), chart.y.place(pick(point))] as const))
  return framed(
    {
      ...options,
      width,
      height: chart.height,
      className: 'plot heat-plot',
      title: 'Heat against the temperature of the room',
      desc: sayHeat(figure, reader),
    },
    room(figure, chart, paint, options.paper) +
      chart.frame(paint) +
      `<path class="heat-high" d="${at(({ highW }) => highW)}" ${strokes.high}/><path d="${at(({ usualW }) => usualW)}" ${strokes.usual}/><path class="heat-low" d="${at(({ lowW }) => lowW)}" ${strokes.low}/>` +
      heaters(lines, chart, paint),
  )
}

const heaterStroke = (paint: Paint): string => strokeOf(paint('pen'), 'solid', 2.6)

/** The stretch of temperatures that this room has, named in the first row where the name has room. */
function room({ coldestRoomC, warmestRoomC }: HeatCurve, { area, x }: Chart, paint: Paint, paper: boolean | undefined): string {
  const [from, to] = [x.place(coldestRoomC), x.place(warmestRoomC)]
  const words = 'this room'
  const half = textWidth(words, 12) / 2
  const middle = Math.min(area.right - half, Math.max(area.left + half + 2, (from + to) / 2))
  return (
    `<rect class="heat-room" x="${px(from)}" y="${area.top}" width="${px(Math.max(1, to - from))}" height="${area.bottom - area.top}" fill="${markedFill(paper)}"/>` +
    `<path d="M${px(from)} ${area.top}V${area.bottom}M${px(to)} ${area.top}V${area.bottom}" stroke="${paint('edge')}" stroke-dasharray="2 3"/>` +
    `<path d="M${px(from)} ${area.bottom}H${px(to)}" stroke="${paint('glass')}" stroke-width="3"/>` +
    label({ x: middle, y: area.top + 12, text: words, anchor: 'middle', fill: paint('ink') })
  )
}

/** Each line named over its right end, where the losses are small; names that lie close are moved apart. */
function heaters(lines: readonly HeaterLine[], { area, y }: Chart, paint: Paint): string {
  const levels = lines.map(({ watts }) => y.place(watts))
  const tops = spread(
    levels.map((level) => level - LINE_ROW),
    lines.map(() => LINE_ROW),
    area.top + ROOM_ROW,
    Math.max(area.top + ROOM_ROW + lines.length * LINE_ROW, ...levels),
  )
  return lines
    .map(({ text }, index) => {
      const level = levels[index] ?? area.top
      return `<path class="heat-heater" d="M${px(area.left)} ${px(level)}H${px(area.right)}" ${heaterStroke(paint)}/>${heaterName(text, (tops[index] ?? level) + 11, area, paint)}`
    })
    .join('')
}

const heaterName = (text: string, y: number, area: Area, paint: Paint): string =>
  label({ x: area.right - 2, y, text, anchor: 'end', fill: paint('pen'), weight: 640, ground: paint('sheet') })
