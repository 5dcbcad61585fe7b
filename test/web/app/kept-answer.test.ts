import { describe, expect, it } from 'vitest'
import { ProblemError, readProblem } from '../../../web/app/client/problem.ts'
import { keptAnswer } from '../../../web/app/offline/kept-answer.ts'

/** What a device stores, in memory. */
function deviceOf(rows = new Map<string, string>()) {
  return {
    rows,
    getItem: (key: string) => rows.get(key) ?? null,
    setItem: (key: string, value: string) => void rows.set(key, value),
    removeItem: (key: string) => void rows.delete(key),
  }
}
const refuse = (status: number) => async (): Promise<string[]> => {
  throw new ProblemError(readProblem(status, null))
}

describe('an answer kept on the device', () => {
  it('is given again where the server cannot be reached', async () => {
    const device = deviceOf()
    await keptAnswer('stores', async () => ['Saltcote'], device)()
    expect(await keptAnswer('stores', refuse(0), device)()).toEqual(['Saltcote'])
  })
  it.each([401, 403, 404, 500, 503])('never covers up a refusal with %i', async (status) => {
    const device = deviceOf()
    await keptAnswer('stores', async () => ['Saltcote'], device)()
    await expect(keptAnswer('stores', refuse(status), device)()).rejects.toMatchObject({ problem: { status } })
  })
  it('is none where nothing was read yet: the fault stays', async () => {
    await expect(keptAnswer('stores', refuse(0), deviceOf())()).rejects.toBeInstanceOf(ProblemError)
  })
  it('costs nothing else where the device is full, and leaves no older answer behind', async () => {
    const device = deviceOf(new Map([['driploop.answer.stores', '["old"]']]))
    const full = { ...device, setItem: () => { throw new Error('full') } } // prettier-ignore
    expect(await keptAnswer('stores', async () => ['new'], full)()).toEqual(['new'])
    expect(device.rows.size).toBe(0)
  })
})
