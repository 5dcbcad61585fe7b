import { addDays, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import { sayMoney } from '../../core/money.ts'
import { isGone } from '../../core/pricing/gone.ts'
import { fitText, label, px, textWidth } from './frame.ts'
import type { Paint } from './palette.ts'
import type { PriceRecordData, StoreLine } from './price-record-data.ts'
import { NARROW_BELOW, type PriceScale } from './price-record-scale.ts'
import { mannerOf, markerAt } from './price-record-store.ts'
import { spread } from './spread.ts'

/** Least heights of a name and of each line under it: 12 px letters with a little air. */
const NAME_HEIGHT = 17
const LINE_HEIGHT = 14
const NAME_SIZE = 12.5

export interface EndName {
  order: number
  name: string
  /** The price; under it, on a phone, until when. */
  lines: string[]
  /** Level of the price, and of the words after they were moved apart. */
  lineY: number
  wordsY: number
  lineX: number
  filled: boolean
}

/** What the store charges on the day, if the record knows. */
const runOn = (store: StoreLine, date: CivilDate): StoreLine['runs'][number] | undefined =>
  store.runs.find((run) => run.from <= date && date < run.to)

interface Said {
  lines: string[]
  filled: boolean
  minor: number | null
}

/** Why no price is known on the day: it was found gone, or is too long ago. */
function sayLast({ goneOn, marks }: StoreLine, asOf: CivilDate): string {
  const last = marks.at(-1)
  if (isGone(goneOn, asOf)) return `found gone ${sayDate(goneOn ?? asOf, yearOf(asOf))}`
  return last === undefined ? 'not known today' : `seen ${sayDate(last.on, yearOf(asOf))}`
}

function sayPrice(store: StoreLine, data: PriceRecordData, narrow: boolean): Said {
  const year = yearOf(data.asOf)
  const run = runOn(store, data.asOf)
  if (run === undefined) {
    const last = store.marks.at(-1)
    return {
      lines: [sayLast(store, data.asOf)],
      filled: false,
      minor: store.runs.at(-1)?.priceMinor ?? last?.priceMinor ?? null,
    }
  }
  const price = sayMoney(run.priceMinor, data.currency)
  if (run.kind === 'regular') return { lines: [price], filled: false, minor: run.priceMinor }
  const until = `to ${sayDate(addDays(run.to, -1), year)}`
  const assumed = run.assumed ? [narrow ? 'assumed' : 'last day assumed'] : []
  return { lines: narrow ? [price, until, ...assumed] : [`${price} ${until}`, ...assumed], filled: true, minor: run.priceMinor }
}

/** Names at the lines' ends, in order of the stores. */
export function endNames(scale: PriceScale, data: PriceRecordData, area: { top: number; bottom: number }): EndName[] {
  const ends = scale.stores.map((store) => {
    const said = sayPrice(store, data, scale.narrow)
    const lastDay = store.runs.at(-1)?.to ?? store.marks.at(-1)?.on ?? data.asOf
    const lineY = said.minor === null ? area.bottom : scale.y(said.minor)
    return { order: store.order, name: store.name, lines: said.lines, lineY, lineX: scale.x(lastDay), filled: said.filled }
  })
  const moved = spread(
    ends.map((end) => end.lineY),
    ends.map((end) => NAME_HEIGHT + LINE_HEIGHT * end.lines.length),
    area.top,
    area.bottom + 12,
  )
  return ends.map((end, index) => ({ ...end, wordsY: moved[index] ?? end.lineY }))
}

/** Room the names need at the right, at most a share of the whole. */
export function namesWidth(data: PriceRecordData, width: number): number {
  const texts = data.stores.flatMap((store) => [
    textWidth(store.name, NAME_SIZE),
    ...sayPrice(store, data, width < NARROW_BELOW).lines.map((line) => textWidth(line, 12)),
  ])
  return Math.min(Math.max(60, ...texts) + 22, width * 0.28)
}

export function drawNames(names: readonly EndName[], left: number, width: number, paint: Paint): string {
  const room = width - left - 14
  return names
    .map((end) => {
      const manner = mannerOf(end.order)
      const lines = end.lines.map((line, index) =>
        label({ x: left + 14, y: end.wordsY + LINE_HEIGHT * (index + 1), text: fitText(line, room, 12), fill: paint('ink-2') }),
      )
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
        lines.join('')
      )
    })
    .join('')
}
