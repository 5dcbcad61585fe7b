import { spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { setTimeout as wait } from 'node:timers/promises'
import type { Kysely } from 'kysely'
import postgres from 'postgres'
import { connect } from '../../db/connect.ts'
import { createInstall } from '../../db/install.ts'
import { migrate } from '../../db/migrate.ts'
import { hashPassword } from '../../api/auth/password-hash.ts'
import type { Database } from '../../db/database.ts'
import { createPerson } from '../../db/people.ts'
import { insertSession } from '../../db/sessions.ts'
import { newToken, tokenHash } from '../../api/auth/tokens.ts'
import { freePort, ready, startServer } from '../api/support/process.ts'
import { granted, install, person, product, store } from '../support/rows.ts'
import { rateOf, type Shot } from './http-load.ts'
import { median, type Measurement } from './measurement.ts'

const PASSWORD = 'kelp lantern orbit 52'
/** A catalog in which a product's record stays as short as a real one's while thousands of sightings are posted. */
const PRODUCTS = 400
/** Nobody may post more than 120 sightings an hour: enough signed-in members for 4 000 posts a second. */
const MEMBERS = 400
/** Many short rounds: what else the machine does falls on both sides alike. */
const ROUNDS = 11
const ROUND_MS = 1_000

export interface Stock {
  productIds: string[]
  storeId: string
  reporterId: string
  /** Of members that are signed in, each a session of its own. */
  cookies: string[]
}
interface Side {
  origin: string
  stock: Stock
  headers: Record<string, string>
}
export interface TwoServers {
  whole: Side
  bare: Side
  stop: () => Promise<void>
}

async function stocked(url: string): Promise<Stock> {
  const connection = await connect({ databaseUrl: url })
  const { db } = connection
  await migrate(db)
  granted(await createInstall(db, install))
  const bench = granted(
    await createPerson(db, {
      name: 'Bench',
      signInName: 'bench',
      role: 'member',
      passwordHash: await hashPassword(PASSWORD),
      invitedBy: null,
    }),
  )
  const productIds: string[] = []
  for (let count = 0; count < PRODUCTS; count += 1) productIds.push((await product(db)).id)
  const { id } = await store(db)
  const cookies: string[] = []
  for (let count = 0; count < MEMBERS; count += 1) cookies.push(await signedIn(db))
  await connection.close()
  return { productIds, storeId: id, reporterId: bench.id, cookies }
}

async function signedIn(db: Kysely<Database>): Promise<string> {
  const [member, id, createdAt] = [await person(db), newToken(), new Date()]
  const expiresAt = new Date(createdAt.getTime() + 86_400_000)
  await insertSession(db, { idHash: tokenHash(id), personId: member.id, verifiedHash: 'a hash', createdAt, expiresAt })
  return `driploop=${id}`
}

async function listening(origin: string): Promise<void> {
  for (let tries = 0; tries < 200; tries += 1) {
    if (await fetch(origin).then(() => true, () => false)) return // prettier-ignore
    await wait(50)
  }
  throw new Error(`nothing answers at ${origin}`)
}

/** The whole service and a bare handler, each a process of its own on a database of its own, both stocked alike. */
export async function startTwoServers(serverUrl: string): Promise<TwoServers> {
  const admin = postgres(serverUrl, { max: 1, onnotice: () => undefined })
  const urlOf = (name: string): string => Object.assign(new URL(serverUrl), { pathname: `/${name}` }).href
  const names = ['bench_whole', 'bench_bare'].map((name) => `${name}_${process.pid}`)
  for (const name of names) await admin.unsafe(`create database ${name}`)
  const [wholeUrl = '', bareUrl = ''] = names.map(urlOf)
  const [wholeStock, bareStock] = [await stocked(wholeUrl), await stocked(bareUrl)]
  const folder = await mkdtemp(join(tmpdir(), 'driploop-bench-'))
  const server = startServer({ DATABASE_URL: wholeUrl, PORT: String(await freePort()), DATA_DIR: folder })
  await ready(server)
  const barePort = await freePort()
  const bare = spawn(process.execPath, [fileURLToPath(new URL('./bare-server.ts', import.meta.url)), bareUrl, String(barePort)], {
    stdio: 'inherit',
  })
  await listening(`http://127.0.0.1:${barePort}`)
  const headers = { 'content-type': 'application/json', 'sec-fetch-site': 'same-origin' }
  const entered = await server.fetch('/api/session', {
    method: 'POST',
    headers,
    body: JSON.stringify({ signInName: 'bench', password: PASSWORD }),
  })
  const cookie = entered.headers.getSetCookie()[0]?.split(';')[0] ?? ''
  return {
    whole: {
      origin: server.origin.replace('localhost', '127.0.0.1'),
      stock: wholeStock,
      headers: { ...headers, cookie, host: new URL(server.origin).host },
    },
    bare: { origin: `http://127.0.0.1:${barePort}`, stock: bareStock, headers },
    async stop() {
      server.child.kill('SIGKILL')
      bare.kill('SIGKILL')
      await server.exited
      for (const name of names) await admin.unsafe(`drop database if exists ${name} with (force)`)
      await admin.end()
      await rm(folder, { recursive: true, force: true })
    },
  }
}

/** Both sides in turn, some rounds each; the medians. */
export async function compareRates(name: string, shotOf: (side: Side) => Shot, expected: number): Promise<Measurement[]> {
  const servers = await startTwoServers(process.env['TEST_DATABASE_URL'] ?? '')
  try {
    const rate = (side: Side, forMs: number): Promise<number> => rateOf(side.origin, () => shotOf(side), expected, forMs)
    for (const side of [servers.whole, servers.bare]) await rate(side, ROUND_MS / 2)
    const values: number[] = []
    const baselines: number[] = []
    for (let round = 0; round < ROUNDS; round += 1) {
      baselines.push(await rate(servers.bare, ROUND_MS))
      values.push(await rate(servers.whole, ROUND_MS))
    }
    const [value, baseline] = [median(values), median(baselines)]
    return [{ name, value, unit: '1/s', baseline, ratio: value / baseline }]
  } finally {
    await servers.stop()
  }
}
