import { Hono } from 'hono'
import { KindSchema } from '../../core/catalog/schema.ts'
import { addDays } from '../../core/dates.ts'
import { boardRow } from '../../core/pricing/board.ts'
import { rowId, strict } from '../../core/schema.ts'
import { board as readBoard } from '../../db/board.ts'
import { seenPricesOfPairs } from '../../db/seen-prices.ts'
import { BoardAnswer } from '../answers/pricing.ts'
import type { Env } from '../context.ts'
import { ownBoard } from './own-board.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { paging, searchText } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { valid } from '../http/valid.ts'

const BoardQuery = strict('Query', {
  kind: KindSchema.optional(),
  storeId: rowId('Store').optional(),
  regionId: rowId('Region').optional(),
  q: searchText,
  ...paging(50, 200),
})
/** Older prices are not known any more (design rule 2): the board does not show them. */
const SHOWN_DAYS = 180

export const board = new Hono<Env>().get(
  '/',
  operation('getBoard', {
    summary: 'Newest accepted sighting of each product and store; in a store what its own list asks',
    tag: 'Prices',
    answers: { 200: BoardAnswer },
  }),
  valid('query', BoardQuery),
  async (c) => {
    const { today, install } = await installToday(c)
    if (install.mode === 'store') return c.json(await ownBoard(c, c.req.valid('query'), today), 200)
    const { rows, total } = await readBoard(c.get('db'), signedIn(c), { ...c.req.valid('query'), since: addDays(today, -SHOWN_DAYS) })
    const pairs = rows.map(({ sighting }) => ({ productId: sighting.productId, storeId: sighting.storeId }))
    const views = await seenPricesOfPairs(c.get('db'), pairs, today)
    const viewOf = new Map(views.map((view) => [`${view.productId} ${view.storeId}`, view]))
    return c.json(
      {
        rows: rows.map(({ sighting, kind }) => boardRow(sighting, kind, viewOf.get(`${sighting.productId} ${sighting.storeId}`), today)),
        listed: [],
        total,
      },
      200,
    )
  },
)
