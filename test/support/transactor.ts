import { setTimeout as wait } from 'node:timers/promises'
import { sql } from 'kysely'
import { connect } from '../../db/connect.ts'
import { isUnreachable } from '../../db/reach.ts'
import { recordAttempt } from '../../db/sign-in-attempts.ts'

// A process that writes in transactions, some at once, and says what became of each: `kept`, `lost` (no database) or `broken`, and the time.
const connection = await connect({ databaseUrl: process.argv[2] ?? '' })
const AT_ONCE = 12
async function line(name: string): Promise<never> {
  for (let n = 0; ; n += 1) {
    const started = performance.now()
    const became = await connection.db
      .transaction()
      .execute(async (trx) => {
        await recordAttempt(trx, [`${name}-${n}`], new Date())
        await sql`select pg_sleep(0.002)`.execute(trx)
        await recordAttempt(trx, [`${name}-${n}`], new Date())
      })
      .then(
        () => 'kept',
        (error: unknown) => (isUnreachable(error) ? 'lost' : `broken ${String(error)}`),
      )
    process.stdout.write(`${became} ${Math.round(performance.now() - started)}\n`)
    await wait(became === 'kept' ? 5 : 50)
  }
}
await Promise.all(Array.from({ length: AT_ONCE }, (_, index) => line(`line${index}`)))
