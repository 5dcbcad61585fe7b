import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readConfig } from '../../api/config.ts'
import { networkOf } from '../../api/auth/network.ts'
import { findPersonBySignIn } from '../../db/people.ts'
import { createWorld, PASSWORD, type World } from './support/world.ts'

let world: World
beforeAll(async () => {
  world = await createWorld()
})
afterAll(() => world.close())

const DAY_MS = 86_400_000
/** Lets time pass for everything stored: moving each instant back is the same as moving the clock on, and the runner's own clock stays right. */
async function later(days: number): Promise<void> {
  const back = (at: Date): Date => new Date(at.getTime() - days * DAY_MS)
  for (const row of await world.db.selectFrom('session').selectAll().execute()) {
    const moved = { created_at: back(row.created_at), expires_at: back(row.expires_at), last_seen_at: back(row.last_seen_at) }
    await world.db.updateTable('session').set(moved).where('id_hash', '=', row.id_hash).execute()
  }
  for (const row of await world.db.selectFrom('sign_in_attempt').selectAll().execute()) {
    await world.db
      .updateTable('sign_in_attempt')
      .set({ at: back(row.at) })
      .where('id', '=', row.id)
      .execute()
  }
}
const session = (body: Record<string, unknown>): unknown => body['person']

describe('signing in', () => {
  it('says who is signed in, and nobody before', async () => {
    expect(session((await world.visitor().send('GET', '/api/session')).body)).toBeNull()
    const member = await world.signIn('member')
    expect(session((await member.send('GET', '/api/session')).body)).toMatchObject({ id: member.personId, role: 'member' })
  })

  it('takes the name without regard to case and the password with it', async () => {
    const member = await world.signIn('member')
    const visitor = world.visitor('192.0.2.2')
    expect(
      (await visitor.send('POST', '/api/session', { body: { signInName: member.signInName.toUpperCase(), password: PASSWORD } })).status,
    ).toBe(200)
    expect(
      (await visitor.send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD.toUpperCase() } })).status,
    ).toBe(401)
  })

  it('answers an unknown name and a wrong password alike', async () => {
    const member = await world.signIn('member')
    const visitor = world.visitor('192.0.2.3')
    const wrong = await visitor.send('POST', '/api/session', { body: { signInName: member.signInName, password: 'not the password' } })
    const unknown = await visitor.send('POST', '/api/session', { body: { signInName: 'nobody.here', password: 'not the password' } })
    expect({ ...unknown.body, requestId: '' }).toEqual({ ...wrong.body, requestId: '' })
    expect(unknown.status).toBe(401)
  })

  it('takes as long for an unknown name as for a wrong password', async () => {
    const member = await world.signIn('member')
    const timeOf = async (signInName: string, round: number): Promise<number> => {
      const started = performance.now()
      await world.visitor(`198.51.100.${round}`).send('POST', '/api/session', { body: { signInName, password: 'not the password' } })
      return performance.now() - started
    }
    const times: { known: number[]; unknown: number[] } = { known: [], unknown: [] }
    for (let round = 0; round < 7; round += 1) {
      times.known.push(await timeOf(member.signInName, round))
      times.unknown.push(await timeOf('nobody.at.all', round + 50))
    }
    const middle = (all: number[]): number => all.sort((a, b) => a - b)[3]!
    // Without the decoy an unknown name answers about twenty times sooner.
    expect(middle(times.unknown)).toBeGreaterThan(middle(times.known) * 0.5)
  })

  it('sets a cookie that no script reads, that stays on this site, under the host prefix on https', async () => {
    const member = await world.signIn('member')
    const plain = await world
      .visitor('192.0.2.4')
      .send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    expect(plain.headers.get('set-cookie')).toMatch(/^driploop=\w+; Max-Age=\d+; Path=\/; HttpOnly; SameSite=Lax$/)
    const { config } = world.deps
    world.rebuild({ config: readConfig({ PUBLIC_URL: 'https://tanks.example.org' }) })
    const secure = await world
      .visitor('192.0.2.4')
      .send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    world.rebuild({ config })
    expect(secure.headers.get('set-cookie')).toMatch(/^__Host-driploop=\w+; Max-Age=\d+; Path=\/; HttpOnly; Secure; SameSite=Lax$/)
  })

  it('refuses on plain http outside this computer, and says what to do', async () => {
    const answer = await world
      .visitor()
      .send('POST', 'http://192.168.1.20:8080/api/session', { body: { signInName: 'anyone', password: PASSWORD } })
    expect(answer.status).toBe(403)
    expect(answer.body['detail']).toContain('PUBLIC_URL')
  })

  it('makes a new session at every sign-in and ends the one before', async () => {
    const member = await world.signIn('member')
    const before = member.cookie()
    await member.send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    expect(member.cookie()).not.toBe(before)
    const old = await world.visitor().send('GET', '/api/session', { headers: { cookie: before } })
    expect(session(old.body)).toBeNull()
    expect(session((await member.send('GET', '/api/session')).body)).not.toBeNull()
  })

  it('never takes a session id that a visitor brought along', async () => {
    const member = await world.signIn('member')
    const planted = 'driploop=planted0planted0planted0planted0planted0'
    const visitor = world.visitor('192.0.2.5')
    await visitor.send('POST', '/api/session', {
      body: { signInName: member.signInName, password: PASSWORD },
      headers: { cookie: planted },
    })
    expect(visitor.cookie()).not.toBe(planted)
    expect(session((await world.visitor().send('GET', '/api/session', { headers: { cookie: planted } })).body)).toBeNull()
  })

  it('keeps no usable session id in the database', async () => {
    const member = await world.signIn('member')
    const id = member.cookie().split('=')[1]!
    const rows = await world.db.selectFrom('session').selectAll().execute()
    expect(rows.length).toBeGreaterThan(0)
    expect(JSON.stringify(rows)).not.toContain(id)
  })

  it('hashes the password anew where the stored hash was made at a lower cost', async () => {
    const member = await world.signIn('member')
    // argon2id of PASSWORD with m=8192, t=1, p=1, made with node:crypto.
    const { argon2Sync } = await import('node:crypto')
    const salt = Buffer.alloc(16, 7)
    const key = argon2Sync('argon2id', { message: PASSWORD, nonce: salt, memory: 8192, passes: 1, parallelism: 1, tagLength: 32 })
    const bare = (bytes: Buffer): string => bytes.toString('base64').replace(/=+$/, '')
    await world.db
      .updateTable('person')
      .set({ password_hash: `$argon2id$v=19$m=8192,t=1,p=1$${bare(salt)}$${bare(key)}` })
      .where('id', '=', member.personId)
      .execute()
    await world.visitor('192.0.2.6').send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    expect((await findPersonBySignIn(world.db, member.signInName))?.passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
  })
})

describe('the end of a session', () => {
  it('comes with signing out, which clears the cache and nothing else', async () => {
    const member = await world.signIn('member')
    const before = member.cookie()
    const answer = await member.send('DELETE', '/api/session')
    expect(answer.status).toBe(204)
    expect(answer.headers.get('clear-site-data')).toBe('"cache"')
    expect(session((await world.visitor().send('GET', '/api/session', { headers: { cookie: before } })).body)).toBeNull()
  })

  it('comes after 90 days without use', async () => {
    const member = await world.signIn('member')
    await later(89)
    const kept = await world.signIn('member')
    await later(2)
    expect((await member.send('GET', '/api/board')).status).toBe(401)
    expect((await kept.send('GET', '/api/board')).status).toBe(200)
  })

  it('comes after 180 days however often it was used', async () => {
    const member = await world.signIn('member')
    for (let days = 0; days < 175; days += 35) {
      await later(35)
      expect((await member.send('GET', '/api/board')).status, `after ${days + 35} days`).toBe(200)
    }
    await later(6)
    expect((await member.send('GET', '/api/board')).status).toBe(401)
  })

  it('is put off by sending the cookie again, never past the 180 days', async () => {
    const member = await world.signIn('member')
    await later(50)
    const renewed = await member.send('GET', '/api/board')
    expect(Number(/Max-Age=(\d+)/.exec(renewed.headers.get('set-cookie') ?? '')?.[1])).toBeGreaterThan(90 * 86_400 - 60)
    await later(60)
    const clamped = await member.send('GET', '/api/board')
    expect(Number(/Max-Age=(\d+)/.exec(clamped.headers.get('set-cookie') ?? '')?.[1])).toBeLessThanOrEqual(70 * 86_400)
  })

  it('comes for every session of a person at once when the password changes, but for the new one', async () => {
    const member = await world.signIn('member')
    const phone = world.visitor('192.0.2.7')
    await phone.send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    const changed = await member.send('PUT', '/api/session/password', {
      body: { current: PASSWORD, password: 'a quite different sentence' },
    })
    expect(changed.status).toBe(204)
    expect((await phone.send('GET', '/api/board')).status).toBe(401)
    expect((await member.send('GET', '/api/board')).status).toBe(200)
    expect((await phone.send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })).status).toBe(401)
  })

  it('comes at once when a manager disables the person or changes the role', async () => {
    const manager = await world.signIn('manager')
    for (const change of [{ role: 'advisor' }, { disabled: true }]) {
      const member = await world.signIn('member')
      const answer = await manager.send('PATCH', `/api/people/${member.personId}`, { body: change, headers: { 'if-match': '"1"' } })
      expect(answer.status, answer.text).toBe(200)
      expect((await member.send('GET', '/api/board')).status).toBe(401)
    }
  })

  it('leaves a disabled person out', async () => {
    const manager = await world.signIn('manager')
    const member = await world.signIn('member')
    await manager.send('PATCH', `/api/people/${member.personId}`, { body: { disabled: true }, headers: { 'if-match': '"1"' } })
    const again = await world
      .visitor('192.0.2.8')
      .send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    expect(again.status).toBe(401)
  })
})

describe('a sign-in that races a change of password', () => {
  it('with the old password leaves no session behind', async () => {
    const member = await world.signIn('member')
    const enter = (n: number) =>
      world.visitor(`198.51.100.${100 + n}`).send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    const change = member.send('PUT', '/api/session/password', { body: { current: PASSWORD, password: 'a quite different sentence' } })
    await Promise.all([change, ...Array.from({ length: 12 }, (_, n) => enter(n))])
    expect((await change).status).toBe(204)
    const rows = await world.db.selectFrom('session').select('id_hash').where('person_id', '=', member.personId).execute()
    expect(rows).toHaveLength(1)
  })
})

describe('too many tries', () => {
  const tries = (times: number, address: string, signInName: string) =>
    Array.from({ length: times }).reduce<Promise<number[]>>(async (before, _none) => {
      const done = await before
      const answer = await world.visitor(address).send('POST', '/api/session', { body: { signInName, password: 'a wrong password' } })
      return [...done, answer.status]
    }, Promise.resolve([]))

  it('are refused after five for one account from one address, with the wait', async () => {
    const member = await world.signIn('member')
    expect(await tries(5, '203.0.113.1', member.signInName)).toEqual([401, 401, 401, 401, 401])
    const refused = await world
      .visitor('203.0.113.1')
      .send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    expect(refused.status).toBe(429)
    expect(Number(refused.headers.get('retry-after'))).toBe(900)
  })

  it('do not lock the person out elsewhere', async () => {
    const member = await world.signIn('member')
    await tries(6, '203.0.113.2', member.signInName)
    const elsewhere = await world
      .visitor('203.0.113.3')
      .send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    expect(elsewhere.status).toBe(200)
  })

  it('are forgotten after a quarter of an hour', async () => {
    const member = await world.signIn('member')
    expect((await tries(6, '203.0.113.4', member.signInName)).at(-1)).toBe(429)
    await later(1 / 90)
    const answer = await world
      .visitor('203.0.113.4')
      .send('POST', '/api/session', { body: { signInName: member.signInName, password: PASSWORD } })
    expect(answer.status).toBe(200)
  })

  it('are counted over all names of one address', async () => {
    const statuses = []
    for (let name = 0; name < 52; name += 1) statuses.push(...(await tries(1, '203.0.113.5', `guess.${name}`)))
    expect(statuses.slice(0, 50).every((status) => status === 401)).toBe(true)
    expect(statuses.slice(50)).toEqual([429, 429])
  })

  it('count when they come at the same moment: never more than five are looked at', async () => {
    const member = await world.signIn('member')
    const guess = () =>
      world
        .visitor('203.0.113.6')
        .send('POST', '/api/session', { body: { signInName: member.signInName, password: 'a wrong password' } })
        .then(({ status }) => status)
    const all = await Promise.all(Array.from({ length: 100 }, guess))
    const looked = all.filter((status) => status === 401).length
    expect(looked).toBeLessThanOrEqual(5)
    expect(all.filter((status) => status === 429)).toHaveLength(100 - looked)
    for (let left = 5 - looked; left > 0; left -= 1) expect(await guess()).toBe(401)
    expect(await guess()).toBe(429)
  })

  it('do not come from those who get it right: a whole club behind one address signs in', async () => {
    const member = await world.signIn('member')
    const enter = (password: string) =>
      world.visitor('203.0.113.8').send('POST', '/api/session', { body: { signInName: member.signInName, password } })
    for (let time = 0; time < 60; time += 1) expect((await enter(PASSWORD)).status, `sign-in ${time + 1}`).toBe(200)
    // Right ones take only themselves back: what was guessed at from there still counts.
    expect((await tries(50, '203.0.113.8', 'nobody.there')).filter((status) => status === 401)).toHaveLength(5)
  })

  it('are counted for a whole IPv6 network, whose owner has every address in it', async () => {
    const member = await world.signIn('member')
    for (let host = 1; host <= 5; host += 1) expect(await tries(1, `2001:db8:1:2::${host}`, member.signInName)).toEqual([401])
    expect(await tries(1, '2001:db8:1:2:ffff::1', member.signInName)).toEqual([429])
    expect(await tries(1, '2001:db8:1:3::1', member.signInName)).toEqual([401])
  })

  it('keep neither names nor addresses', async () => {
    await tries(1, '203.0.113.77', 'some.secret.name')
    const rows = JSON.stringify(await world.db.selectFrom('sign_in_attempt').selectAll().execute())
    expect(rows).not.toContain('203.0.113.77')
    expect(rows).not.toContain('some.secret.name')
  })
})

describe('the network of an address', () => {
  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['unknown', 'unknown'],
    ['2001:db8::7', '2001:db8:0:0::/64'],
    ['2001:0DB8:0:0:1:2:3:4', '2001:db8:0:0::/64'],
    ['::1', '0:0:0:0::/64'],
    ['::', '0:0:0:0::/64'],
    ['1:2:3:4:5:6:7::', '1:2:3:4::/64'],
    ['fe80::1%eth0', 'fe80:0:0:0::/64'],
    ['64:ff9b::192.0.2.33', '64:ff9b:0:0::/64'],
  ])('of %s is %s', (address, network) => {
    expect(networkOf(address)).toBe(network)
  })
})
