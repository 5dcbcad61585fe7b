import { PostgreSqlContainer } from '@testcontainers/postgresql'
import postgres from 'postgres'
import { getContainerRuntimeClient } from 'testcontainers'
import type { TestProject } from 'vitest/node'
import { connect } from '../../db/connect.ts'
import { migrate } from '../../db/migrate.ts'
import { postgresBinaries, startLocalPostgres, unprivileged, type RunningServer } from './local-postgres.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** A server on which the suite may create databases. */
    postgresUrl: string
    /** Name of the migrated database on it, which is copied for each file. */
    postgresTemplate: string
  }
}

/** The major that docker-compose.yml pins. */
const IMAGE = 'postgres:18-bookworm'

export type Availability = { available: true; from: string } | { available: false; reason: string }

/** Whether this machine can run the suite on real PostgreSQL, and with which; cheap enough to ask before every run. */
export async function postgresAvailable(): Promise<Availability> {
  if (process.env['TEST_DATABASE_URL']) return { available: true, from: 'TEST_DATABASE_URL' }
  if (await containersAnswer()) return { available: true, from: `a container of ${IMAGE}` }
  if (postgresBinaries() === undefined) {
    return { available: false, reason: 'no TEST_DATABASE_URL, no container engine, no PostgreSQL installed' }
  }
  if ((await unprivileged()) === undefined)
    return { available: false, reason: 'PostgreSQL is installed but there is no account other than root to run it' }
  return { available: true, from: 'the PostgreSQL installed here' }
}

async function containersAnswer(): Promise<boolean> {
  try {
    await getContainerRuntimeClient()
    return true
  } catch {
    return false
  }
}

/** A PostgreSQL server for tests: the one named in TEST_DATABASE_URL, else a container, else a local one of our own. */
export async function startServer(): Promise<RunningServer> {
  const given = process.env['TEST_DATABASE_URL']
  if (given) return { url: given, stop: async () => undefined }
  if (await containersAnswer()) {
    const container = await new PostgreSqlContainer(IMAGE).withCommand(['postgres', '-c', 'fsync=off']).start()
    return { url: container.getConnectionUri(), stop: async () => void (await container.stop()) }
  }
  const bin = postgresBinaries()
  const account = await unprivileged()
  if (bin === undefined || account === undefined) throw new Error('There is no PostgreSQL to test with. Set TEST_DATABASE_URL.')
  return startLocalPostgres(bin, account)
}

/** The address of another database on the same server. */
export function withDatabase(url: string, name: string): string {
  const address = new URL(url)
  address.pathname = `/${name}`
  return address.href
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startServer()
  const template = `driploop_template_${process.pid}`
  const admin = postgres(server.url, { max: 1, onnotice: () => undefined })
  await admin.unsafe(`drop database if exists ${template}`)
  await admin.unsafe(`create database ${template}`)
  const connection = await connect({ databaseUrl: withDatabase(server.url, template) })
  await migrate(connection.db)
  await connection.close()
  project.provide('postgresUrl', server.url)
  project.provide('postgresTemplate', template)
  return async () => {
    await admin.unsafe(`drop database if exists ${template}`)
    await admin.end()
    await server.stop()
  }
}
