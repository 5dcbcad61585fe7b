import { describe, expect, it } from 'vitest'
import { uuidV7 } from '../../core/uuid-v7.ts'
import { newId } from '../../web/app/post/new-id.ts'

describe('an id made on the phone', () => {
  it('is the published example of RFC 9562, appendix A.6', () => {
    // 017F22E2-79B0-7CC3-98C4-DC0C0C07398F: time 0x017F22E279B0, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
    const random = Uint8Array.from([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f])
    expect(uuidV7(0x017f22e279b0, random)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f')
  })
  it('sorts by the time it was made', () => {
    const same = new Uint8Array(10).fill(0xff)
    const ids = [1, 65_535, 65_536, 1_700_000_000_000, 1_800_000_000_000].map((ms) => uuidV7(ms, same))
    expect(ids.toSorted()).toEqual(ids)
  })
  it('has its version and variant bits whatever the random bytes are', () => {
    for (const byte of [0x00, 0xff])
      expect(uuidV7(0, new Uint8Array(10).fill(byte))).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
  })
  it('is never the same twice', () => {
    expect(new Set(Array.from({ length: 500 }, newId)).size).toBe(500)
  })
  it.each([-1, 0.5, 2 ** 48, NaN])('refuses a time of %s', (ms) => {
    expect(() => uuidV7(ms, new Uint8Array(10))).toThrow(RangeError)
  })
})
