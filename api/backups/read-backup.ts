import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGunzip } from 'node:zlib'
import { unknownMigrations } from '../../db/refill.ts'
import { RELEASE } from '../release.ts'
import { BackupRefused, FORMAT, KIND, readTrailer, TRAILER_BYTES, type BackupHead, type Trailer } from './backup-format.ts'
import { unlocked } from './passphrase.ts'
import { tableMark } from './write-backup.ts'

const GZIP = Buffer.from([0x1f, 0x8b])
const AGE = Buffer.from('age-encryption.org/v1\n')
/** Rows handed on at once: about this much text. */
const CHUNK_CHARS = 500_000

const damaged = (what: string, cause?: unknown): BackupRefused =>
  new BackupRefused('damaged', `The file is damaged: ${what}. Take another copy of it, or an older backup.`, { cause })

/** What a verified file holds. */
export interface BackupContents {
  head: BackupHead
  content: string
}

/** A file and what opens it. */
export interface BackupSource {
  path: string
  passphrase: string | null
}

/** Whether a file is wrapped in the age format. Errors: BackupRefused where there is no such file, or it is no backup at all. */
export async function isLocked(path: string): Promise<boolean> {
  const file = await open(path).catch((cause: unknown) => {
    throw new BackupRefused('no_file', `The file ${path} cannot be read. Check the name, and that this account may read it.`, { cause })
  })
  try {
    const { buffer } = await file.read(Buffer.alloc(AGE.length), 0, AGE.length, 0)
    if (buffer.equals(AGE)) return true
    if (buffer.subarray(0, GZIP.length).equals(GZIP)) return false
  } finally {
    await file.close()
  }
  throw new BackupRefused('no_backup', `The file ${path} is no backup of this program, or its beginning is damaged.`)
}

/**
 * Reads a whole file and checks it: every byte against its hash, every row against its head and the hash of the content.
 *
 * Errors: BackupRefused says what is wrong with the file.
 */
export async function verifyBackup(source: BackupSource): Promise<BackupContents> {
  const trailer = await verifyBytes(source)
  const head = await readHead(source)
  const content = createHash('sha256')
  let [table, rows] = ['', 0]
  for (const { name } of head.tables) if (typeof name !== 'string') throw damaged('its head names no tables')
  const begun = head.tables[Symbol.iterator]()
  const beginTo = (name: string): void => {
    for (let next = begun.next(); next.done !== true; next = begun.next()) {
      content.update(tableMark(next.value.name))
      if (next.value.name === name) return
    }
  }
  for await (const chunk of readRows(source)) {
    if (chunk.table !== table) beginTo((table = chunk.table))
    content.update(`${chunk.rows.join('\n')}\n`)
    for (const row of chunk.rows) demandObject(row, chunk.table)
    rows += chunk.rows.length
  }
  beginTo('')
  if (rows !== head.tables.reduce((sum, one) => sum + one.rows, 0)) throw damaged('rows are missing')
  if (content.digest('hex') !== trailer.content) throw damaged('its rows are not those that were written')
  return { head, content: trailer.content }
}

function demandObject(row: string, table: string): void {
  try {
    if (typeof JSON.parse(row) === 'object') return
  } catch (cause) {
    throw damaged(`a row of ${table} cannot be read`, cause)
  }
  throw damaged(`a row of ${table} is none`)
}

/** The bytes as they were before they were wrapped. */
async function* plainBytes({ path, passphrase }: BackupSource): AsyncGenerator<Uint8Array> {
  if (!(await isLocked(path))) yield* createReadStream(path)
  else if (passphrase === null)
    throw new BackupRefused('passphrase_needed', 'The file is locked with a passphrase. Give the passphrase it was made with.')
  else yield* unlocked(createReadStream(path), passphrase)
}

/** All but the last bytes, which are handed to `atEnd`. */
async function* beforeTrailer(bytes: AsyncIterable<Uint8Array>, atEnd?: (trailer: Buffer) => void): AsyncGenerator<Buffer> {
  let held: Buffer = Buffer.alloc(0)
  for await (const chunk of bytes) {
    held = Buffer.concat([held, chunk])
    if (held.length <= TRAILER_BYTES) continue
    yield held.subarray(0, -TRAILER_BYTES)
    held = held.subarray(-TRAILER_BYTES)
  }
  atEnd?.(held)
}

async function verifyBytes(source: BackupSource): Promise<Trailer> {
  const file = createHash('sha256')
  let last: Buffer = Buffer.alloc(0)
  for await (const chunk of beforeTrailer(plainBytes(source), (trailer) => (last = trailer))) file.update(chunk)
  const trailer = readTrailer(last)
  if (trailer === undefined)
    throw new BackupRefused('cut', 'The file is cut off: its end is missing. Copy it again, or take an older backup.')
  file.update(last.subarray(0, TRAILER_BYTES - `file ${trailer.file}\n`.length))
  if (file.digest('hex') !== trailer.file) throw damaged('its bytes are not those that were written')
  return trailer
}

/** A reader that has enough stops here: the streams behind it are closed without a word. */
async function* gunzipped(bytes: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
  const gunzip = createGunzip()
  // A failure of the source destroys the stream, and whoever reads that is told.
  const feeding = pipeline(Readable.from(bytes), gunzip).catch(() => undefined)
  try {
    yield* gunzip
  } finally {
    gunzip.destroy()
    await feeding
  }
}

/** The lines of a file whose bytes were verified. */
async function* readLines(source: BackupSource): AsyncGenerator<string> {
  const bytes = gunzipped(beforeTrailer(plainBytes(source)))
  let pieces: string[] = []
  const decoder = new TextDecoder('utf-8', { fatal: true })
  for await (const chunk of bytes) {
    const [first = '', ...rest] = decoder.decode(chunk, { stream: true }).split('\n')
    pieces.push(first)
    for (const piece of rest) {
      yield pieces.join('')
      pieces = [piece]
    }
  }
  if (pieces.join('') !== '') throw damaged('its last line is not whole')
}

/** The first line. Errors: BackupRefused for a file of a newer release, and for what is no head. */
export async function readHead(source: BackupSource): Promise<BackupHead> {
  const lines = readLines(source)
  const { value } = await lines.next()
  await lines.return(undefined)
  const head = headIn(String(value))
  const unknown = unknownMigrations(head.migrations)
  if (head.format > FORMAT || unknown.length > 0)
    throw new BackupRefused(
      'newer_release',
      `The file was made by release ${head.release}, and this is ${RELEASE}, which does not know its tables. Update this program first, then put the file back.`,
    )
  return head
}

function headIn(line: string): BackupHead {
  try {
    const head = JSON.parse(line) as BackupHead
    if (head.kind === KIND && Array.isArray(head.tables) && Array.isArray(head.migrations)) return head
  } catch (cause) {
    throw new BackupRefused('no_backup', 'The file does not begin as a backup of this program does.', { cause })
  }
  throw new BackupRefused('no_backup', 'The file does not begin as a backup of this program does.')
}

/** The rows of every table, some at a time. */
export async function* readRows(source: BackupSource): AsyncGenerator<{ table: string; rows: string[] }> {
  const lines = readLines(source)
  const head = headIn(String((await lines.next()).value))
  for (const { name, rows } of head.tables) {
    let [chunk, chars]: [string[], number] = [[], 0]
    for (let read = 0; read < rows; read += 1) {
      const { value, done } = await lines.next()
      if (done === true) throw damaged(`rows of ${name} are missing`)
      chunk.push(value)
      chars += value.length
      if (chars < CHUNK_CHARS) continue
      yield { table: name, rows: chunk }
      ;[chunk, chars] = [[], 0]
    }
    if (chunk.length > 0) yield { table: name, rows: chunk }
  }
  if ((await lines.next()).done !== true) throw damaged('there are more rows than its head says')
}

/** Hash of the rows as the end of a file tells it, unverified; null where it has no such end, or is locked. */
export async function contentOf(path: string): Promise<string | null> {
  const file = await open(path)
  try {
    const { size } = await file.stat()
    const { buffer } = await file.read(Buffer.alloc(TRAILER_BYTES), 0, TRAILER_BYTES, Math.max(0, size - TRAILER_BYTES))
    return readTrailer(buffer)?.content ?? null
  } finally {
    await file.close()
  }
}
