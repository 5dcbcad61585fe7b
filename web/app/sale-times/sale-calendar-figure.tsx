import { useRef, type ReactElement } from 'react'
import { saleCalendarPlot } from '../../plots/sale-calendar.ts'
import type { SaleCalendar } from '../client/sale-times.ts'
import { Svg } from '../parts/svg.tsx'
import { useWidth } from '../parts/use-width.ts'

/** The coming year at the width that there is: drawn anew for a phone, never shrunk. */
export function SaleCalendarFigure({ calendar: { asOf, rows } }: { calendar: SaleCalendar }): ReactElement {
  const place = useRef<HTMLElement>(null)
  const width = useWidth(place)
  const data = { asOf, rows: rows.map(({ saleTime, coming }) => ({ name: saleTime.name, runs: coming })) }
  return (
    <figure ref={place} className="calendar-figure">
      {width > 0 && <Svg markup={saleCalendarPlot(data, width, { id: 'sale-calendar' })} />}
      <figcaption className="note">
        Known days only: what a store does in them is its own affair, and a sale may come at any other time.
      </figcaption>
    </figure>
  )
}
