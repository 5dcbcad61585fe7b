import { learnPrices } from '../../../api/outlook/learn-prices.ts'
import { connect } from '../../../db/connect.ts'
import { listSaleTimes } from '../../../db/sale-times.ts'
import { LAST_NOON_MS } from './market.ts'

/** Learns from the record at the address given as on its last day and says what it took: a process of its own, so that nothing else is in its memory. */
const connection = await connect({ databaseUrl: process.argv[2] ?? '' })
await connection.db.deleteFrom('price_snapshot').execute()
const started = performance.now()
const outcome = await learnPrices(connection.db, LAST_NOON_MS)
const tookMs = performance.now() - started
const saleTimes = (await listSaleTimes(connection.db)).length
await connection.close()
console.log(JSON.stringify({ outcome, saleTimes, tookMs, residentMb: process.resourceUsage().maxRSS / 1024 }))
