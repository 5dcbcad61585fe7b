import { addDays, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import { sayMoney } from '../../core/money.ts'
import { fitText, label, px, textWidth } from './frame.ts'
import type { Paint } from './palette.ts'
import type { PriceRecordData, StoreLine } from './price-record-data.ts'
import type { PriceScale } from './price-record-scale.ts'
import { mannerOf, markerAt } from './price-record-store.ts'

/** A name and a price take two lines of this height together. */
const PITCH = 31
const NAME_SIZE = 12.5

export interface EndName {
  index: number
  name: string
  price: string
  /** Level of the price, and of the words after they were moved apart. */
  lineY: number
  wordsY: number
  lineX: number
  filled: boolean
}

/** What the store charges on the day, if the record knows. */
const runOn = (store: StoreLine, date: CivilDate): StoreLine['runs'][number] | undefined =>
  store.runs.find((run) => run.from <= date && date < run.to)

function sayPrice(store: StoreLine, data: PriceRecordData): { text: string; filled: boolean; minor: number | null } {
  const run = runOn(store, data.asOf)
  if (run === undefined) {
    const last = store.marks.at(-1)
    return {
      text: last === undefined ? 'not known today' : `seen ${sayDate(last.on, yearOf(data.asOf))}`,
      filled: false,
      minor: store.runs.at(-1)?.priceMinor ?? last?.priceMinor ?? null,
    }
  }
  const price = sayMoney(run.priceMinor, data.currency)
  return run.kind === 'sale'
    ? { text: `${price} to ${sayDate(addDays(run.to, -1), yearOf(data.asOf))}`, filled: true, minor: run.priceMinor }
    : { text: price, filled: false, minor: run.priceMinor }
}

/** Moves words apart so that none overlap, kept between top and bottom. */
export function spread(levels: readonly number[], pitch: number, top: number, bottom: number): number[] {
  const room = Math.min(pitch, levels.length < 2 ? pitch : (bottom - top) / (levels.length - 1))
  const order = levels.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y || a.index - b.index)
  order.forEach((entry, rank) => {
    const above = order[rank - 1]
    entry.y = Math.max(entry.y, above === undefined ? top : above.y + room)
  })
  for (let rank = order.length - 1; rank >= 0; rank -= 1) {
    const entry = order[rank]
    const below = order[rank + 1]
    if (entry !== undefined) entry.y = Math.min(entry.y, below === undefined ? bottom : below.y - room)
  }
  const out: number[] = []
  for (const entry of order) out[entry.index] = entry.y
  return out
}

/** Names at the lines' ends, in order of the stores. */
export function endNames(scale: PriceScale, data: PriceRecordData, area: { top: number; bottom: number }): EndName[] {
  const ends = scale.stores.map((store, index) => {
    const said = sayPrice(store, data)
    const lastDay = store.runs.at(-1)?.to ?? store.marks.at(-1)?.on ?? data.asOf
    return {
      index,
      name: store.name,
      price: said.text,
      lineY: said.minor === null ? area.bottom : scale.y(said.minor),
      lineX: scale.x(lastDay),
      filled: said.filled,
      wordsY: 0,
    }
  })
  const moved = spread(
    ends.map((end) => end.lineY),
    PITCH,
    area.top + 4,
    area.bottom - 18,
  )
  return ends.map((end, index) => ({ ...end, wordsY: moved[index] ?? end.lineY }))
}

/** Room the names need at the right, at most a share of the whole. */
export function namesWidth(stores: readonly StoreLine[], data: PriceRecordData, width: number): number {
  const texts = stores.flatMap((store) => [textWidth(store.name, NAME_SIZE), textWidth(sayPrice(store, data).text, 12)])
  return Math.min(Math.max(60, ...texts) + 22, width * 0.32)
}

export function drawNames(names: readonly EndName[], left: number, width: number, paint: Paint): string {
  return names
    .map((end) => {
      const manner = mannerOf(end.index)
      const room = width - left - 18
      return (
        `<path d="M${px(end.lineX)} ${px(end.lineY)}L${px(left)} ${px(end.wordsY)}" stroke="${paint(manner.colour)}" stroke-dasharray="1 3"/>` +
        markerAt(left + 5, end.wordsY, manner, end.filled, paint) +
        label({
          x: left + 14,
          y: end.wordsY,
          text: fitText(end.name, room, NAME_SIZE),
          fill: paint(manner.colour),
          weight: 640,
          size: NAME_SIZE,
        }) +
        label({ x: left + 14, y: end.wordsY + 14, text: fitText(end.price, room + 4, 12), fill: paint('ink-2') })
      )
    })
    .join('')
}
