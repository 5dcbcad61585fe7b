import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto'

/** A one-use link's token: 256 random bits, base64url. Only its hash is stored. */
export const newToken = (): string => randomBytes(32).toString('base64url')

/** What the database keeps of a token. @example tokenHash('…') // 64 hexadecimal digits */
export const tokenHash = (token: string): string => createHash('sha256').update(token).digest('hex')

/** Of mail the link that ends it; its id is the person's. */
export type LinkKind = 'quote' | 'setup' | 'mail'

/** Half of SHA-256's output, the least that RFC 2104 (section 5) recommends to keep: 128 bits, and a QR code two sizes smaller than with all of it. */
const MAC_BYTES = 16
const UUID_BYTES = 16

function macOf(key: Uint8Array, kind: LinkKind, id: string, linkVersion: number | string): Buffer {
  return createHmac('sha256', key).update(`${kind}|${id}|${linkVersion}`).digest().subarray(0, MAC_BYTES)
}

const uuidBytes = (id: string): Buffer => Buffer.from(id.replaceAll('-', ''), 'hex')
const uuidText = (bytes: Buffer): string => bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')

/**
 * Token of a quote or setup link: the id and a keyed hash over kind, id and link version, base64url, 43 characters.
 * It can be made again at any time and is revoked by raising the link version.
 */
export function linkToken(key: Uint8Array, kind: LinkKind, id: string, linkVersion: number | string): string {
  return Buffer.concat([uuidBytes(id), macOf(key, kind, id, linkVersion)]).toString('base64url')
}

/** The id a token names, unproven: look the row up, then ask `isLinkToken`. Undefined for anything that is no token. */
export function idInToken(token: string): string | undefined {
  if (!/^[A-Za-z0-9_-]{43}$/.test(token)) return undefined
  const bytes = Buffer.from(token, 'base64url')
  return bytes.length === UUID_BYTES + MAC_BYTES ? uuidText(bytes.subarray(0, UUID_BYTES)) : undefined
}

/** Proves a token against the row's current link version, in constant time. */
export function isLinkToken(key: Uint8Array, kind: LinkKind, id: string, linkVersion: number | string, token: string): boolean {
  const bytes = Buffer.from(token, 'base64url')
  // 43 characters hold two bits more than 32 bytes: only the spelling we made ourselves counts.
  if (bytes.length !== UUID_BYTES + MAC_BYTES || bytes.toString('base64url') !== token) return false
  return timingSafeEqual(bytes.subarray(UUID_BYTES), macOf(key, kind, id, linkVersion))
}
