import type { Measurement } from './measurement.ts'
import { growthOf } from './record/growth.ts'
import { idOf, STORES } from './record/market.ts'

/** The board as it opens, further down, of one kind and of one store. */
const VIEWS = [
  () => '',
  () => '?offset=50',
  (round: number) => `?kind=${['heater', 'filter', 'tank'][round % 3]}`,
  (round: number) => `?storeId=${idOf('00000002', (round * 37) % STORES)}`,
]

export default function boardGrowth(): Promise<Measurement[]> {
  return growthOf('board.growth', (round) => ({ method: 'GET', path: `/api/board${VIEWS[round % VIEWS.length]!(round)}` }))
}
