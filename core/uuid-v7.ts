/**
 * A UUID of version 7: 48 bits of milliseconds, then 74 random bits; ids made later sort later.
 *
 * Units:  milliseconds since 1970 in UTC, 0 to 2^48 − 1; at least 10 random bytes.
 * Errors: RangeError for a time outside that range or too few bytes.
 * Source: RFC 9562, section 5.7.
 *
 * @example uuidV7(0x017f22e279b0, bytes) // '017f22e2-79b0-7…'
 */
export function uuidV7(instantMs: number, random: Uint8Array): string {
  if (!(Number.isInteger(instantMs) && instantMs >= 0 && instantMs < 2 ** 48))
    throw new RangeError('A UUID needs a time between 1970 and 10889')
  if (random.length < 10) throw new RangeError('A UUID of version 7 needs 10 random bytes')
  const bytes = new Uint8Array(16)
  new DataView(bytes.buffer).setUint32(0, Math.floor(instantMs / 0x10000))
  new DataView(bytes.buffer).setUint16(4, instantMs % 0x10000)
  bytes.set(random.subarray(0, 10), 6)
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f)
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f)
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`
}
