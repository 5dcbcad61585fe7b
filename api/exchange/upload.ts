import { createWriteStream } from 'node:fs'
import { mkdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { MOST_FILE_BYTES } from '../../core/exchange/data-set.ts'
import { isDiskFull } from '../../db/reach.ts'
import { problemBody, ProblemError } from '../http/problem.ts'

const MB = 1_000_000

export const uploadFolder = (dataDir: string): string => join(dataDir, 'imports')
/** The name is the job's id, ours and no part of what was sent. */
export const uploadPath = (dataDir: string, jobId: string): string => join(uploadFolder(dataDir), jobId)

class TooLarge extends Error {}

async function* counted(body: ReadableStream<Uint8Array>, most: number, count: (bytes: number) => void): AsyncGenerator<Uint8Array> {
  let bytes = 0
  for await (const chunk of Readable.fromWeb(body as Parameters<typeof Readable.fromWeb>[0])) {
    const part = chunk as Uint8Array
    bytes += part.length
    if (bytes > most) throw new TooLarge('too large')
    count(bytes)
    yield part
  }
}

const NO_ROOM =
  'The disk of the server is full, or its data folder takes no files. Nothing was imported. Make room, then send the file again.'

/**
 * Writes what is sent to a file as it comes in, and tells its length. Whatever goes wrong leaves no file.
 *
 * Errors: ProblemError 413 beyond `most` bytes, 507 where the disk is full or not to be written, 400 where the sender goes away.
 */
export async function saveUpload(body: ReadableStream<Uint8Array>, path: string, most = MOST_FILE_BYTES): Promise<number> {
  let bytes = 0
  try {
    await pipeline(
      counted(body, most, (soFar) => (bytes = soFar)),
      createWriteStream(path, { mode: 0o600 }),
    )
    return bytes
  } catch (error) {
    // What cannot be written to cannot always be taken away either; then there is nothing of ours in it.
    await rm(path, { force: true }).catch(() => undefined)
    throw refusalOf(error, most)
  }
}

/** A folder of another account, a read-only disk, a file where the folder should be. */
const NOT_TO_BE_WRITTEN = new Set(['EACCES', 'EPERM', 'EROFS', 'EEXIST', 'ENOTDIR'])

function refusalOf(error: unknown, most: number): unknown {
  if (error instanceof TooLarge)
    return new ProblemError(
      problemBody(413, 'too_large', `The file is larger than ${most / MB} MB. Split it and send the parts one by one.`),
    )
  const { code } = error as { code?: unknown }
  if (isDiskFull(error) || NOT_TO_BE_WRITTEN.has(String(code))) return new ProblemError(problemBody(507, 'no_room', NO_ROOM))
  if (code === 'ERR_STREAM_PREMATURE_CLOSE' || code === 'ABORT_ERR' || code === 'ECONNRESET')
    return new ProblemError(
      problemBody(400, 'malformed', 'The file broke off before all of it was here. Nothing of it was kept; send it again.'),
    )
  return error
}

/** Errors: as `saveUpload`. */
export async function makeUploadFolder(dataDir: string): Promise<void> {
  await mkdir(uploadFolder(dataDir), { recursive: true, mode: 0o700 }).catch((error: unknown) => {
    throw refusalOf(error, MOST_FILE_BYTES)
  })
}
