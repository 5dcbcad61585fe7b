import type { Result } from '../../core/result.ts'
import type { PictureFiles } from '../../db/pictures.ts'
import type { PictureRefusal } from './make-picture.ts'

/** One at a time unpacks 160 MB at most; a second would double what the service needs. */
const AT_ONCE = 1
/** Each holds up to 12 MB while it waits, a second or two. */
const MOST_WAITING = 6

/** More pictures were sent than the machine should take on. */
export class PictureBusyError extends Error {}

export type MakePicture = (bytes: Uint8Array) => Promise<Result<PictureFiles, PictureRefusal>>

/**
 * Puts a bounded queue before the maker of pictures. Errors: PictureBusyError where six wait already.
 *
 * @example createPictureDesk(makePicture)(bytes)
 */
export function createPictureDesk(make: MakePicture): MakePicture {
  const waiting: Array<() => void> = []
  let working = 0
  const next = (): void => {
    working -= 1
    waiting.shift()?.()
  }
  return async (bytes) => {
    if (working >= AT_ONCE) {
      if (waiting.length >= MOST_WAITING) throw new PictureBusyError('too many pictures at once')
      await new Promise<void>((begin) => waiting.push(begin))
    }
    working += 1
    try {
      return await make(bytes)
    } finally {
      next()
    }
  }
}
