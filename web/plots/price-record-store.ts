import { line } from 'd3-shape'
import { px, label } from './frame.ts'
import type { Colour, Paint } from './palette.ts'
import type { PriceRun, StoreLine } from './price-record-data.ts'
import type { PriceScale } from './price-record-scale.ts'

interface Manner {
  colour: Colour
  dash: string
  /** Path of the marker about 0,0. */
  marker: string
}

/** Hue, dash and marker of the first three stores; the rest share ink and are told apart by dash and by the name at the line's end. */
const MANNERS: readonly Manner[] = [
  { colour: 'pen', dash: '', marker: 'M-3.6 0a3.6 3.6 0 1 0 7.2 0a3.6 3.6 0 1 0-7.2 0z' },
  { colour: 'glass', dash: '7 3', marker: 'M-3.3-3.3h6.6v6.6h-6.6z' },
  { colour: 'store-3', dash: '2 3', marker: 'M0-4.3l4.3 7.6h-8.6z' },
  { colour: 'ink-2', dash: '10 3 2 3', marker: 'M0-4.4l4.4 4.4l-4.4 4.4l-4.4-4.4z' },
  { colour: 'ink-2', dash: '4 2', marker: 'M-4-3.3h8l-4 7.6z' },
  { colour: 'ink-2', dash: '1 2.5', marker: 'M-3.6-1.4h7.2v2.8h-7.2z' },
]
export const mannerOf = (index: number): Manner => MANNERS[Math.min(index, MANNERS.length - 1)] ?? { colour: 'ink-2', dash: '', marker: '' }

/** A marker: open for a shelf price, filled for a sale. */
export const markerAt = (x: number, y: number, manner: Manner, filled: boolean, paint: Paint): string =>
  `<path class="${filled ? 'mark-sale' : 'mark-shelf'}" transform="translate(${px(x)} ${px(y)})" d="${manner.marker}" fill="${filled ? paint(manner.colour) : paint('paper')}" stroke="${paint(manner.colour)}" stroke-width="1.5"/>`

/** Stretches without a hole between them; a hole is a time for which no price is known and is left open. */
function unbroken(runs: readonly PriceRun[]): PriceRun[][] {
  const stretches: PriceRun[][] = []
  for (const run of runs) {
    const last = stretches.at(-1)
    if (last !== undefined && last.at(-1)?.to === run.from) last.push(run)
    else stretches.push([run])
  }
  return stretches
}

const corners = line()
  .x(([x]) => Math.round(x * 10) / 10)
  .y(([, y]) => Math.round(y * 10) / 10)

/** The store's step line: level over each run, upright where the price changes. */
export function stepLine(store: StoreLine, scale: PriceScale, manner: Manner, paint: Paint): string {
  const paths = unbroken(store.runs).map((runs) =>
    corners(
      runs.flatMap((run): Array<[number, number]> => [
        [scale.x(run.from), scale.y(run.priceMinor)],
        [scale.x(run.to), scale.y(run.priceMinor)],
      ]),
    ),
  )
  const dash = manner.dash === '' ? '' : ` stroke-dasharray="${manner.dash}"`
  return paths
    .map((path) => `<path class="store-line" d="${path ?? ''}" fill="none" stroke="${paint(manner.colour)}" stroke-width="2"${dash}/>`)
    .join('')
}

/** A sale under its shelf price: a hatched dip. */
export function dips(store: StoreLine, scale: PriceScale, hatch: string): string {
  return sales(store)
    .map(({ run, regularMinor }) => {
      const top = scale.y(regularMinor)
      return `<rect class="sale-dip" x="${px(scale.x(run.from))}" y="${px(top)}" width="${px(Math.max(1, scale.x(run.to) - scale.x(run.from)))}" height="${px(scale.y(run.priceMinor) - top)}" fill="url(#${hatch})"/>`
    })
    .join('')
}

const sales = (store: StoreLine): Array<{ run: PriceRun; regularMinor: number }> =>
  store.runs.flatMap((run) =>
    run.kind === 'sale' && run.regularMinor !== null && run.regularMinor > run.priceMinor ? [{ run, regularMinor: run.regularMinor }] : [],
  )

/** "−20 %" of a sale. @example sayDepth(15199, 18999) // '−20 %' */
export const sayDepth = (priceMinor: number, regularMinor: number): string => `\u2212${Math.round((1 - priceMinor / regularMinor) * 100)} %`

/** Depth figures under the dips, newest first, so that where two would touch the newer stays. */
export function depthLabels(scale: PriceScale, paint: Paint): string {
  const placed: Array<{ x: number; y: number }> = []
  const found = scale.stores.flatMap((store) => sales(store)).sort((a, b) => (a.run.from < b.run.from ? 1 : -1))
  return found
    .flatMap(({ run, regularMinor }) => {
      const x = (scale.x(run.from) + scale.x(run.to)) / 2
      const y = scale.y(run.priceMinor) + 19
      if (placed.some((other) => Math.abs(other.x - x) < 40 && Math.abs(other.y - y) < 14)) return []
      placed.push({ x, y })
      return [
        label({
          x,
          y,
          text: sayDepth(run.priceMinor, regularMinor),
          anchor: 'middle',
          weight: 600,
          fill: paint('sale'),
          ground: paint('paper'),
        }),
      ]
    })
    .join('')
}

export const storeMarks = (store: StoreLine, scale: PriceScale, manner: Manner, paint: Paint): string =>
  store.marks.map((mark) => markerAt(scale.x(mark.on), scale.y(mark.priceMinor), manner, mark.kind === 'sale', paint)).join('')
