import { extent } from 'd3-array'
import { scaleLinear, type ScaleLinear } from 'd3-scale'
import { addDays, daysBetween, sayDate, type CivilDate } from '../../core/dates.ts'
import { currencyExponent, sayMoney } from '../../core/money.ts'
import type { PriceRecordData, StoreLine } from './price-record-data.ts'

/** Under this width the plot is drawn anew for a phone. */
export const NARROW_BELOW = 560
/** A phone shows half a year: more would be lines too close to tell apart. */
const NARROW_DAYS = 184
/** A year and a half keeps two of each season's sales in view. */
const WIDE_DAYS = 548
/** Days kept free after today, so that a running sale is seen to go on; a last day far ahead is cut there. */
const LEAST_AHEAD = 6
const MOST_AHEAD = 35

export interface PriceTick {
  minor: number
  text: string
}
export interface PriceScale {
  from: CivilDate
  until: CivilDate
  narrow: boolean
  /** Those with something in the days shown; `order` is their place among all, which fixes dash and marker. */
  stores: Array<StoreLine & { order: number }>
  lowMinor: number
  highMinor: number
  ticks: PriceTick[]
  x: (date: CivilDate) => number
  y: (minor: number) => number
}

/** The first of each month from a day on, up to another. */
export function monthStarts(from: CivilDate, until: CivilDate): CivilDate[] {
  const starts: CivilDate[] = []
  let start = `${from.slice(0, 8)}01`
  while (start < until) {
    starts.push(start)
    start = `${addDays(start, 32).slice(0, 8)}01`
  }
  return starts
}

/** "Nov" of a month's first day. */
export const sayMonth = (date: CivilDate): string => sayDate(date, Number(date.slice(0, 4))).slice(0, 3)

function span(data: PriceRecordData, narrow: boolean): { from: CivilDate; until: CivilDate } {
  const earliest = addDays(data.asOf, -(narrow ? NARROW_DAYS : WIDE_DAYS))
  const first = data.stores.flatMap((store) => store.runs.map((run) => run.from)).sort()[0]
  const last =
    data.stores
      .flatMap((store) => store.runs.map((run) => run.to))
      .sort()
      .at(-1) ?? data.asOf
  const ahead = Math.min(MOST_AHEAD, Math.max(LEAST_AHEAD, daysBetween(data.asOf, last)))
  const shown = data.ahead ? Math.max(ahead, daysBetween(data.asOf, data.ahead.until)) : ahead
  const from = first === undefined || first < earliest ? earliest : addDays(first, -7)
  return { from, until: addDays(data.asOf, shown) }
}

/** Runs and marks inside the days shown, cut at their edges. */
function cut(store: StoreLine, from: CivilDate, until: CivilDate): StoreLine {
  const runs = store.runs
    .filter((run) => run.to > from && run.from < until)
    .map((run) => ({ ...run, from: run.from < from ? from : run.from, to: run.to > until ? until : run.to }))
  return { ...store, runs, marks: store.marks.filter((mark) => mark.on >= from && mark.on <= until) }
}

/** Round figures for the axis; decimals only where the steps between them need any. */
function priceTicks(scale: ScaleLinear<number, number>, currency: string, count: number): PriceTick[] {
  const major = 10 ** currencyExponent(currency)
  const values = scale.ticks(count)
  const whole = values.every((value) => Number.isInteger(value))
  return values.map((value) => {
    const minor = Math.round(value * major)
    const said = sayMoney(minor, currency)
    return { minor, text: whole ? said.replace(/\.0+$/, '') : said }
  })
}

/** Scales for a plot area. Null where no price falls into the days shown. */
export function priceScale(
  data: PriceRecordData,
  area: { left: number; right: number; top: number; bottom: number },
  width: number,
): PriceScale | null {
  const narrow = width < NARROW_BELOW
  const { from, until } = span(data, narrow)
  const stores = data.stores
    .map((store, order) => ({ ...cut(store, from, until), order }))
    .filter((store) => store.runs.length > 0 || store.marks.length > 0)
  const major = 10 ** currencyExponent(data.currency)
  const prices = stores.flatMap((store) => [
    ...store.runs.flatMap((run) => [run.priceMinor, run.regularMinor ?? run.priceMinor]),
    ...store.marks.map((mark) => mark.priceMinor),
  ])
  const expected = data.ahead && prices.length > 0 ? [data.ahead.lowMinor, data.ahead.highMinor] : []
  const [low, high] = extent([...prices, ...expected])
  if (low === undefined || high === undefined) return null
  const room = Math.max((high - low) * 0.08, high * 0.03)
  const vertical = scaleLinear()
    .domain([Math.max(0, low - room) / major, (high + room) / major])
    .nice(5)
    .range([area.bottom, area.top])
  const [bottom = 0, top = 1] = vertical.domain()
  const days = scaleLinear()
    .domain([0, daysBetween(from, until)])
    .range([area.left, area.right])
  return {
    from,
    until,
    narrow,
    stores,
    lowMinor: Math.round(bottom * major),
    highMinor: Math.round(top * major),
    ticks: priceTicks(vertical, data.currency, 5),
    x: (date) => days(daysBetween(from, date)),
    y: (minor) => vertical(minor / major),
  }
}
