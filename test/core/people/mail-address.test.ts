import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isMailAddress } from '../../../core/people/mail-address.ts'

describe('a mail address', () => {
  // RFC 5321, 2.4 and 4.1.2; RFC 5322, 3.4.1.
  it.each(['ida@post.example', 'ida.b+tanks@mail.post.example', "o'neil@post.example", 'x@xn--mnchen-3ya.example'])('is %s', (text) => {
    expect(isMailAddress(text)).toBe(true)
  })

  it.each([
    'Ida <ida@post.example>',
    'ida@post.example, ole@post.example',
    'ida@post.example\r\nBcc: ole@post.example',
    'ida@post.example\n',
    '"ida b"@post.example',
    'ida@localhost',
    'ida@[192.0.2.1]',
    'ida@192.0.2.1',
    '.ida@post.example',
    'i..da@post.example',
    'ida@-post.example',
    'ida@@post.example',
    '@post.example',
    'ida',
    'idä@post.example',
    `${'a'.repeat(65)}@post.example`,
    `ida@${'a'.repeat(64)}.example`,
    `ida@${'post.'.repeat(60)}example`,
    '',
  ])('is not %j', (text) => {
    expect(isMailAddress(text)).toBe(false)
  })

  it('never holds a sign that ends a line, a list or an address', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 12 }), fc.constantFrom(...'\r\n\0<>,;:" ()\\'), (rest, sign) => {
        expect(isMailAddress(`ida${sign}${rest}@post.example`)).toBe(false)
        expect(isMailAddress(`ida@post.example${sign}${rest}`)).toBe(false)
      }),
      { numRuns: 100 },
    )
  })
})
