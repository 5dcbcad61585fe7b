import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { HearingView } from '../../api/answers/hearing.ts'
import { redacted } from '../../api/http/log.ts'
import { vapidKeyOf } from '../../api/push/vapid-key.ts'
import { MOST_DEVICES } from '../../db/push-devices.ts'
import { stopUrlOf } from '../../api/mail/stop-link.ts'
import { findPersonMail } from '../../db/person-mail.ts'
import { hearingWorld, linkIn, newSubscriber, SITE, type HearingWorld } from './support/hearing.ts'
import { createWorld, type Answer, type Browser } from './support/world.ts'

let world: HearingWorld
let ida: Browser
beforeAll(async () => {
  world = await hearingWorld()
})
afterAll(() => world.close())
beforeEach(async () => {
  world.box.received.length = 0
  world.box.refuse(null)
  ida = await world.signIn('member')
  ownAddress = `${randomUUID()}@post.example`
})

const FORM = { 'content-type': 'application/x-www-form-urlencoded' }
let ownAddress = ''
const hearing = async (browser = ida): Promise<HearingView> => (await browser.send<HearingView>('GET', `${SITE}/api/hearing`)).body
const give = (address = ownAddress, browser = ida): Promise<Answer> =>
  browser.send('PUT', `${SITE}/api/hearing/mail`, { body: { address } })
const open = (path: string): Promise<Answer> => world.visitor().send('GET', SITE + path)
const press = (path: string, body = ''): Promise<Answer> => world.visitor().send('POST', SITE + path, { body, headers: FORM })
/** The link that a letter of now ends with. */
async function stopLink(linkKey = world.deps.linkKey): Promise<string> {
  const own = await findPersonMail(world.db, ida.personId)
  if (!own) throw new Error('no address')
  const mail = { personId: ida.personId, address: own.address, confirmedAt: own.confirmedAt ?? new Date(world.deps.clock()) }
  return stopUrlOf(SITE, linkKey, mail).slice(SITE.length)
}
const lastLetter = (): string => world.box.received.at(-1)?.raw ?? ''

describe('an address of one’s own', () => {
  it('is written to once, to ask, and holds good when its link was opened and pressed', async () => {
    expect((await hearing()).mail).toEqual({ address: null, confirmed: false, failingSince: null })
    const given = await give()
    expect(given.status, given.text).toBe(200)
    expect(world.box.received.map(({ to }) => to)).toEqual([[ownAddress]])
    const path = linkIn(lastLetter(), 'confirm')
    // Programs that look through mail open every link: opening confirms nothing.
    const page = await open(path)
    expect([page.status, page.text.includes(ownAddress)]).toEqual([200, true])
    expect((await hearing()).mail).toMatchObject({ address: ownAddress, confirmed: false })
    expect((await press(path)).text).toContain('Your address is confirmed')
    expect((await hearing()).mail).toMatchObject({ address: ownAddress, confirmed: true })
    expect([(await press(path)).status, (await open(path)).status], 'one use').toEqual([410, 410])
  })

  it('names nobody to whom the mail may have gone astray, and leaves no token in the database or the log', async () => {
    await give()
    expect(lastLetter()).not.toContain(ida.signInName)
    const token = linkIn(lastLetter(), 'confirm').split('/').at(-1) ?? 'none'
    await open(`/m/confirm/${token}`)
    const kept = JSON.stringify(await world.db.selectFrom('person_mail').selectAll().execute())
    expect([kept.includes(token), world.logged.join('').includes(token), world.logged.join('').includes(ownAddress)]).toEqual([
      false,
      false,
      false,
    ])
    expect(redacted(`/m/stop/${token}`)).toBe('/m/stop/…')
  })

  it('is another from its change on: the link of before ends, and nothing is confirmed', async () => {
    await give()
    const before = linkIn(lastLetter(), 'confirm')
    await press(before)
    await give('ida@other.example')
    const second = linkIn(lastLetter(), 'confirm')
    expect((await hearing()).mail).toMatchObject({ address: 'ida@other.example', confirmed: false })
    await give('ida@third.example')
    expect((await press(second)).status).toBe(410)
    expect((await hearing()).mail).toMatchObject({ address: 'ida@third.example', confirmed: false })
  })

  it('is not confirmed after two days, nor by a person who was disabled', async () => {
    await give()
    const path = linkIn(lastLetter(), 'confirm')
    await world.db.updateTable('person').set({ disabled_at: new Date() }).where('id', '=', ida.personId).execute()
    expect((await press(path)).status).toBe(410)
    await world.db.updateTable('person').set({ disabled_at: null }).where('id', '=', ida.personId).execute()
    world.later(2 * 86_400_000 + 1_000)
    expect((await press(path)).status).toBe(410)
  })

  it('is refused in words where it is none, and asked for five times an hour at the most', async () => {
    const refused = await give(`Ida <${ownAddress}>`)
    expect(refused.status).toBe(422)
    expect(refused.text).toContain('one address and nothing else')
    for (let times = 0; times < 5; times += 1) expect((await give()).status).toBe(200)
    const tooMany = await give()
    expect([tooMany.status, Number(tooMany.headers.get('retry-after')) > 0]).toEqual([429, true])
    expect(world.box.received).toHaveLength(5)
    world.later(3_600_001)
    expect((await give()).status).toBe(200)
  })

  it('of a stranger is written to six times a day at the most, whoever asks', async () => {
    const others = [await world.signIn('member'), await world.signIn('member')]
    const answers: number[] = []
    for (const one of others) for (let times = 0; times < 4; times += 1) answers.push((await give('stranger@post.example', one)).status)
    expect(answers).toEqual([200, 200, 200, 200, 200, 200, 429, 429])
    expect((await give()).status, 'an address of one’s own is another').toBe(200)
  })

  it('stays where the mail server takes nothing, and says so', async () => {
    world.box.refuse('not now')
    const answer = await give()
    expect([answer.status, answer.text.includes('did not take the mail'), answer.text.includes('not now')]).toEqual([503, true, false])
    expect((await hearing()).mail).toMatchObject({ address: ownAddress, confirmed: false })
  })

  it('is taken away by its owner, or by one click in a mail without signing in, and nothing of it stays', async () => {
    await give()
    await press(linkIn(lastLetter(), 'confirm'))
    const stop = await stopLink()
    const page = await open(stop)
    expect([page.status, page.text.includes('Stop the mail'), page.text.includes(ownAddress)]).toEqual([200, true, false])
    expect((await hearing()).mail?.address).toBe(ownAddress)
    // RFC 8058, 3.2: what a mail program posts, from elsewhere and without a cookie. It is not redirected.
    const clicked = await world.app.request(SITE + stop, { method: 'POST', body: 'List-Unsubscribe=One-Click', headers: FORM })
    expect([clicked.status, clicked.redirected]).toEqual([200, false])
    expect((await hearing()).mail?.address).toBeNull()
    expect((await press(stop)).text, 'a second click').toContain('No more mail is sent to you')
    await give()
    expect((await ida.send('DELETE', `${SITE}/api/hearing/mail`)).status).toBe(204)
    expect(await world.db.selectFrom('person_mail').selectAll().where('person_id', '=', ida.personId).execute()).toEqual([])
  })

  it('is ended by links of its own letters: of before it was given anew for 60 days more, and by none of another address', async () => {
    await give()
    await press(linkIn(lastLetter(), 'confirm'))
    const before = await stopLink()
    world.later(1_000)
    await give()
    expect((await open(before)).text, 'not confirmed anew yet').toContain('Stop the mail')
    await press(linkIn(lastLetter(), 'confirm'))
    const renewed = await stopLink()
    expect(renewed).not.toBe(before)
    for (const link of [before, renewed]) expect((await open(link)).text).toContain('Stop the mail')
    world.later(61 * 86_400_000)
    const late = await press(before, 'List-Unsubscribe=One-Click')
    expect([late.status, late.text.includes('the link in the newest one'), late.text.includes(ownAddress)]).toEqual([410, true, false])
    expect((await open(renewed)).text, 'the newest works for as long as the address stays').toContain('Stop the mail')
    await give(`other-${ownAddress}`)
    expect((await press(renewed)).text).toContain('This link is of an earlier address')
    expect((await hearing()).mail?.address).toBe(`other-${ownAddress}`)
  })

  it('is ended by no link of another kind or of somebody’s making', async () => {
    await give()
    const right = await stopLink()
    const forged = await stopLink(new TextEncoder().encode('another key, which is long enough too'))
    for (const path of [forged, `${right}x`, right.slice(0, -1), '/m/stop/none', '/m/confirm/none']) {
      expect((await press(path)).status, path).toBe(410)
      expect((await open(path)).status, path).toBe(410)
    }
    expect((await hearing()).mail?.address).toBe(ownAddress)
  })
})

describe('a device of one’s own', () => {
  it('is told from when its browser was asked, and knows itself again by a hash', async () => {
    expect((await hearing()).push).toEqual({ publicKey: vapidKeyOf(world.deps.linkKey).publicKey, devices: [] })
    const { body } = newSubscriber()
    const added = await ida.send<HearingView>('POST', `${SITE}/api/hearing/devices`, {
      body,
      headers: { 'user-agent': 'Example (Mobile)' },
    })
    expect(added.status, added.text).toBe(201)
    expect(added.body.push?.devices).toEqual([
      { id: expect.stringMatching(/^[0-9a-f]{64}$/), device: 'phone', since: expect.any(String), failingSince: null },
    ])
    expect(added.text).not.toContain(body.endpoint)
    await ida.send('POST', `${SITE}/api/hearing/devices`, { body })
    expect((await hearing()).push?.devices).toHaveLength(1)
    const id = added.body.push?.devices[0]?.id ?? ''
    const other = await world.signIn('manager')
    expect((await other.send('DELETE', `${SITE}/api/hearing/devices/${id}`)).status).toBe(404)
    expect((await ida.send('DELETE', `${SITE}/api/hearing/devices/${id}`)).status).toBe(204)
    expect((await hearing()).push?.devices).toEqual([])
  })

  it('belongs to whoever is signed in on it now', async () => {
    const { body } = newSubscriber()
    const ole = await world.signIn('member')
    await ida.send('POST', `${SITE}/api/hearing/devices`, { body })
    await ole.send('POST', `${SITE}/api/hearing/devices`, { body })
    expect([(await hearing(ida)).push?.devices.length, (await hearing(ole)).push?.devices.length]).toEqual([0, 1])
  })

  it('is refused where its address leads inside or its keys are none', async () => {
    const { body } = newSubscriber()
    const send = (change: object): Promise<Answer> => ida.send('POST', `${SITE}/api/hearing/devices`, { body: { ...body, ...change } })
    for (const endpoint of ['https://127.0.0.1/x', 'http://push.example.net/x', 'https://push.example.net:444/x', 'https://[::1]/x', 'x']) {
      const answer = await send({ endpoint })
      expect([answer.status, (answer.body['errors'] as Array<{ field: string }>)[0]?.field], endpoint).toEqual([422, 'endpoint'])
    }
    expect((await send({ keys: { ...body.keys, p256dh: 'short' } })).status).toBe(422)
    expect((await send({ endpoint: `https://push.example.net/${'x'.repeat(2_000)}` })).status).toBe(422)
  })

  it('is one of a few', async () => {
    const bodies = Array.from({ length: MOST_DEVICES + 1 }, () => newSubscriber().body)
    for (const body of bodies.slice(0, MOST_DEVICES)) await ida.send('POST', `${SITE}/api/hearing/devices`, { body })
    const one = await ida.send('POST', `${SITE}/api/hearing/devices`, { body: bodies.at(-1) })
    expect([one.status, one.text.includes('Remove one')]).toEqual([409, true])
  })
})

describe('a place without mail or an https address', () => {
  it('offers neither, and refuses both in words', async () => {
    const bare = await createWorld()
    try {
      const person = await bare.signIn('member')
      expect((await person.send('GET', '/api/hearing')).body).toEqual({ mail: null, push: null })
      const mail = await person.send('PUT', '/api/hearing/mail', { body: { address: ownAddress } })
      const device = await person.send('POST', '/api/hearing/devices', { body: newSubscriber().body })
      expect([mail.status, device.status]).toEqual([409, 409])
      expect(mail.text).toContain('SMTP_URL')
    } finally {
      await bare.close()
    }
  })
})
