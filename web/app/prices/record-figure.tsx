import { useMemo, useRef, type ReactElement } from 'react'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import type { PriceAhead } from '../../plots/price-record-data.ts'
import { priceRecordCaption, priceRecordData, priceRecordPlot } from '../../plots/price-record.ts'
import { Svg } from '../parts/svg.tsx'
import { useWidth } from '../parts/use-width.ts'
import { useCurrency } from '../session/session.ts'

/** Heights of the drawing in px. A phone's is shorter, so that the plot and its caption stand on one screen. */
const TALL = 370
const SHORT = 300
const PHONE = 560

/** The price record at the width that there is: drawn anew for a phone, never shrunk. */
export function RecordFigure({ record, ahead }: { record: PriceRecord; ahead?: PriceAhead | undefined }): ReactElement {
  const currency = useCurrency()
  const place = useRef<HTMLElement>(null)
  const width = useWidth(place)
  const data = useMemo(() => ({ ...priceRecordData(record, currency), ahead }), [record, currency, ahead])
  const height = width < PHONE ? SHORT : TALL
  return (
    <figure ref={place} className="record-figure">
      {width > 0 ? <Svg markup={priceRecordPlot(data, width, height, { id: 'record' })} /> : <div className="record-room" />}
      {width > 0 && <figcaption className="note">{priceRecordCaption(data, width)}</figcaption>}
    </figure>
  )
}
