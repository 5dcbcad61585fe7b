import { describe, expect, it, vi } from 'vitest'
import { hashPassword, needsRehash, verifyNobody, verifyPassword } from '../../api/auth/password-hash.ts'
import { checkPassword } from '../../api/auth/password-rules.ts'

const context = ['Tarnwick Aquarium Club', 'Dana Ridley', 'dana.ridley']
const codeOf = (password: string): string => {
  const checked = checkPassword(password, context)
  return checked.ok ? 'taken' : checked.refusal.code
}

describe('a password', () => {
  it('has fifteen characters or more, counted as a person counts them', () => {
    // NIST SP 800-63B-4, 3.1.1.2: fifteen where it is the only factor.
    expect(codeOf('kelp lantern 5')).toBe('too_short')
    expect(codeOf('kelp lantern 52')).toBe('taken')
    expect(codeOf('🐟🌊🪸🐚🦐🐡🐠🦑🐙🦀🐬🐳🦭🐊')).toBe('too_short')
    expect(codeOf('🐟🌊🪸🐚🦐🐡🐠🦑🐙🦀🐬🐳🦭🐊🦈')).toBe('taken')
  })
  it('may have 256, spaces and every sign of the world, and no rule of composition', () => {
    expect(codeOf('ein langer satz über die krebse im bach '.repeat(6) + 'und dann')).toBe('taken')
    expect(codeOf('長い長い合言葉を一つ決めましょうね今')).toBe('taken')
    expect(codeOf('only lower case words')).toBe('taken')
    expect(codeOf('x1y2'.repeat(65))).toBe('too_long')
  })
  it.each([
    'passwordpassword',
    'Password 123456789',
    'qwertyuiopasdfgh',
    '123456789012345',
    'correct horse battery staple',
    'abcdefghijklmnopqrstuvwxyz',
    'driploopdriploop',
  ])('is not %s, which is tried first', (password) => {
    expect(['common', 'repeated']).toContain(codeOf(password))
  })
  it.each(['aaaaaaaaaaaaaaaaaaaa', 'abcabcabcabcabcabc', '🐟🐟🐟🐟🐟🐟🐟🐟🐟🐟🐟🐟🐟🐟🐟'])(
    'is not one piece over and over: %s',
    (password) => {
      expect(codeOf(password)).toBe('repeated')
    },
  )
  it.each(['Tarnwick Aquarium Club', 'tarnwickaquarium2026', 'Dana Ridley 1987!', 'dana.ridley.dana.ridley', 'TARNWICK-club-12345'])(
    'is not what everyone here knows: %s',
    (password) => {
      expect(['about_you', 'repeated']).toContain(codeOf(password))
    },
  )
  it('may mention what everyone knows beside something of its own', () => {
    expect(codeOf('dana keeps seventeen snails')).toBe('taken')
  })
})

describe('the stored hash', () => {
  it('is argon2id with the cost that OWASP asks for at least: 19 MiB, two passes, one lane', async () => {
    expect(await hashPassword('kelp lantern orbit 52')).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[A-Za-z0-9+/]{22}\$[A-Za-z0-9+/]{43}$/)
  })
  it('differs for the same password twice', async () => {
    expect(await hashPassword('kelp lantern orbit 52')).not.toBe(await hashPassword('kelp lantern orbit 52'))
  })
  it('tells the right password from one that differs in its last character, however long', async () => {
    const long = 'krebs '.repeat(42) + 'ende'
    const hash = await hashPassword(long)
    expect(await verifyPassword(hash, long)).toBe(true)
    expect(await verifyPassword(hash, long.slice(0, -1) + 'a')).toBe(false)
  })
  it('is the same password whichever way an é is typed', async () => {
    const hash = await hashPassword('caf\u00e9 am alten hafen')
    expect(await verifyPassword(hash, 'cafe\u0301 am alten hafen')).toBe(true)
    expect(await verifyPassword(hash, 'cafe am alten hafen')).toBe(false)
  })
  it('agrees with argon2id as published in RFC 9106, 5.3, as far as the runtime is asked the same', async () => {
    // The vector's secret and associated data are not ours to choose, so the primitive itself is checked with them.
    const { argon2Sync } = await import('node:crypto')
    const key = argon2Sync('argon2id', {
      message: Buffer.alloc(32, 1),
      nonce: Buffer.alloc(16, 2),
      secret: Buffer.alloc(8, 3),
      associatedData: Buffer.alloc(12, 4),
      parallelism: 4,
      tagLength: 32,
      memory: 32,
      passes: 3,
    })
    expect(key.toString('hex')).toBe('0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659')
  })
  it('is never right where it is no hash of ours', async () => {
    expect(await verifyPassword('a hash', 'a hash')).toBe(false)
    expect(needsRehash('a hash')).toBe(true)
    expect(await verifyNobody('anything')).toBe(false)
  })
})

describe('a name that nobody has', () => {
  it('is refused like any other again after a rush that began with it', async () => {
    // A fresh copy of the module: its first question to nobody falls into the rush.
    vi.resetModules()
    const fresh = await import('../../api/auth/password-hash.ts')
    const rush = Array.from({ length: 62 }, () => fresh.hashPassword('kelp lantern orbit 52'))
    await expect(fresh.verifyNobody('anything')).rejects.toBeInstanceOf(fresh.TooBusyError)
    await Promise.all(rush)
    expect(await fresh.verifyNobody('anything')).toBe(false)
  })
})
