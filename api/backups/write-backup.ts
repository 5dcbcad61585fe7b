import { createHash } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { Readable, type Writable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import type { Connection } from '../../db/connect.ts'
import { withSnapshot, type Snapshot } from '../../db/snapshot.ts'
import { RELEASE } from '../release.ts'
import { FORMAT, KIND, lastLine, trailerOf, type BackupHead } from './backup-format.ts'
import { locked } from './passphrase.ts'

export interface BackupOrder {
  connection: Connection
  linkKey: Uint8Array
  madeAt: Date
  /** Null leaves the file readable for whoever has it. */
  passphrase: string | null
}

/** A new file for its owner's eyes alone, on the disk when it is closed. A test puts a full disk in its place. */
export type OpenFile = (path: string) => Writable
export const openNewFile: OpenFile = (path) => createWriteStream(path, { flags: 'wx', mode: 0o600, flush: true })

/** Writes a copy of all our own tables, as they stood at one moment, to a new file. Returns its head and the hash of its rows. */
export async function writeBackup(
  path: string,
  order: BackupOrder,
  open: OpenFile = openNewFile,
): Promise<{ head: BackupHead; content: string }> {
  return withSnapshot(order.connection, async (snapshot) => {
    const head = headOf(snapshot, order)
    const content = createHash('sha256')
    const { passphrase } = order
    const sealed = async function* (zipped: AsyncIterable<Buffer>): AsyncGenerator<Uint8Array> {
      const whole = withTrailer(zipped, () => content.copy().digest('hex'))
      yield* passphrase === null ? whole : locked(whole, passphrase)
    }
    await pipeline(Readable.from(linesOf(head, snapshot, content)), createGzip(), sealed, open(path))
    return { head, content: content.digest('hex') }
  })
}

const headOf = ({ migrations, sequences, tables }: Snapshot, { connection, linkKey, madeAt }: BackupOrder): BackupHead => ({
  kind: KIND,
  format: FORMAT,
  release: RELEASE,
  madeAt: madeAt.toISOString(),
  engine: connection.engine,
  migrations,
  sequences,
  tables,
  linkKey: new TextDecoder().decode(linkKey),
})

/** The rows of a table in the hash of the content: under its name, each on a line. */
export const tableMark = (name: string): string => `${name}\n`

async function* linesOf(head: BackupHead, snapshot: Snapshot, content: ReturnType<typeof createHash>): AsyncGenerator<string> {
  yield `${JSON.stringify(head)}\n`
  for (const { name, rows } of head.tables) {
    content.update(tableMark(name))
    let written = 0
    for await (const chunk of snapshot.rowsOf(name)) {
      const text = `${chunk.join('\n')}\n`
      content.update(text)
      written += chunk.length
      yield text
    }
    if (written !== rows) throw new Error(`The snapshot counted ${rows} rows of ${name} and gave ${written}.`)
  }
}

async function* withTrailer(zipped: AsyncIterable<Buffer>, content: () => string): AsyncGenerator<Buffer> {
  const file = createHash('sha256')
  for await (const chunk of zipped) {
    file.update(chunk)
    yield chunk
  }
  const trailer = trailerOf(content())
  file.update(trailer)
  yield Buffer.from(trailer + lastLine(file.digest('hex')))
}
