import { addDays, daysBetween, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import type { SaleDays } from '../../core/pricing/sale-time.ts'
import { fitText, framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'
import { monthStarts, NARROW_BELOW, sayMonth } from './price-record-scale.ts'

/** Sale times of a year, ready to be drawn. */
export interface SaleCalendarData {
  asOf: CivilDate
  rows: Array<{ name: string; runs: readonly SaleDays[] }>
}

const DAYS = 366
const NAME_SIZE = 13
const HEAD = 26
const LANE = { wide: 34, narrow: 46 } as const
const BAR = 12
/** A sale of one day is still to be seen. */
const LEAST_BAR = 3

interface Layout {
  left: number
  right: number
  lane: number
  narrow: boolean
  width: number
  x: (day: CivilDate) => number
}

function layoutOf({ asOf, rows }: SaleCalendarData, width: number): Layout {
  const narrow = width < NARROW_BELOW
  const longest = Math.max(...rows.map(({ name }) => textWidth(name, NAME_SIZE)), 60)
  const left = narrow ? 1 : Math.min(longest + 16, width * 0.32)
  const right = width - 1
  const x = (day: CivilDate): number => left + ((right - left) * Math.min(DAYS, Math.max(0, daysBetween(asOf, day)))) / DAYS
  return { left, right, lane: narrow ? LANE.narrow : LANE.wide, narrow, width, x }
}

export const saleCalendarHeight = ({ rows }: SaleCalendarData, width: number): number =>
  HEAD + rows.length * (width < NARROW_BELOW ? LANE.narrow : LANE.wide) + 6

/** The calendar in words: each sale time with its first coming run. */
export function saySaleCalendar({ asOf, rows }: SaleCalendarData): string {
  const thisYear = yearOf(asOf)
  const said = rows.map(({ name, runs: [next] }) =>
    next ? `${name} from ${sayDate(next.first, thisYear)} to ${sayDate(next.last, thisYear)}` : `${name} not in the coming year`,
  )
  return said.length === 0 ? 'No sale time is known yet.' : `${said.join('; ')}.`
}

/**
 * The coming year with a lane for each sale time and a bar for each of its runs. Under 560 px the names stand over their lanes.
 *
 * Units: width in px; civil days. A run is cut at today and at the year's end.
 */
export function saleCalendarPlot(data: SaleCalendarData, width: number, options: PlotOptions): string {
  const paint = paintFor(options.paper)
  const layout = layoutOf(data, width)
  const height = saleCalendarHeight(data, width)
  const body = [
    months(data.asOf, height, layout, paint),
    ...data.rows.map((row, index) => lane(row, HEAD + index * layout.lane, data.asOf, layout, paint)),
  ]
  return framed(
    { ...options, width, height, className: 'plot', title: 'Sale times of the coming year', desc: saySaleCalendar(data) },
    body.join(''),
  )
}

function months(asOf: CivilDate, height: number, { x, right, narrow }: Layout, paint: Paint): string {
  const starts = monthStarts(asOf, addDays(asOf, DAYS)).filter((day) => day >= asOf)
  return starts
    .map((day, index) => {
      const at = x(day)
      const line = `<path d="M${px(at)} 18V${px(height - 4)}" stroke="${paint('rule')}"/>`
      const shown = (!narrow || index % 2 === 0) && at + 24 < right
      return line + (shown ? label({ x: at + 3, y: 14, text: sayMonth(day), fill: paint('ink-2') }) : '')
    })
    .join('')
}

function lane({ name, runs }: SaleCalendarData['rows'][number], top: number, asOf: CivilDate, layout: Layout, paint: Paint): string {
  const { left, right, lane: tall, narrow, x } = layout
  const middle = narrow ? top + tall - BAR : top + tall / 2
  const room = narrow ? right : left - 12
  const title = label({
    x: 1,
    y: narrow ? top + 16 : middle + 4.5,
    text: fitText(name, room, NAME_SIZE),
    fill: paint('ink'),
    size: NAME_SIZE,
    weight: 580,
  })
  const ground = `<path d="M${px(left)} ${px(middle)}H${px(right)}" stroke="${paint('edge')}"/>`
  const bars = runs.map(({ first, last }) => {
    const from = x(first < asOf ? asOf : first)
    const to = Math.max(from + LEAST_BAR, x(addDays(last, 1)))
    return `<rect x="${px(from)}" y="${px(middle - BAR / 2)}" width="${px(to - from)}" height="${BAR}" fill="${paint('sale')}"/>`
  })
  return title + ground + bars.join('') + firstDay(runs, middle, asOf, layout, paint)
}

/** The day of the first run beside its bar, where the next one leaves room. */
function firstDay(runs: readonly SaleDays[], middle: number, asOf: CivilDate, { x, right }: Layout, paint: Paint): string {
  const [next, after] = runs
  if (!next) return ''
  const text = sayDate(next.first, yearOf(next.first))
  const at = x(addDays(next.last, 1)) + 5
  const end = at + textWidth(text, 12)
  if (after && x(after.first < asOf ? asOf : after.first) < end + 4) return ''
  if (end <= right) return label({ x: at, y: middle - 3, text, fill: paint('ink-2'), ground: paint('paper') })
  return label({ x: x(next.first) - 5, y: middle - 3, text, fill: paint('ink-2'), anchor: 'end', ground: paint('paper') })
}
