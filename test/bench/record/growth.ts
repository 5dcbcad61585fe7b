import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pino } from 'pino'
import { createApp } from '../../../api/app.ts'
import { newToken, tokenHash } from '../../../api/auth/tokens.ts'
import { createBackupDesk } from '../../../api/backups/backup-desk.ts'
import { readConfig } from '../../../api/config.ts'
import type { Connection } from '../../../db/connect.ts'
import { insertSession } from '../../../db/sessions.ts'
import { median, type Measurement } from '../measurement.ts'
import { openRecord, type Size } from './grown-record.ts'
import { idOf, LAST_NOON_MS } from './market.ts'

const ROUNDS = 60
const WARM_UP = 8
const ORIGIN = 'http://localhost:8080'

/** One question put to the whole service, without a socket. */
export interface Asked {
  method: 'GET' | 'POST'
  path: string
  body?: unknown
}
type Ask = (asked: Asked) => Promise<void>

async function serviceOn(connection: Connection, dataDir: string): Promise<Ask> {
  const config = readConfig({ DATA_DIR: dataDir })
  const linkKey = new TextEncoder().encode('a key of the measurement, long enough')
  const clock = (): number => LAST_NOON_MS
  const app = createApp({
    db: connection.db,
    engine: 'postgres',
    clock,
    config,
    backups: createBackupDesk({ connection, config, linkKey, clock }),
    pdf: async () => new Uint8Array(),
    linkKey,
    log: pino({ level: 'silent' }),
  })
  const [id, createdAt] = [newToken(), new Date(LAST_NOON_MS)]
  const expiresAt = new Date(LAST_NOON_MS + 86_400_000)
  await insertSession(connection.db, { idHash: tokenHash(id), personId: idOf('00000003', 1), verifiedHash: 'a hash', createdAt, expiresAt })
  const headers = { 'sec-fetch-site': 'same-origin', 'content-type': 'application/json', cookie: `driploop=${id}` }
  return async ({ method, path, body }) => {
    const answer = await app.request(
      ORIGIN + path,
      { method, headers, ...(body === undefined ? {} : { body: JSON.stringify(body) }) },
      { incoming: { socket: { remoteAddress: '192.0.2.1' } } },
    )
    const text = await answer.text()
    if (answer.status !== 200) throw new Error(`${method} ${path} answered ${answer.status}: ${text.slice(0, 300)}`)
  }
}

/** Milliseconds that some work takes. */
export async function timeOf(work: () => Promise<unknown>): Promise<number> {
  const started = performance.now()
  await work()
  return performance.now() - started
}

/** Median time of the same questions to a record of two million sightings, against one of twenty thousand, in turn. */
export async function growthOf(name: string, askedAt: (round: number) => Asked): Promise<Measurement[]> {
  const folder = await mkdtemp(join(tmpdir(), 'driploop-bench-'))
  try {
    return await growthOfWork(name, async (connection) => {
      const ask = await serviceOn(connection, folder)
      return (round) => timeOf(() => ask(askedAt(round)))
    })
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** The same of work that tells itself how many milliseconds of a round count. */
export async function growthOfWork(
  name: string,
  begin: (connection: Connection) => Promise<(round: number) => Promise<number>>,
): Promise<Measurement[]> {
  const connections = { young: await openRecord('young'), grown: await openRecord('grown') }
  try {
    const works = { young: await begin(connections.young), grown: await begin(connections.grown) }
    const times: Record<Size, number[]> = { young: [], grown: [] }
    for (let round = -WARM_UP; round < ROUNDS; round += 1) {
      for (const size of ['young', 'grown'] as const) {
        const took = await works[size](round + WARM_UP)
        if (round >= 0) times[size].push(took)
      }
    }
    const [value, baseline] = [median(times.grown), median(times.young)]
    return [{ name, value, unit: 'ms', baseline, ratio: value / baseline }]
  } finally {
    for (const connection of Object.values(connections)) await connection.close()
  }
}
