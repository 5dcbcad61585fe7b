import type { CurvePoint, PumpCurveFigure } from '../../core/sizing/report.ts'
import { quantity, type ReaderUnits } from '../../core/units/quantity.ts'
import { sayQuantity } from '../../core/units/say.ts'
import { chartOf, lineKey, strokeOf, tallOf, through, type Chart } from './chart.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'

interface PumpOptions extends PlotOptions {
  reader: ReaderUnits
  width: number
}

/** Rows over the curves in which the marks of the group are named. */
const MARK_ROW = 15

const sayFlow = (lph: number, reader: ReaderUnits): string => sayQuantity(quantity(lph, 'L/h', 0), reader)

/** What stands before a key's words: its sample. */
const SAMPLE_ROOM = 34

/** "clean media: 962 L/h (830 to 1,050)": where it meets, and over all that nobody stated where the sheet has room for it. */
function sayMeets(media: string, at: CurvePoint, span: { low: number; high: number }, { reader, width }: PumpOptions): string {
  const [low, high] = [sayFlow(span.low, reader), sayFlow(span.high, reader)].map((words) => words.replace(/ \D+$/, ''))
  const short = `${media}: ${sayFlow(at.flowLph, reader)}`
  const long = `${short} (${low} to ${high})`
  return low === high || textWidth(long, 12) + SAMPLE_ROOM > width ? short : long
}

/** The plot in one sentence, with its figures. */
export function sayPump(figure: PumpCurveFigure, reader: ReaderUnits): string {
  const { cleanAt, loadedAt, floorLph, ceilingLph } = figure
  const most = ceilingLph === null ? '' : ` and at most ${sayFlow(ceilingLph, reader)}`
  return `${figure.filter} moves about ${sayFlow(cleanAt.flowLph, reader)} with clean media and ${sayFlow(loadedAt.flowLph, reader)} with loaded ones; the animals want at least ${sayFlow(floorLph, reader)}${most} of all filters together.`
}

/** The pump's curve and what hoses and media take of it, clean and loaded: where they meet is what flows. Upright, what the animals want. */
export function pumpPlot(figure: PumpCurveFigure, options: PumpOptions): string {
  const { reader, width } = options
  const paint = paintFor(options.paper)
  const tall = tallOf(options.paper)
  const marks = marksOf(figure, reader)
  const strokes = {
    pump: strokeOf(paint('pen'), 'solid', 2.4),
    clean: strokeOf(paint('ink'), 'dashed'),
    loaded: strokeOf(paint('ink'), 'dotted', 2),
  }
  const heads = [...figure.pump, ...figure.clean, ...figure.loaded].map(({ headM }) => headM)
  const chart = chartOf({
    width,
    tall: tall + marks.length * MARK_ROW,
    x: { unit: 'L/h', low: 0, high: Math.max(...figure.pump.map(({ flowLph }) => flowLph), ...marks.map(({ lph }) => lph)) * 1.04, reader },
    y: { unit: 'm', low: 0, high: (Math.max(...heads, 0.1) * (tall + marks.length * MARK_ROW)) / tall, reader },
    names: { x: 'Flow', y: 'Height pushed against' },
    keys: [
      lineKey('pump', strokes.pump),
      {
        text: sayMeets('clean media', figure.cleanAt, figure.cleanLph, options),
        sample: (x, y) => `<path d="M${px(x)} ${px(y)}h26" ${strokes.clean}/>${meeting(x + 13, y, true, paint)}`,
      },
      {
        text: sayMeets('loaded media', figure.loadedAt, figure.loadedLph, options),
        sample: (x, y) => `<path d="M${px(x)} ${px(y)}h26" ${strokes.loaded}/>${meeting(x + 13, y, false, paint)}`,
      },
    ],
  })
  const path = (points: readonly CurvePoint[]): string =>
    through(points.map(({ flowLph, headM }) => [chart.x.place(flowLph), chart.y.place(headM)] as const))
  return framed(
    {
      ...options,
      width,
      height: chart.height,
      className: 'plot pump-plot',
      title: `The pump of ${figure.filter} against its hoses and media`,
      desc: sayPump(figure, reader),
    },
    chart.frame(paint) +
      marks.map((mark) => upright(mark, marks.length, chart, paint)).join('') +
      `<path class="pump-curve" d="${path(figure.pump)}" ${strokes.pump}/><path d="${path(figure.clean)}" ${strokes.clean}/><path d="${path(figure.loaded)}" ${strokes.loaded}/>` +
      meeting(chart.x.place(figure.loadedAt.flowLph), chart.y.place(figure.loadedAt.headM), false, paint) +
      meeting(chart.x.place(figure.cleanAt.flowLph), chart.y.place(figure.cleanAt.headM), true, paint),
  )
}

interface Mark {
  lph: number
  text: string
  ceiling: boolean
}

/** What the animals want; a ceiling far beyond what the pump can do is left to the words. */
function marksOf({ floorLph, ceilingLph, pump }: PumpCurveFigure, reader: ReaderUnits): Mark[] {
  const reach = Math.max(...pump.map(({ flowLph }) => flowLph)) * 1.6
  const floor = { lph: floorLph, text: `at least ${sayFlow(floorLph, reader)}`, ceiling: false }
  const ceiling = ceilingLph === null ? [] : [{ lph: ceilingLph, text: `at most ${sayFlow(ceilingLph, reader)}`, ceiling: true }]
  return [floor, ...ceiling].filter(({ lph }) => lph > 0 && lph <= reach)
}

/** Filled where clean, open where loaded. */
const meeting = (x: number, y: number, clean: boolean, paint: Paint): string =>
  `<circle class="pump-${clean ? 'clean' : 'loaded'}" cx="${px(x)}" cy="${px(y)}" r="4.6" fill="${paint(clean ? 'ink' : 'sheet')}" stroke="${paint('ink')}" stroke-width="1.8"/>`

/** A mark named at its head: the ceiling in the upper row, so that the floor's line, which begins under it, crosses no word. */
function upright({ lph, text, ceiling }: Mark, rows: number, { area, x }: Chart, paint: Paint): string {
  const at = x.place(lph)
  const y = area.top + 11 + (ceiling ? 0 : (rows - 1) * MARK_ROW)
  const wide = textWidth(text, 12) + 5
  const edge = area.right + 12
  const before = at - wide >= area.left && (!ceiling || at + wide > edge)
  const side = before ? { x: at - 5, anchor: 'end' as const } : at + wide > edge ? { x: edge, anchor: 'end' as const } : { x: at + 5 }
  return (
    `<path class="pump-mark" d="M${px(at)} ${px(y - 9)}V${area.bottom}" stroke="${paint('glass')}" stroke-width="1.6" stroke-dasharray="${ceiling ? '8 3 2 3' : '8 3'}"/>` +
    label({ ...side, y, text, fill: paint('glass'), weight: 640, ground: paint('sheet') })
  )
}
