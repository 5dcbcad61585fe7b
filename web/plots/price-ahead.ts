import { sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import { label, px, textWidth } from './frame.ts'
import type { Paint } from './palette.ts'
import type { PriceAhead } from './price-record-data.ts'
import type { PriceScale } from './price-record-scale.ts'

/** The hatched range in words, for the caption. @example sayAhead(ahead, '2026-11-26') // 'Hatched: what is paid by Jan 25, 2027 in 8 of 10 cases; dashed: what is expected.' */
export const sayAhead = ({ until }: PriceAhead, asOf: CivilDate): string =>
  `Hatched: what is paid by ${sayDate(until, yearOf(asOf))} in 8 of 10 cases; dashed: what is expected.`

/**
 * What is expected between today and a day: the range as a hatched band, the expected price dashed through it, the day upright and dashed.
 *
 * Units: px in, px out; amounts in minor units.
 */
export function drawAhead(
  ahead: PriceAhead,
  asOf: CivilDate,
  scale: PriceScale,
  area: { top: number; bottom: number },
  hatch: string,
  paint: Paint,
): string {
  const [from, to] = [scale.x(asOf), scale.x(ahead.until)]
  const [top, bottom, middle] = [scale.y(ahead.highMinor), scale.y(ahead.lowMinor), scale.y(ahead.expectedMinor)]
  const band = `x="${px(from)}" y="${px(top)}" width="${px(to - from)}" height="${px(bottom - top)}"`
  return (
    `<defs><pattern id="${hatch}" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 0v6" stroke="${paint('glass')}" stroke-width="0.9"/></pattern></defs>` +
    `<rect class="ahead" ${band} fill="url(#${hatch})"/>` +
    `<path class="ahead-expected" d="M${px(from)} ${px(middle)}H${px(to)}" stroke="${paint('glass')}" stroke-width="2" stroke-dasharray="5 3"/>` +
    `<path d="M${px(to)} ${px(area.top - 4)}V${px(area.bottom)}" stroke="${paint('ink')}" stroke-dasharray="3 3"/>` +
    nameOfDay(ahead.until, asOf, { from, to, top: area.top }, paint)
  )
}

/** The day over its line, where it does not run into "today". */
function nameOfDay(until: CivilDate, asOf: CivilDate, { from, to, top }: { from: number; to: number; top: number }, paint: Paint): string {
  const text = `by ${sayDate(until, yearOf(asOf))}`
  if (to - from < textWidth(text, 12) + 8) return ''
  return label({ x: to, y: top - 12, text, anchor: 'end', fill: paint('ink-2') })
}
