import { describe, expect, it } from 'vitest'
import { otherFileWords, pictureTypeOf } from '../../../core/catalog/picture.ts'

const latin = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0))

describe('the kind of a picture', () => {
  // First bytes as the formats' own standards give them: T.81, ISO/IEC 15948, RFC 9649.
  it.each([
    ['ÿØÿà\u0000\u0010JFIF', 'image/jpeg'],
    ['ÿØÿá', 'image/jpeg'],
    ['\u0089PNG\r\n\u001a\n', 'image/png'],
    ['RIFF\u0024\u0000\u0000\u0000WEBPVP8 ', 'image/webp'],
    ['RIFF\u0024\u0000\u0000\u0000WAVEfmt ', null],
    ['\u0089PNG\n\n\u001a\n', null],
    ['ÿØ', null],
    [' ÿØÿà', null],
    ['', null],
    ['<svg onload="x"/>', null],
  ])('is told by its first bytes: %j is %s', (bytes, type) => {
    expect(pictureTypeOf(latin(bytes))).toBe(type)
  })

  it('of another file is named, so that its sender knows what to do', () => {
    expect(otherFileWords(latin('  \n<svg>'))).toBe('a drawing (SVG)')
    expect(otherFileWords(latin('\u0000\u0000\u0000\u0020ftypheic'))).toBe('an HEIC photograph')
    expect(otherFileWords(latin('who knows'))).toBeNull()
  })
})
