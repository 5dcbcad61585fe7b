import { afterAll, beforeAll, expect, it } from 'vitest'
import { firstManagerPath } from '../../api/service/first-link.ts'
import { createWorld, PASSWORD, type World } from './support/world.ts'

let world: World
beforeAll(async () => {
  world = await createWorld()
})
afterAll(() => world.close())

const body = (signInName: string) => ({ name: 'Ines Halberg', signInName, password: PASSWORD })
const tokenOf = (path: unknown): string => String(path).split('/').at(-1) ?? ''

it('makes the first manager once, and a restart replaces the link that nobody used', async () => {
  const first = tokenOf(await firstManagerPath(world.db, Date.now()))
  const second = tokenOf(await firstManagerPath(world.db, Date.now()))
  const visitor = world.visitor()
  expect((await visitor.send('GET', `/api/links/${first}`)).status).toBe(410)
  expect((await visitor.send('GET', `/api/links/${second}`)).body).toEqual({
    purpose: 'first_manager',
    role: 'manager',
    name: null,
    signInName: null,
  })
  const nowhere = await visitor.send<{ errors: Array<{ field: string }> }>('POST', `/api/links/${second}`, {
    body: { ...body('ines'), timeZone: 'Nowhere/Land' },
  })
  expect([nowhere.status, nowhere.body.errors[0]?.field]).toEqual([422, 'timeZone'])
  const made = await visitor.send<{ person: { role: string } }>('POST', `/api/links/${second}`, {
    body: { ...body('ines'), timeZone: 'Pacific/Auckland' },
  })
  expect(made.status).toBe(201)
  expect((await visitor.send('GET', '/api/install')).body['timeZone']).toBe('Pacific/Auckland')
  const trail = await visitor.send<{ items: Array<{ action: string }> }>('GET', '/api/audit')
  expect(trail.body.items.map(({ action }) => action)).toContain('install_changed')
  expect(made.body.person.role).toBe('manager')
  expect((await visitor.send('GET', '/api/people')).status).toBe(200)
  expect((await visitor.send('POST', `/api/links/${second}`, { body: body('other') })).status).toBe(410)
  expect(await firstManagerPath(world.db, Date.now())).toBeNull()
})

it('gives an invited person the role that the manager chose, whatever the body says', async () => {
  const manager = await world.signIn('manager')
  const invited = await manager.send('POST', '/api/people/invitations', { body: { name: 'Ole Brandt', role: 'advisor' } })
  expect(invited.status).toBe(201)
  expect(String(invited.body['url'])).toMatch(/^http:\/\/localhost:8080\/join\/[\w-]{43}$/)
  const token = tokenOf(invited.body['url'])
  const tried = await world.visitor().send('POST', `/api/links/${token}`, { body: { ...body('ole'), role: 'manager' } })
  expect(tried.status).toBe(422)
  const elsewhere = { ...body('ole'), timeZone: 'Asia/Tokyo' }
  const taken = await world.visitor().send<{ person: { role: string } }>('POST', `/api/links/${token}`, { body: elsewhere })
  expect(taken.body.person.role).toBe('advisor')
  expect((await manager.send('GET', '/api/install')).body['timeZone']).not.toBe('Asia/Tokyo')
})

it('is used by exactly one of many who open it at the same moment', async () => {
  const manager = await world.signIn('manager')
  const token = tokenOf((await manager.send('POST', '/api/people/invitations', { body: { name: 'Someone', role: 'member' } })).body['url'])
  const all = await Promise.all(
    Array.from({ length: 6 }, (_, index) => world.visitor().send('POST', `/api/links/${token}`, { body: body(`racer${index}`) })),
  )
  expect(all.map(({ status }) => status).sort()).toEqual([201, 410, 410, 410, 410, 410])
})

it('is still good after a name that was taken', async () => {
  const manager = await world.signIn('manager')
  const token = tokenOf((await manager.send('POST', '/api/people/invitations', { body: { name: 'Someone', role: 'member' } })).body['url'])
  const clash = await world
    .visitor()
    .send<{ errors: Array<{ field: string }> }>('POST', `/api/links/${token}`, { body: body(manager.signInName) })
  expect(clash.status).toBe(422)
  expect(clash.body.errors[0]?.field).toBe('signInName')
  expect((await world.visitor().send('POST', `/api/links/${token}`, { body: body('second.try') })).status).toBe(201)
})

it('expires after seven days', async () => {
  const manager = await world.signIn('manager')
  const token = tokenOf((await manager.send('POST', '/api/people/invitations', { body: { name: 'Late', role: 'member' } })).body['url'])
  const { clock } = world.deps
  world.rebuild({ clock: () => Date.now() + 7 * 86_400_000 + 1000 })
  const late = await world.visitor().send('POST', `/api/links/${token}`, { body: body('late') })
  world.rebuild({ clock })
  expect(late.status).toBe(410)
})

it('refuses a weak password with the field, and stays good', async () => {
  const manager = await world.signIn('manager')
  const token = tokenOf((await manager.send('POST', '/api/people/invitations', { body: { name: 'Weak', role: 'member' } })).body['url'])
  for (const password of ['tiny secret', 'Tarnwick Aquarium Club', 'passwordpassword']) {
    const answer = await world
      .visitor()
      .send<{ errors: Array<{ field: string }> }>('POST', `/api/links/${token}`, { body: { ...body('weak'), password } })
    expect(answer.status, password).toBe(422)
    expect(answer.body.errors[0]?.field).toBe('password')
    expect(answer.text).not.toContain(password)
  }
  expect((await world.visitor().send('GET', `/api/links/${token}`)).status).toBe(200)
})

it('stands nowhere in the database or the log as it was printed', async () => {
  const manager = await world.signIn('manager')
  const token = tokenOf((await manager.send('POST', '/api/people/invitations', { body: { name: 'Hidden', role: 'member' } })).body['url'])
  await world.visitor().send('GET', `/api/links/${token}`)
  expect(JSON.stringify(await world.db.selectFrom('one_use_link').selectAll().execute())).not.toContain(token)
  expect(world.logged.join('')).not.toContain(token)
  expect(world.logged.join('')).toContain('/api/links/…')
})

interface Open {
  items: Array<{ id: string; name: string; role: string; madeBy: string; expiresAt: string }>
}

it('lists an invitation until it is used, without its token, to managers alone', async () => {
  const manager = await world.signIn('manager')
  const made = await manager.send('POST', '/api/people/invitations', { body: { name: 'Wenna Tolley', role: 'advisor' } })
  const listed = await manager.send<Open>('GET', '/api/people/invitations')
  expect(listed.body.items.filter(({ name }) => name === 'Wenna Tolley')).toEqual([
    {
      id: expect.any(String) as string,
      name: 'Wenna Tolley',
      role: 'advisor',
      madeBy: expect.stringMatching(/^Person/) as string,
      expiresAt: made.body['expiresAt'],
    },
  ])
  expect(listed.text).not.toContain(tokenOf(made.body['url']))
  expect((await (await world.signIn('advisor')).send('GET', '/api/people/invitations')).status).toBe(403)
  const visitor = world.visitor()
  expect((await visitor.send('GET', `/api/links/${tokenOf(made.body['url'])}`)).body['name']).toBe('Wenna Tolley')
  expect((await visitor.send('POST', `/api/links/${tokenOf(made.body['url'])}`, { body: body('wenna') })).status).toBe(201)
  expect((await manager.send<Open>('GET', '/api/people/invitations')).body.items.map(({ name }) => name)).not.toContain('Wenna Tolley')
})

it('leads nowhere once it was taken back, which happens once', async () => {
  const manager = await world.signIn('manager')
  const token = tokenOf(
    (await manager.send('POST', '/api/people/invitations', { body: { name: 'Idris Vane', role: 'member' } })).body['url'],
  )
  const invited = (await manager.send<Open>('GET', '/api/people/invitations')).body.items.find(({ name }) => name === 'Idris Vane')
  expect((await (await world.signIn('advisor')).send('DELETE', `/api/people/invitations/${invited?.id}`)).status).toBe(403)
  expect((await manager.send('DELETE', `/api/people/invitations/${invited?.id}`)).status).toBe(204)
  expect((await manager.send('DELETE', `/api/people/invitations/${invited?.id}`)).status).toBe(404)
  expect((await world.visitor().send('GET', `/api/links/${token}`)).status).toBe(410)
})

it('says of a link that names this computer that it works there alone', async () => {
  const manager = await world.signIn('manager')
  const invitation = { body: { name: 'Near By', role: 'member' } }
  expect((await manager.send('POST', '/api/people/invitations', invitation)).body['thisComputerOnly']).toBe(true)
  const { config } = world.deps
  world.rebuild({ config: { ...config, publicUrl: new URL('https://tanks.example.org') } })
  const far = await (await world.signIn('manager')).send('POST', '/api/people/invitations', invitation)
  world.rebuild({ config })
  expect(far.body).toMatchObject({
    thisComputerOnly: false,
    url: expect.stringMatching(/^https:\/\/tanks\.example\.org\/join\//) as string,
  })
})
