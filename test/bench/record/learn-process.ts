import { learnPrices } from '../../../api/outlook/learn-prices.ts'
import { connect } from '../../../db/connect.ts'
import { inTransaction } from '../../../db/refusal.ts'
import { createSaleTime, listSaleTimes } from '../../../db/sale-times.ts'
import { granted } from '../../support/rows.ts'
import { LAST_NOON_MS } from './market.ts'

/** Two sales a year at every store, as most regions have. */
const SALE_TIMES = [
  ['Autumn sale', 11, 20],
  ['Spring sale', 4, 10],
] as const

/** Learns from the record at the address given as on its last day and says what it took: a process of its own, so that nothing else is in its memory. */
const { db, close } = await connect({ databaseUrl: process.argv[2] ?? '' })
if ((await listSaleTimes(db)).length === 0)
  for (const [name, month, day] of SALE_TIMES) {
    const when = { kind: 'rule', rule: `FREQ=YEARLY;BYMONTH=${month};BYMONTHDAY=${day}`, from: '2023-01-01' } as const
    granted(await inTransaction(db, (trx) => createSaleTime(trx, { name, when, lengthDays: 7, storeIds: [], note: null })))
  }
await db.deleteFrom('price_snapshot').execute()
const started = performance.now()
if ((await learnPrices(db, LAST_NOON_MS)) !== 'learned') throw new Error('nothing was learnt')
const tookMs = performance.now() - started
await close()
console.log(JSON.stringify({ tookMs, residentMb: process.resourceUsage().maxRSS / 1024 }))
