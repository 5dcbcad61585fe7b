import { createCipheriv, createDecipheriv, createHash, randomBytes, scrypt } from 'node:crypto'
import { promisify } from 'node:util'
import { Decrypter, Encrypter, Stanza, type Identity, type Recipient } from 'age-encryption'
import { BackupRefused } from './backup-format.ts'

/**
 * The scrypt recipient of the age format (C2SP age.md, "scrypt recipient stanza"). The library derives its key on the main thread and holds
 * everybody up for a second or more; this one asks the thread pool. What it writes any other program of that format opens.
 */
const LABEL = 'age-encryption.org/v1/scrypt'
/** 2^17 is the least that OWASP names for scrypt with r 8 and p 1; the library's own 2^18 takes 256 MB. */
const WORK_FACTOR = 17
/** What is read may have been made elsewhere; beyond this it is an attack on our memory (1 GB). */
const MOST_WORK = 20
const SALT_BYTES = 16
const NONCE = Buffer.alloc(12)
const TAG_BYTES = 16

const derive = promisify<string, Uint8Array, number, { N: number; r: number; p: number; maxmem: number }, Buffer>(scrypt)

/** A file is written once and then read three times over: the key that was derived last is kept, since deriving it is meant to be slow. */
let latest: { of: string; key: Promise<Buffer> } | undefined

function wrappingKey(passphrase: string, salt: Uint8Array, logN: number): Promise<Buffer> {
  const N = 2 ** logN
  const [secret, labelled] = [passphrase.normalize('NFC'), Buffer.concat([Buffer.from(LABEL), salt])]
  const of = createHash('sha256')
    .update(JSON.stringify([secret, labelled.toString('hex'), logN]))
    .digest('hex')
  if (latest?.of !== of) latest = { of, key: derive(secret, labelled, 32, { N, r: 8, p: 1, maxmem: 2 * 128 * 8 * N }) }
  return latest.key
}

const unpadded = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replaceAll('=', '')

const recipient = (passphrase: string): Recipient => ({
  async wrapFileKey(fileKey) {
    const salt = randomBytes(SALT_BYTES)
    const cipher = createCipheriv('chacha20-poly1305', await wrappingKey(passphrase, salt, WORK_FACTOR), NONCE, {
      authTagLength: TAG_BYTES,
    })
    const body = Buffer.concat([cipher.update(fileKey), cipher.final(), cipher.getAuthTag()])
    return [new Stanza(['scrypt', unpadded(salt), String(WORK_FACTOR)], new Uint8Array(body))]
  },
})

const identity = (passphrase: string): Identity => ({
  async unwrapFileKey([stanza, ...others]) {
    const [type, salt = '', work = ''] = stanza?.args ?? []
    if (stanza === undefined || others.length > 0 || type !== 'scrypt' || !/^[1-9]\d?$/.test(work) || Number(work) > MOST_WORK) return null
    const key = await wrappingKey(passphrase, Buffer.from(salt, 'base64'), Number(work))
    const decipher = createDecipheriv('chacha20-poly1305', key, NONCE, { authTagLength: TAG_BYTES })
    decipher.setAuthTag(stanza.body.subarray(-TAG_BYTES))
    try {
      return new Uint8Array(Buffer.concat([decipher.update(stanza.body.subarray(0, -TAG_BYTES)), decipher.final()]))
    } catch {
      return null
    }
  },
})

/** Wraps a stream of bytes in the age format. */
export async function* locked(bytes: AsyncIterable<Uint8Array>, passphrase: string): AsyncGenerator<Uint8Array> {
  const encrypter = new Encrypter()
  encrypter.addRecipient(recipient(passphrase))
  yield* await encrypter.encrypt(ReadableStream.from(bytes))
}

/** Unwraps it. Errors: BackupRefused `passphrase_wrong` before anything is read, `damaged` where the bytes are not those that were written. */
export async function* unlocked(bytes: AsyncIterable<Uint8Array>, passphrase: string): AsyncGenerator<Uint8Array> {
  const decrypter = new Decrypter()
  decrypter.addIdentity(identity(passphrase))
  const opened = await decrypter.decrypt(ReadableStream.from(bytes)).catch((cause: unknown) => {
    throw new BackupRefused('passphrase_wrong', 'The passphrase does not open this file, or the beginning of the file is damaged.', {
      cause,
    })
  })
  try {
    yield* opened
  } catch (cause) {
    throw new BackupRefused('damaged', 'The file is cut off or damaged: it does not decrypt to its end. Take another copy of it.', {
      cause,
    })
  }
}
