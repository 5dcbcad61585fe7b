import { randomBytes } from 'node:crypto'
import { openAsBlob } from 'node:fs'
import type { Kysely } from 'kysely'
import postgres from 'postgres'
import { inject } from 'vitest'
import { connect, openEmbedded, type Connection } from '../../db/connect.ts'
import type { Database } from '../../db/database.ts'
import { withDatabase } from './postgres-server.ts'

export interface TestDatabase {
  db: Kysely<Database>
  connection: Connection
  /** On PostgreSQL the address of this copy, for a second process. */
  url: string | undefined
  close(): Promise<void>
}

export const engine: Connection['engine'] = process.env['TEST_ENGINE'] === 'postgres' ? 'postgres' : 'embedded'

/** A fresh copy of the migrated database, on the engine that the suite runs on. One a file: close it in `afterAll`. */
export async function testDatabase(): Promise<TestDatabase> {
  return engine === 'postgres' ? postgresCopy() : embeddedCopy()
}

async function embeddedCopy(): Promise<TestDatabase> {
  const connection = await openEmbedded({ loadDataDir: await openAsBlob(inject('embeddedTemplate')) })
  return { db: connection.db, connection, url: undefined, close: connection.close }
}

async function postgresCopy(): Promise<TestDatabase> {
  const server = inject('postgresUrl')
  const name = `driploop_test_${randomBytes(6).toString('hex')}`
  const admin = postgres(server, { max: 1, onnotice: () => undefined })
  await admin.unsafe(`create database ${name} template ${inject('postgresTemplate')}`)
  const url = withDatabase(server, name)
  const connection = await connect({ databaseUrl: url })
  return {
    db: connection.db,
    connection,
    url,
    close: async () => {
      await connection.close()
      await admin.unsafe(`drop database if exists ${name} with (force)`)
      await admin.end()
    },
  }
}
