import type { Store } from '../../core/catalog/store.ts'
import type { CivilDate } from '../../core/dates.ts'
import type { SaleWindow } from '../../core/pricing/outlook/market-record.ts'
import type { SaleTime } from '../../core/pricing/sale-time.ts'
import { runsBetween } from './calendar.ts'

/** Every run of every sale time at every store where it happens that touches the days from `from` to `to`, both inclusive. */
export const saleWindows = (times: readonly SaleTime[], stores: readonly Store[], from: CivilDate, to: CivilDate): SaleWindow[] =>
  times.flatMap((time) =>
    runsBetween(time, stores, from, to).flatMap(({ first, last, storeIds }) =>
      storeIds.map((storeId) => ({ saleTimeId: time.id, storeId, first, last })),
    ),
  )
