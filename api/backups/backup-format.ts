import type { SnapshotTable } from '../../db/snapshot.ts'

/**
 * One file: a gzip stream of lines of JSON, and behind it two lines of text. The first line of the stream is the head; then follow the
 * rows of its tables, in their order and as many as it says, each one JSON object. Where a passphrase was given, the whole of it is wrapped
 * in the age format (age-encryption.org/v1, scrypt recipient, no armour).
 */
export interface BackupHead {
  kind: 'driploop backup'
  format: number
  /** Of the program that wrote it. The tables are those of `migrations`. */
  release: string
  /** ISO 8601, UTC. */
  madeAt: string
  engine: 'embedded' | 'postgres'
  migrations: string[]
  sequences: Record<string, string>
  tables: SnapshotTable[]
  /** Signs quote and setup links: without it those that were printed open nothing. */
  linkKey: string
}

export const KIND = 'driploop backup'
export const FORMAT = 1

/** Behind the stream: the SHA-256 of the rows, alike on every engine, and of every byte of the file up to there. */
export const trailerOf = (content: string): string => `\ncontent ${content}\n`
export const lastLine = (file: string): string => `file ${file}\n`
export const TRAILER_BYTES = '\ncontent \nfile \n'.length + 2 * 64
const TRAILER = /^\ncontent ([0-9a-f]{64})\nfile ([0-9a-f]{64})\n$/

export interface Trailer {
  content: string
  file: string
}
export function readTrailer(bytes: Uint8Array): Trailer | undefined {
  const [, content, file] = TRAILER.exec(Buffer.from(bytes).toString('latin1')) ?? []
  return content === undefined || file === undefined ? undefined : { content, file }
}

export type BackupFault =
  | 'no_file'
  | 'no_backup'
  | 'cut'
  | 'damaged'
  | 'passphrase_needed'
  | 'passphrase_wrong'
  | 'newer_release'
  | 'not_empty'
  | 'link_key_differs'
  | 'not_its_tables'
  | 'no_room'
  | 'not_writable'
  | 'busy'

/** A backup that was not made, or a file that is not put back, with the reason for a person. Nothing was changed. */
export class BackupRefused extends Error {
  readonly code: BackupFault
  constructor(code: BackupFault, message: string, options?: ErrorOptions) {
    super(message, options)
    this.name = 'BackupRefused'
    this.code = code
  }
}
