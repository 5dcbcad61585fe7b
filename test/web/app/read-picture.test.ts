import { describe, expect, it } from 'vitest'
import { MOST_PICTURE_BYTES } from '../../../core/catalog/picture.ts'
import { readPicture } from '../../../web/app/catalog/read-picture.ts'

const JPEG_HEAD = new Uint8Array([0xff, 0xd8, 0xff, 0xe0])

describe('a chosen file', () => {
  it('is sent as what it is, whatever its name says', async () => {
    const read = await readPicture(new File([JPEG_HEAD], 'tank.png', { type: 'image/png' }))
    expect([read.fault, read.blob?.type, read.blob?.size]).toEqual([null, 'image/jpeg', 4])
  })

  it('that is no picture, or too large, is not sent, and the sentence says what to do', async () => {
    expect((await readPicture(new File(['<svg/>'], 'logo.png'))).fault).toBe(
      'The file is a drawing (SVG). Choose a photograph in JPEG, PNG or WebP.',
    )
    expect((await readPicture(new File([], 'empty.jpg'))).fault).toBe('The file is no picture. Choose a photograph in JPEG, PNG or WebP.')
    const large = new File([JPEG_HEAD, new Uint8Array(MOST_PICTURE_BYTES)], 'photo.jpg')
    expect((await readPicture(large)).fault).toBe('The file has 12.0 MB. At most 12 fit: save it smaller, or choose another.')
  })
})
