import { connect } from '../../db/connect.ts'
import { migrate } from '../../db/migrate.ts'
import { recordAttempt } from '../../db/sign-in-attempts.ts'

// A process that writes rows as fast as it may and says each one's key once the database has acknowledged it, until it is killed.
const [where, prefix] = [process.argv[2] ?? '', process.argv[3] ?? '']
const connection = await connect(where.startsWith('postgres') ? { databaseUrl: where } : { dataDir: where })
await migrate(connection.db)
for (let n = 0; ; n++) {
  const key = `${prefix}-${n}`
  await recordAttempt(connection.db, [key], new Date())
  process.stdout.write(`${key}\n`)
  if (n % 50 === 49) await connection.checkpoint()
}
