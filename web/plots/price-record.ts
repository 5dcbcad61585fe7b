import { sayDate, yearOf } from '../../core/dates.ts'
import { escapeText } from './escape-text.ts'
import { framed, label, px, textWidth, type PlotOptions } from './frame.ts'
import { paintFor, type Paint } from './palette.ts'
import type { PriceRecordData } from './price-record-data.ts'
import { drawNames, endNames, namesWidth } from './price-record-names.ts'
import { drawAhead, sayAhead } from './price-ahead.ts'
import { monthStarts, NARROW_BELOW, priceScale, sayMonth, type PriceScale } from './price-record-scale.ts'
import { depthLabels, dips, mannerOf, stepLine, storeMarks } from './price-record-store.ts'

export { priceRecordData, type PriceMark, type PriceRecordData, type PriceRun, type StoreLine } from './price-record-data.ts'

interface Area {
  left: number
  right: number
  top: number
  bottom: number
}

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`

function areaOf(data: PriceRecordData, width: number, height: number): Area {
  const narrow = width < NARROW_BELOW
  const right = width - namesWidth(data, width) - 4
  const provisional = priceScale(data, { left: 0, right, top: 26, bottom: height - 46 }, width)
  const left = Math.max(30, ...(provisional?.ticks ?? []).map((tick) => textWidth(tick.text, 12))) + (narrow ? 6 : 10)
  return { left, right, top: 28, bottom: height - 46 }
}

/** Which price is meant: stores differ in what they print. */
const ON_TAGS = 'As on each store’s tags: with tax where it is printed in them, before delivery.'

/** "Where the scale starts, what was counted": stands under every plot. */
export function priceRecordCaption(data: PriceRecordData, width: number): string {
  const scale = priceScale(data, { left: 0, right: 1, top: 0, bottom: 1 }, width)
  if (scale === null) return 'No sighting is counted in these months.'
  const start = scale.ticks.find((tick) => tick.minor === scale.lowMinor)?.text ?? scale.ticks[0]?.text ?? ''
  const sales = scale.stores.reduce((sum, store) => sum + store.runs.filter((run) => run.kind === 'sale').length, 0)
  const half = scale.narrow ? ' Six months are shown.' : ''
  return `The scale starts at ${start}.${half} ${count(data.countedSightings, 'counted sighting', 'counted sightings')} by ${count(data.reporters, 'member', 'members')}; ${count(sales, 'sale', 'sales')} shown. ${ON_TAGS}${data.ahead ? ` ${sayAhead(data.ahead, data.asOf)}` : ''}`
}

/**
 * Shelf prices as step lines, a line a store with its own dash and marker, named at its end; sales as hatched dips with their depth; today upright.
 * Under 560 px it is drawn anew for a phone: six months, narrower margins, never shrunk.
 *
 * Units: width and height in px; amounts in minor units.
 */
export function priceRecordPlot(data: PriceRecordData, width: number, height: number, options: PlotOptions): string {
  const area = areaOf(data, width, height)
  const paint = paintFor(options.paper)
  const scale = priceScale(data, area, width)
  const frame = { ...options, width, height, className: 'plot', title: `Price record of ${data.productName}`, desc: '' }
  if (scale === null) {
    return framed(
      { ...frame, desc: 'No sighting is counted in these months.' },
      label({
        x: width / 2,
        y: height / 2,
        text: 'No sighting is counted in these months.',
        anchor: 'middle',
        fill: paint('ink-2'),
        size: 13,
      }),
    )
  }
  const names = endNames(scale, data, area)
  const told = names.map((end) => `${end.name} ${end.lines.join(' ')}`).join('; ')
  const hatch = `${escapeText(options.id)}-h`
  return framed(
    { ...frame, desc: `${told}. ${priceRecordCaption(data, width)} The sightings are listed beside it.` },
    hatching(hatch, paint) +
      prices(scale, area, paint) +
      months(scale, area, paint) +
      scale.stores.map((store) => dips(store, scale, hatch)).join('') +
      (data.ahead ? drawAhead(data.ahead, data.asOf, scale, area, `${hatch}-a`, paint) : '') +
      today(scale, data, area, paint) +
      depthLabels(scale, paint) +
      scale.stores.map((store) => stepLine(store, scale, mannerOf(store.order), paint)).join('') +
      scale.stores.map((store) => storeMarks(store, scale, mannerOf(store.order), paint)).join('') +
      drawNames(names, area.right + 2, width, paint),
  )
}

const hatching = (id: string, paint: Paint): string =>
  `<defs><pattern id="${id}" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0v5" stroke="${paint('sale')}" stroke-width="1.3"/></pattern></defs>`

function prices(scale: PriceScale, area: Area, paint: Paint): string {
  return scale.ticks
    .map((tick) => {
      const y = scale.y(tick.minor)
      const ground = tick.minor === scale.lowMinor ? 'edge' : 'rule'
      return (
        `<path d="M${px(area.left)} ${px(y)}H${px(area.right)}" stroke="${paint(ground)}"/>` +
        label({ x: area.left - 6, y: y + 4, text: tick.text, anchor: 'end', fill: paint('ink-2') })
      )
    })
    .join('')
}

/** Ticks at each first of a month, its name in the middle where there is room, the year under January and under the first. */
function months(scale: PriceScale, area: Area, paint: Paint): string {
  const starts = monthStarts(scale.from, scale.until)
  const pitch = (area.right - area.left) / Math.max(1, starts.length)
  const every = Math.max(1, Math.ceil(30 / pitch))
  let yearSaid = ''
  return starts
    .map((start, index) => {
      const left = Math.max(area.left, scale.x(start))
      const next = starts[index + 1]
      const right = next === undefined ? area.right : scale.x(next)
      const tick = start < scale.from ? '' : `<path d="M${px(left)} ${px(area.bottom)}v6" stroke="${paint('edge')}"/>`
      if (right - left < 22 || index % every !== 0) return tick
      const middle = (left + right) / 2
      const year = start.slice(0, 4)
      const yearLine =
        year === yearSaid ? '' : label({ x: middle, y: area.bottom + 33, text: year, anchor: 'middle', fill: paint('ink-2') })
      yearSaid = year
      return tick + label({ x: middle, y: area.bottom + 18, text: sayMonth(start), anchor: 'middle', fill: paint('ink-2') }) + yearLine
    })
    .join('')
}

function today(scale: PriceScale, data: PriceRecordData, area: Area, paint: Paint): string {
  const x = scale.x(data.asOf)
  return (
    `<path class="plot-today" d="M${px(x)} ${px(area.top - 4)}V${px(area.bottom)}" stroke="${paint('ink')}"/>` +
    label({
      x: Math.max(x - 2, area.left),
      y: area.top - 12,
      text: `today, ${sayDate(data.asOf, yearOf(data.asOf))}`,
      anchor: 'end',
      weight: 600,
      fill: paint('ink'),
    })
  )
}
