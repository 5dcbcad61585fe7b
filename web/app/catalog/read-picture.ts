import { MOST_PICTURE_BYTES, otherFileWords, pictureTypeOf } from '../../../core/catalog/picture.ts'

/** A file under the kind that it really is, or a sentence about what is wrong with it. */
export type PictureReading = { blob: Blob; fault: null } | { blob: null; fault: string }

const MB = 1_000_000
/** As many bytes as tell one kind of file from another. */
const HEAD_BYTES = 512

/**
 * Looks at a chosen file before it is sent, so that a wrong one costs nobody the sending.
 *
 * @example await readPicture(new File(['<svg/>'], 'logo.png')) // { blob: null, fault: 'The file is a drawing (SVG). …' }
 */
export async function readPicture(file: Blob): Promise<PictureReading> {
  const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer())
  const type = pictureTypeOf(head)
  if (type === null)
    return { blob: null, fault: `The file is ${otherFileWords(head) ?? 'no picture'}. Choose a photograph in JPEG, PNG or WebP.` }
  if (file.size > MOST_PICTURE_BYTES) {
    return {
      blob: null,
      fault: `The file has ${(file.size / MB).toFixed(1)} MB. At most ${MOST_PICTURE_BYTES / MB} fit: save it smaller, or choose another.`,
    }
  }
  return { blob: new Blob([file], { type }), fault: null }
}
