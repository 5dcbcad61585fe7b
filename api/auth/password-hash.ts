import { argon2, randomBytes, timingSafeEqual } from 'node:crypto'

/**
 * Argon2id, 19 MiB, two passes, one lane: the least the OWASP Password Storage Cheat Sheet asks for. About 75 ms a password on a small server;
 * 64 MiB would take three times that, on a machine that the same second serves quotes.
 */
const COST = { memory: 19_456, passes: 2, parallelism: 1 } as const
const SALT_BYTES = 16
const HASH_BYTES = 32
/** At 19 MiB each; two at once use both cores of a small server and leave memory alone. */
const AT_ONCE = 2
/** A queue longer than this would take over two seconds: refusing is kinder than waiting. */
const QUEUE_LIMIT = 60

/** More passwords are being checked than the machine should take on. */
export class TooBusyError extends Error {}

let running = 0
const waiting: Array<() => void> = []

async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  if (running >= AT_ONCE) {
    if (waiting.length >= QUEUE_LIMIT) throw new TooBusyError('too many passwords at once')
    await new Promise<void>((resolve) => waiting.push(resolve))
  } else running += 1
  try {
    return await work()
  } finally {
    const next = waiting.shift()
    if (next === undefined) running -= 1
    else next()
  }
}

interface Cost {
  memory: number
  passes: number
  parallelism: number
}

/** One spelling for one password: a phone may type é as two characters where a desktop types one. */
const messageOf = (password: string): Buffer => Buffer.from(password.normalize('NFC'), 'utf8')

function derive(password: string, nonce: Buffer, cost: Cost, tagLength: number): Promise<Buffer> {
  return inTurn(
    () =>
      new Promise((resolve, reject) => {
        argon2('argon2id', { message: messageOf(password), nonce, tagLength, ...cost }, (error, key) =>
          error === null ? resolve(Buffer.from(key)) : reject(error),
        )
      }),
  )
}

const unpadded = (bytes: Buffer): string => bytes.toString('base64').replace(/=+$/, '')

/** Hash in the PHC string format, salt and cost included. Errors: TooBusyError. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(SALT_BYTES)
  return hashText(salt, await derive(password, salt, COST, HASH_BYTES))
}

const hashText = (salt: Buffer, key: Buffer): string =>
  `$argon2id$v=19$m=${COST.memory},t=${COST.passes},p=${COST.parallelism}$${unpadded(salt)}$${unpadded(key)}`

interface ParsedHash {
  cost: Cost
  salt: Buffer
  key: Buffer
}
function parseHash(text: string): ParsedHash | undefined {
  const match = /^\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)\$([A-Za-z0-9+/]+)\$([A-Za-z0-9+/]+)$/.exec(text)
  if (match === null) return undefined
  const [, memory, passes, parallelism, salt, key] = match
  return {
    cost: { memory: Number(memory), passes: Number(passes), parallelism: Number(parallelism) },
    salt: Buffer.from(salt ?? '', 'base64'),
    key: Buffer.from(key ?? '', 'base64'),
  }
}

/** True for the right password. A text that is no hash of ours is never right. Errors: TooBusyError. */
export async function verifyPassword(hash: string, password: string): Promise<boolean> {
  const parsed = parseHash(hash)
  if (parsed === undefined) return false
  const key = await derive(password, parsed.salt, parsed.cost, parsed.key.length)
  return timingSafeEqual(key, parsed.key)
}

/** True where a hash was made at another cost than today's: made anew at the next sign-in. */
export function needsRehash(hash: string): boolean {
  const cost = parseHash(hash)?.cost
  return cost === undefined || cost.memory !== COST.memory || cost.passes !== COST.passes || cost.parallelism !== COST.parallelism
}

/** A hash of today's cost that nobody's password makes: written down and never computed, so that it costs and fails like a person's. */
const DECOY = hashText(Buffer.alloc(SALT_BYTES), Buffer.alloc(HASH_BYTES))
/** Does for an unknown name the work that a known one costs, so that the time tells nothing. Errors: TooBusyError. */
export async function verifyNobody(password: string): Promise<false> {
  await verifyPassword(DECOY, password)
  return false
}
