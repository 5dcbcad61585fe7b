import { createECDH, hkdfSync } from 'node:crypto'

/** The order of the group of P-256 (FIPS 186-5 and SP 800-186, 3.2.1.3). */
const ORDER = 0xffffffff_00000000_ffffffff_ffffffff_bce6faad_a7179e84_f3b9cac2_fc632551n
/** FIPS 186-5, A.2.1: sixty-four bits more than the order has, so that no key is likelier than another. */
const SEED_BYTES = 40

export interface VapidKey {
  /** The point, uncompressed, and the number, both base64url: as browsers and RFC 8292 want them. */
  publicKey: string
  privateKey: string
}

/**
 * The key pair by which push services know this install (RFC 8292). It is drawn from the key of links and so is kept, moved and backed up with it;
 * another key of links makes another pair, and every browser must be asked anew.
 */
export function vapidKeyOf(linkKey: Uint8Array): VapidKey {
  const seed = Buffer.from(hkdfSync('sha256', linkKey, '', 'driploop web push key', SEED_BYTES))
  const number = (BigInt(`0x${seed.toString('hex')}`) % (ORDER - 1n)) + 1n
  const privateKey = Buffer.from(number.toString(16).padStart(64, '0'), 'hex')
  const curve = createECDH('prime256v1')
  curve.setPrivateKey(privateKey)
  return { publicKey: curve.getPublicKey().toString('base64url'), privateKey: privateKey.toString('base64url') }
}
