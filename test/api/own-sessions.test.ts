import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createWorld, PASSWORD, type Browser, type World } from './support/world.ts'

let world: World
beforeAll(async () => {
  world = await createWorld()
})
afterAll(() => world.close())

interface Own {
  id: string
  device: string
  begunAt: string
  lastUsedAt: string
  current: boolean
}
const PHONE = 'Mozilla/5.0 (Example; Mobile; rv:120.0) Engine/120.0'

async function again(signInName: string, userAgent?: string): Promise<Browser> {
  const browser = world.visitor()
  const headers: Record<string, string> = userAgent === undefined ? {} : { 'user-agent': userAgent }
  const answer = await browser.send('POST', '/api/session', { body: { signInName, password: PASSWORD }, headers })
  expect(answer.status, answer.text).toBe(200)
  return browser
}
const listOf = async (browser: Browser): Promise<Own[]> => (await browser.send<{ items: Own[] }>('GET', '/api/sessions')).body.items
const isIn = async (browser: Browser): Promise<boolean> => (await browser.send('GET', '/api/sessions')).status === 200

describe('where one is signed in', () => {
  it('is told by device, beginning and last use, and which one this is', async () => {
    const desk = await world.signIn('member')
    const phone = await again(desk.signInName, PHONE)
    const seen = await listOf(phone)
    expect(seen.map(({ device, current }) => ({ device, current }))).toEqual(
      expect.arrayContaining([
        { device: 'phone', current: true },
        { device: 'computer', current: false },
      ]),
    )
    expect(seen).toHaveLength(2)
    for (const { begunAt, lastUsedAt } of seen) expect(Date.parse(lastUsedAt)).toBeGreaterThanOrEqual(Date.parse(begunAt))
  })

  it('keeps nothing of the user agent but the one word', async () => {
    const desk = await world.signIn('member')
    await again(desk.signInName, `${PHONE} Sneaky/9.9\u001b[31m`)
    const rows = await world.db.selectFrom('session').selectAll().execute()
    expect(JSON.stringify(rows)).not.toContain('Sneaky')
  })

  it('moves on as a session is used, a quarter of an hour apart at the least', async () => {
    const desk = await world.signIn('member')
    const back = new Date(Date.now() - 3 * 3_600_000)
    await world.db.updateTable('session').set({ last_seen_at: back }).where('person_id', '=', desk.personId).execute()
    const first = (await listOf(desk))[0]?.lastUsedAt ?? ''
    expect(Date.parse(first)).toBeGreaterThan(back.getTime() + 2 * 3_600_000)
    expect((await listOf(desk))[0]?.lastUsedAt).toBe(first)
  })

  it('is ended one by one, or everywhere else at once, by its owner alone', async () => {
    const desk = await world.signIn('member')
    const [phone, tablet] = [await again(desk.signInName, PHONE), await again(desk.signInName)]
    const other = await world.signIn('manager')
    const phoneId = (await listOf(phone)).find(({ current }) => current)?.id ?? ''
    expect((await other.send('DELETE', `/api/sessions/${phoneId}`)).status).toBe(404)
    expect(await isIn(phone)).toBe(true)
    expect((await desk.send('DELETE', `/api/sessions/${phoneId}`)).status).toBe(204)
    expect([await isIn(phone), await isIn(tablet), await isIn(desk)]).toEqual([false, true, true])
    expect((await desk.send('DELETE', '/api/sessions')).status).toBe(204)
    expect([await isIn(tablet), await isIn(desk), await isIn(other)]).toEqual([false, true, true])
  })

  it('is named by a hash that signs nobody in', async () => {
    const desk = await world.signIn('member')
    const id = (await listOf(desk))[0]?.id ?? ''
    const thief = await world.visitor().send('GET', '/api/sessions', { headers: { cookie: `driploop=${id}; __Host-driploop=${id}` } })
    expect(thief.status).toBe(401)
  })
})
