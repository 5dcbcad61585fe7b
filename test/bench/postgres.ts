import { startServer } from '../support/postgres-server.ts'

/** Runs a measurement with a real PostgreSQL named in TEST_DATABASE_URL, the given one or one of its own. */
export async function withBenchPostgres<Rows>(measure: () => Promise<Rows>): Promise<Rows> {
  const before = process.env['TEST_DATABASE_URL']
  const server = await startServer()
  process.env['TEST_DATABASE_URL'] = server.url
  try {
    return await measure()
  } finally {
    if (before === undefined) delete process.env['TEST_DATABASE_URL']
    else process.env['TEST_DATABASE_URL'] = before
    await server.stop()
  }
}
