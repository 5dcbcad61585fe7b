import type { PriceView } from './price-view.ts'
import type { StoreFacts } from './roll-up.ts'

/**
 * What still holds of a store that is closed: what was seen there, and how its shelf prices moved. Nothing is bought there any more, so that it has no
 * price today, no usual one and no used goods to be had. Units: as of `rollUp`.
 *
 * @example closedStoreFacts({ storeId: 'kettle', used: { best, lowest } }) // { storeId: 'kettle', used: { best } }
 */
export const closedStoreFacts = ({ view, used, ...facts }: StoreFacts): StoreFacts => ({
  ...facts,
  ...(view?.best && { view: seenAlone(view) }),
  ...(used && { used: { best: used.best } }),
})

const seenAlone = ({ today: _today, regular: _regular, ...seen }: PriceView): PriceView => seen
