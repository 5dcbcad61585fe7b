import { describe, expect, it } from 'vitest'
import { makePicture } from '../../api/pictures/make-picture.ts'
import { createPictureDesk, PictureBusyError, type MakePicture } from '../../api/pictures/picture-desk.ts'
import { jpeg } from './support/pictures.ts'

describe('the desk of pictures', () => {
  it('makes one at a time in their order, lets six wait, and sends the next away', async () => {
    const begun: number[] = []
    const ends: Array<() => void> = []
    let atOnce = 0
    let most = 0
    const slow: MakePicture = async (bytes) => {
      begun.push(bytes[0] ?? 0)
      most = Math.max(most, (atOnce += 1))
      await new Promise<void>((end) => ends.push(end))
      atOnce -= 1
      return { ok: false, refusal: { code: 'broken', message: '', limit: '' } }
    }
    const desk = createPictureDesk(slow)
    const asked = Array.from({ length: 7 }, (_, index) => desk(new Uint8Array([index])))
    await expect(desk(new Uint8Array([99]))).rejects.toThrow(PictureBusyError)
    for (let turn = 0; turn < 7; turn += 1) {
      ends.shift()?.()
      await asked[turn]
      await new Promise<void>((next) => void setImmediate(next))
    }
    expect(begun).toEqual([0, 1, 2, 3, 4, 5, 6])
    expect(most).toBe(1)
  })

  it('goes on after one that failed', async () => {
    let times = 0
    const desk = createPictureDesk(async () => {
      times += 1
      if (times === 1) throw new Error('the machine is full')
      return { ok: false, refusal: { code: 'broken', message: '', limit: '' } }
    })
    await expect(desk(new Uint8Array())).rejects.toThrow('the machine is full')
    expect(await desk(new Uint8Array())).toMatchObject({ ok: false })
  })

  it('leaves the event loop to others while pixels are worked on', async () => {
    const photo = await jpeg(4000, 3000)
    let turns = 0
    let going = true
    const turn = (): void => {
      turns += 1
      if (going) setImmediate(turn)
    }
    turn()
    const made = await makePicture(photo)
    going = false
    expect(made.ok).toBe(true)
    expect(turns).toBeGreaterThan(20)
  })
})
