import { afterEach, beforeEach, expect, it } from 'vitest'
import { createWorld, type World } from './support/world.ts'

let world: World
let nowMs = Date.now()
beforeEach(async () => {
  world = await createWorld({ clock: () => nowMs })
})
afterEach(() => world.close())

it('is reckoned sixty times a minute for one person, and no other waits for it', async () => {
  const [busy, other] = [await world.signIn('member'), await world.signIn('member')]
  const ask = (who: typeof busy) => who.send('POST', '/api/sizing', { body: { gear: {}, livestockId: 'small-tropical' } })
  for (let i = 0; i < 60; i++) expect((await ask(busy)).status).toBe(200)
  const refused = await ask(busy)
  expect([refused.status, refused.headers.get('retry-after')]).toEqual([429, '60'])
  expect((await ask(other)).status).toBe(200)
  nowMs += 60_000
  expect((await ask(busy)).status).toBe(200)
})
