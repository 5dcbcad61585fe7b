import { createDecipheriv, createECDH, hkdfSync } from 'node:crypto'

/** A browser's side: the number of its key and its secret, base64url. */
export interface BrowserKeys {
  privateKey: string
  auth: string
}

const bytes = (text: string): Buffer => Buffer.from(text, 'base64url')
const derive = (key: Uint8Array, salt: Uint8Array, info: Uint8Array, length: number): Buffer =>
  Buffer.from(hkdfSync('sha256', key, salt, info, length))

/** Opens a message as a browser does: RFC 8291, section 3.4, over the one record of RFC 8188, section 2. Throws where a byte was changed. */
export function openSealed(sealed: Uint8Array, { privateKey, auth }: BrowserKeys): string {
  const body = Buffer.from(sealed)
  const salt = body.subarray(0, 16)
  const keyLength = body.readUInt8(20)
  const senderKey = body.subarray(21, 21 + keyLength)
  const record = body.subarray(21 + keyLength)
  if (record.length > body.readUInt32BE(16)) throw new Error('more than one record')
  const own = createECDH('prime256v1')
  own.setPrivateKey(bytes(privateKey))
  const info = Buffer.concat([Buffer.from('WebPush: info\0'), own.getPublicKey(), senderKey])
  const secret = derive(own.computeSecret(senderKey), bytes(auth), info, 32)
  const key = derive(secret, salt, Buffer.from('Content-Encoding: aes128gcm\0'), 16)
  const nonce = derive(secret, salt, Buffer.from('Content-Encoding: nonce\0'), 12)
  const cipher = createDecipheriv('aes-128-gcm', key, nonce)
  cipher.setAuthTag(record.subarray(-16))
  const padded = Buffer.concat([cipher.update(record.subarray(0, -16)), cipher.final()])
  // The last record ends with a 2 and as many zeros as there may be.
  const end = padded.lastIndexOf(2)
  if (end < 0 || padded.subarray(end + 1).some((byte) => byte !== 0)) throw new Error('no end of the record')
  return padded.subarray(0, end).toString('utf8')
}
