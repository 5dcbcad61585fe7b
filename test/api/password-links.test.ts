import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { managerLink } from '../../api/service/manager-link.ts'
import { createWorld, PASSWORD, type Answer, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterAll(() => world.close())

const NEW_PASSWORD = 'moss compass ladder 81'
const tokenOf = (url: unknown): string => String(url).split('/').at(-1) ?? ''
const make = (personId: string, by = manager): Promise<Answer> => by.send('POST', `/api/people/${personId}/password-link`)
const use = (token: string, password = NEW_PASSWORD, by = world.visitor()): Promise<Answer<{ person?: { id: string } }>> =>
  by.send('PUT', `/api/links/${token}/password`, { body: { password } })
const signIn = (signInName: string, password: string): Promise<Answer> =>
  world.visitor().send('POST', '/api/session', { body: { signInName, password } })
const versionOf = async (personId: string): Promise<string> =>
  `"${(await world.db.selectFrom('person').select('version').where('id', '=', personId).executeTakeFirstOrThrow()).version}"`
const change = async (personId: string, body: object): Promise<Answer> =>
  manager.send('PATCH', `/api/people/${personId}`, { body, headers: { 'if-match': await versionOf(personId) } })

describe('a link that sets a new password', () => {
  it('says whose it is, sets it once, ends every session of that person and signs in', async () => {
    const member = await world.signIn('member')
    const token = tokenOf((await make(member.personId)).body['url'])
    expect((await world.visitor().send('GET', `/api/links/${token}`)).body).toMatchObject({
      purpose: 'new_password',
      signInName: member.signInName,
    })
    const visitor = world.visitor()
    const used = await use(token, NEW_PASSWORD, visitor)
    expect(used.status, used.text).toBe(200)
    expect(used.body.person?.id).toBe(member.personId)
    expect((await visitor.send('GET', '/api/sessions')).status).toBe(200)
    expect((await member.send('GET', '/api/sessions')).status).toBe(401)
    expect((await signIn(member.signInName, PASSWORD)).status).toBe(401)
    expect((await signIn(member.signInName, NEW_PASSWORD)).status).toBe(200)
    expect((await use(token)).status).toBe(410)
  })

  it('of many who use it at the same moment is used by one', async () => {
    const member = await world.signIn('member')
    const token = tokenOf((await make(member.personId)).body['url'])
    const all = await Promise.all([1, 2, 3, 4].map((n) => use(token, `${NEW_PASSWORD} ${n}`)))
    expect(all.map(({ status }) => status).toSorted()).toEqual([200, 410, 410, 410])
  })

  it('is good for 24 hours, and until the next one is made', async () => {
    const member = await world.signIn('member')
    const first = tokenOf((await make(member.personId)).body['url'])
    const second = tokenOf((await make(member.personId)).body['url'])
    expect((await use(first)).status).toBe(410)
    const { clock } = world.deps
    world.rebuild({ clock: () => Date.now() + 24 * 3_600_000 + 1000 })
    const late = await use(second)
    world.rebuild({ clock })
    expect(late.status).toBe(410)
    expect((await use(second)).status).toBe(200)
  })

  it('is made by managers, and for anybody but oneself', async () => {
    const member = await world.signIn('member')
    expect((await make(member.personId, await world.signIn('advisor'))).status).toBe(403)
    const own = await make(manager.personId)
    expect(own.status).toBe(409)
    expect(String(own.body['detail'])).toContain('under your account')
    const second = await world.signIn('manager')
    expect((await make(second.personId)).status).toBe(403)
    await manager.send('POST', '/api/session/proof', { body: { password: PASSWORD } })
    expect((await make(second.personId)).status).toBe(201)
  })

  it('is refused for a weak password, and stays good', async () => {
    const member = await world.signIn('member')
    const token = tokenOf((await make(member.personId)).body['url'])
    const weak = await use(token, 'tiny')
    expect(weak.status).toBe(422)
    expect(weak.text).not.toContain('tiny"')
    expect((await use(token)).status).toBe(200)
  })

  it('ends with the disabling of its person or of the manager who made it, and with a password that was changed', async () => {
    const [disabled, changed, orphan] = [await world.signIn('member'), await world.signIn('member'), await world.signIn('member')]
    const second = await world.signIn('manager')
    const tokens = [
      tokenOf((await make(disabled.personId)).body['url']),
      tokenOf((await make(changed.personId)).body['url']),
      tokenOf((await make(orphan.personId, second)).body['url']),
    ]
    expect((await change(disabled.personId, { disabled: true })).status).toBe(200)
    expect((await make(disabled.personId)).status).toBe(409)
    expect((await change(disabled.personId, { disabled: false })).status).toBe(200)
    const put = await changed.send('PUT', '/api/session/password', { body: { current: PASSWORD, password: NEW_PASSWORD } })
    expect(put.status, put.text).toBe(204)
    expect((await change(second.personId, { disabled: true })).status).toBe(200)
    for (const token of tokens) expect((await use(token)).status).toBe(410)
  })

  it('makes no account, as an invitation sets no password', async () => {
    const member = await world.signIn('member')
    const token = tokenOf((await make(member.personId)).body['url'])
    const joined = await world
      .visitor()
      .send('POST', `/api/links/${token}`, { body: { name: 'A', signInName: 'ab', password: NEW_PASSWORD } })
    expect(joined.status).toBe(410)
    const invited = await manager.send('POST', '/api/people/invitations', { body: { name: 'Ole Brandt', role: 'member' } })
    expect((await use(tokenOf(invited.body['url']))).status).toBe(410)
  })

  it('leaves no usable token in the database', async () => {
    const member = await world.signIn('member')
    const token = tokenOf((await make(member.personId)).body['url'])
    const session = /=([^;]+)/.exec(member.cookie())?.[1] ?? 'no cookie'
    const tables = await world.db.introspection.getTables()
    for (const { name } of tables) {
      const rows = await world.db
        .selectFrom(name as 'person')
        .selectAll()
        .execute()
      const dump = JSON.stringify(rows)
      for (const secret of [token, session, PASSWORD]) expect(dump.includes(secret), `${name} holds a secret as it is`).toBe(false)
    }
    expect(tables.length).toBeGreaterThan(15)
    expect((await use(token)).status).toBe(200)
  })
})

describe('a link from the console', () => {
  it('is for the one manager, or the one who is named', async () => {
    const own = await createWorld()
    try {
      expect(await managerLink(own.db, undefined, Date.now())).toMatchObject({
        ok: false,
        words: expect.stringContaining('Start the service'),
      })
      const first = await own.signIn('manager')
      const made = await managerLink(own.db, undefined, Date.now())
      if (!made.ok) throw new Error(made.words)
      expect(made.signInName).toBe(first.signInName)
      const used = await own.visitor().send('PUT', `/api/links/${tokenOf(made.path)}/password`, { body: { password: NEW_PASSWORD } })
      expect(used.status, used.text).toBe(200)
      const second = await own.signIn('manager')
      const several = await managerLink(own.db, undefined, Date.now())
      expect(several).toMatchObject({ ok: false, words: expect.stringContaining(second.signInName) })
      expect(await managerLink(own.db, second.signInName.toUpperCase(), Date.now())).toMatchObject({
        ok: true,
        signInName: second.signInName,
      })
      const advisor = await own.signIn('advisor')
      expect(await managerLink(own.db, advisor.signInName, Date.now())).toMatchObject({ ok: false })
    } finally {
      await own.close()
    }
  })
})
