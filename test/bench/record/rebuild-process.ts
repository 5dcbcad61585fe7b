import { connect } from '../../../db/connect.ts'
import { rebuildSummaries } from '../../../db/summary-rebuild.ts'

/** Makes every summary of the record at the address given anew and says what it took: a process of its own, so that nothing else is in its memory. */
const connection = await connect({ databaseUrl: process.argv[2] ?? '' })
const started = performance.now()
const rebuilt = await rebuildSummaries(connection.db)
const tookMs = performance.now() - started
await connection.close()
console.log(JSON.stringify({ ...rebuilt, tookMs, residentMb: process.resourceUsage().maxRSS / 1024 }))
