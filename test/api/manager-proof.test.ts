import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { Role } from '../../core/people/roles.ts'
import { createWorld, PASSWORD, type Answer, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
})
beforeEach(async () => {
  manager = await world.signIn('manager')
})
afterAll(() => world.close())

const prove = (by = manager, password = PASSWORD): Promise<Answer> => by.send('POST', '/api/session/proof', { body: { password } })
const personOf = (id: string) => world.db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirstOrThrow()
async function change(id: string, body: { role?: Role; disabled?: boolean }, by = manager): Promise<Answer> {
  return by.send('PATCH', `/api/people/${id}`, { body, headers: { 'if-match': `"${(await personOf(id)).version}"` } })
}
const invite = (role: Role): Promise<Answer> => manager.send('POST', '/api/people/invitations', { body: { name: 'Ole Brandt', role } })
const NEEDED = { status: 403, body: { type: '/api/reference#password_needed' } }

/** What gives or takes the power of a manager: each needs the proof. */
const ACTS: Array<[string, () => Promise<Answer>]> = [
  ['making a manager', async () => change((await world.signIn('member')).personId, { role: 'manager' })],
  ['unmaking a manager', async () => change((await world.signIn('manager')).personId, { role: 'advisor' })],
  ['unmaking oneself', () => change(manager.personId, { role: 'advisor' })],
  ['disabling a manager', async () => change((await world.signIn('manager')).personId, { disabled: true })],
  [
    'letting a manager in again',
    async () => {
      const { personId } = await world.signIn('manager')
      await world.db.updateTable('person').set({ disabled_at: new Date() }).where('id', '=', personId).execute()
      return change(personId, { disabled: false })
    },
  ],
  ['making a manager of somebody disabled', async () => {
      const { personId } = await world.signIn('member')
      await world.db.updateTable('person').set({ disabled_at: new Date() }).where('id', '=', personId).execute()
      return change(personId, { role: 'manager' })
    }], // prettier-ignore
  [
    'a link for a manager’s password',
    async () => manager.send('POST', `/api/people/${(await world.signIn('manager')).personId}/password-link`),
  ],
  ['inviting a manager', () => invite('manager')],
]

describe('what gives or takes the power of a manager', () => {
  it.each(ACTS)('is done with the own password given again, and not without: %s', async (_what, act) => {
    const links = () => world.db.selectFrom('one_use_link').select('token_hash').execute()
    const [before, trail] = [(await links()).length, (await world.db.selectFrom('audit_entry').select('id').execute()).length]
    expect(await act()).toMatchObject(NEEDED)
    expect((await links()).length).toBe(before)
    expect(await world.db.selectFrom('audit_entry').select('id').execute()).toHaveLength(trail)
    expect((await prove()).status).toBe(204)
    expect((await act()).status).toBeLessThan(300)
  })

  it('changes nothing where it is refused: role, sessions and version stay', async () => {
    const other = await world.signIn('manager')
    const before = await personOf(other.personId)
    for (const body of [{ role: 'member' }, { disabled: true }, { role: 'member', disabled: true }] as const)
      expect(await change(other.personId, body)).toMatchObject(NEEDED)
    expect(await personOf(other.personId)).toEqual(before)
    expect((await other.send('GET', '/api/people')).status).toBe(200)
  })

  it.each([
    ['the role between member and advisor', async () => change((await world.signIn('member')).personId, { role: 'advisor' })],
    ['disabling a member', async () => change((await world.signIn('member')).personId, { disabled: true })],
    ['a manager’s role said again', async () => change((await world.signIn('manager')).personId, { role: 'manager' })],
    ['a link for a member', async () => manager.send('POST', `/api/people/${(await world.signIn('member')).personId}/password-link`)],
    ['inviting an advisor', () => invite('advisor')],
  ] as Array<[string, () => Promise<Answer>]>)('is none of these: %s', async (_what, act) => {
    expect((await act()).status).toBeLessThan(300)
  })
})

describe('the proof', () => {
  it('holds for ten minutes, and no longer', async () => {
    const { clock } = world.deps
    const at = Date.now()
    world.rebuild({ clock: () => at })
    expect((await prove()).status).toBe(204)
    world.rebuild({ clock: () => at + 10 * 60_000 - 1_000 })
    expect((await invite('manager')).status).toBe(201)
    world.rebuild({ clock: () => at + 10 * 60_000 + 1_000 })
    expect(await invite('manager')).toMatchObject(NEEDED)
    world.rebuild({ clock })
  })

  it('is of this session alone, and a sign-in is none', async () => {
    expect((await prove()).status).toBe(204)
    const phone = world.visitor()
    expect((await phone.send('POST', '/api/session', { body: { signInName: manager.signInName, password: PASSWORD } })).status).toBe(200)
    const sent = await phone.send('POST', '/api/people/invitations', { body: { name: 'Ole Brandt', role: 'manager' } })
    expect(sent).toMatchObject(NEEDED)
    expect((await invite('manager')).status).toBe(201)
  })

  it('is refused with a wrong password, and wrong ones lock it and the sign-in as failed sign-ins do', async () => {
    for (let tries = 0; tries < 5; tries += 1)
      expect(await prove(manager, 'not the password at all')).toMatchObject({ status: 422, body: { errors: [{ field: 'password' }] } })
    const locked = await prove()
    expect([locked.status, locked.headers.get('retry-after')]).toEqual([429, '900'])
    const signedIn = await world.visitor().send('POST', '/api/session', { body: { signInName: manager.signInName, password: PASSWORD } })
    expect(signedIn.status).toBe(429)
    expect(await invite('manager')).toMatchObject(NEEDED)
  })

  it('is nobody’s but a manager’s', async () => {
    for (const role of ['member', 'advisor'] as const) expect((await prove(await world.signIn(role))).status).toBe(403)
    expect((await prove(world.visitor())).status).toBe(401)
  })
})
