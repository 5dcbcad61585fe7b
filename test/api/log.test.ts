import { Writable } from 'node:stream'
import { pino } from 'pino'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { loggable } from '../../api/http/log.ts'
import { draftOf, issue, newQuote, stockedShop } from './support/quotes.ts'
import { createWorld, PASSWORD, type World } from './support/world.ts'

let world: World
beforeAll(async () => {
  world = await createWorld()
})
afterAll(() => world.close())

const REACH = 'ada.lindqvare@example.org'
const ADDRESS = '198.51.100.23'

it('has a line a request with its id, and nothing of a person: no name, mail, password, address, cookie or token', async () => {
  const manager = await world.signIn('manager')
  const member = await world.signIn('member')
  const customer = await manager.send<{ id: string; name: string }>('POST', '/api/customers', {
    body: { name: 'Ada Lindqvare', reach: REACH, note: 'rings in the evening' },
  })
  const shop = await stockedShop(world, member)
  const draft = await newQuote(manager, draftOf(shop))
  const quote = (await issue(manager, draft)).body
  const token = /\/q\/([\w.-]+)/.exec(JSON.stringify(quote))?.[1] ?? ''
  expect(token.length).toBeGreaterThan(20)
  const invitation = (
    await manager.send<{ url: string }>('POST', '/api/people/invitations', { body: { name: 'Bram Ottesen', role: 'member' } })
  ).body
  const joinToken = invitation.url.split('/').at(-1) ?? ''
  const stranger = world.visitor(ADDRESS)
  for (const path of [`/q/${token}`, `/q/${token}/pdf`, `/api/quote-links/${token}`, `/join/${joinToken}`, `/api/links/${joinToken}`])
    await stranger.send('GET', path, {
      headers: { 'user-agent': 'telephone of Ada', 'x-forwarded-for': ADDRESS, referer: `https://example.org/?${REACH}` },
    })
  await stranger.send('GET', `/api/customers?q=${encodeURIComponent('Ada Lindqvare')}`)
  await stranger.send('POST', '/api/session', { body: { signInName: 'ada.lindqvare', password: 'a wrong password for Ada' } })
  await stranger.send('POST', '/api/session', { body: '{"signInName": "ada.lindqvare", "password": ' })
  await manager.send('POST', '/api/customers', { body: { name: 'Ada Lindqvare', reach: 7, note: REACH } })
  await manager.send('POST', '/api/backups', { body: { password: PASSWORD, passphrase: 'tide pool ferry lantern' } })

  const lines = world.logged.map((line) => JSON.parse(line) as Record<string, unknown>)
  const answered = lines.filter(({ msg }) => msg === 'answered')
  expect(answered.length).toBeGreaterThan(14)
  expect(new Set(answered.map(({ requestId }) => requestId)).size).toBe(answered.length)
  for (const line of answered)
    expect(line).toMatchObject({ method: expect.any(String), path: expect.any(String), status: expect.any(Number), ms: expect.any(Number) })
  const text = world.logged.join('')
  const personal = [
    'Lindqvare', 'lindqvare', 'Ottesen', REACH, '@', ADDRESS, '192.0.2.1', PASSWORD, 'wrong password', 'tide pool', 'telephone', 'rings',
    manager.signInName, member.signInName, manager.cookie().split('=')[1] ?? 'no cookie', token, joinToken, customer.body.name,
  ] // prettier-ignore
  expect(personal.filter((one) => text.includes(one))).toEqual([])
  // The kind of link stays, so that a fault can be found.
  expect(text).toContain('"/q/…/pdf"')
})

it('keeps of a failing statement its code and place, and neither its values nor its row', async () => {
  const written: string[] = []
  const log = pino({ base: null }, new Writable({ write: (chunk: Buffer, _encoding, done) => (written.push(chunk.toString()), done()) }))
  const failure = await world.db
    .insertInto('person')
    .values({ name: 'x'.repeat(121), sign_in_name: 'ada.lindqvare', role: 'member', password_hash: 'the hash of a password' })
    .execute()
    .catch((error: unknown) => error)
  log.error({ err: loggable(failure) }, 'failed')
  expect(written.join('')).toContain('person_name_length')
  for (const value of ['ada.lindqvare', 'the hash of a password', 'xxx']) expect(written.join('')).not.toContain(value)
})
