import type { Kind } from '../../catalog/kinds.ts'
import type { CivilDate } from '../../dates.ts'
import type { Sighting } from '../sighting.ts'

/** One run of a sale time at a store: the days on which it runs, or may run. Both inclusive, civil days of the store's zone. */
export interface SaleWindow {
  saleTimeId: string
  storeId: string
  first: CivilDate
  last: CivilDate
}

/** What is known on a day: sightings of later days count for nothing, and what is not accepted counts for nothing either. */
export interface MarketRecord {
  sightings: readonly Sighting[]
  products: ReadonlyArray<{ id: string; kind: Kind }>
  /** Past ones teach, coming ones are expected. Of one store and sale time they must not overlap. */
  windows: readonly SaleWindow[]
  asOf: CivilDate
}
