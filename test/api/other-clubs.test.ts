import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addDays } from '../../core/dates.ts'
import type { OtherClub, OtherClubRow } from '../../core/other-clubs/other-club.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import { READ_CLUB_JOB, readClubHandler, readClubsDue, type GetOutside } from '../../api/other-clubs/read-club.ts'
import { startWorker } from '../../api/jobs/worker.ts'
import { AddressRefused } from '../../api/outside/guarded-request.ts'
import { findJob } from '../../db/jobs.ts'
import { ownOpenPrices } from '../../db/open-prices.ts'
import { product, sighting, store } from '../support/rows.ts'
import { today } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

interface View {
  publishes: boolean
  address: string
  clubs: OtherClub[]
}
const GTIN = '6291041500213'
const ADDRESS = 'https://reed.example/api/open-prices'

let theirs: World
let ours: World
let manager: Browser
let member: Browser
let feed: string
let get: GetOutside

/** Works off what is in line, with an internet of the test's own. */
async function work(): Promise<void> {
  const { db, deps } = ours
  const worker = startWorker({
    db,
    engine: deps.engine,
    handlers: { [READ_CLUB_JOB]: readClubHandler((...asked) => get(...asked)) },
    clock: deps.clock,
    log: deps.log,
  })
  const waiting = () => db.selectFrom('job').select('id').where('kind', '=', READ_CLUB_JOB).where('ended_at', 'is', null).execute()
  await expect.poll(waiting, { timeout: 20_000 }).toEqual([])
  await worker.stop()
}
const view = async (): Promise<View> => (await manager.send<View>('GET', '/api/other-clubs')).body
const answers =
  (status: number, body: string, etag: string | null = null): GetOutside =>
  async () => ({ status, etag, body: Buffer.from(body) })

beforeAll(async () => {
  theirs = await createWorld()
  const seer = await theirs.signIn('member')
  const heater = await product(theirs.db, { kind: 'heater', gtin: GTIN, name: 'Longstem 200' })
  const lamp = await product(theirs.db, { kind: 'heater', name: 'No number' })
  const shop = await store(theirs.db, { name: 'Pond & Pine', taxBasisPoints: 600 })
  for (const [id, minor] of [
    [heater.id, 4200],
    [lamp.id, 3000],
  ] as const)
    // prettier-ignore
    expect((await seer.send('POST', '/api/sightings', { body: sighting(id, shop.id, { seenOn: today(), priceMinor: minor, note: 'ask for Ada' }) })).status).toBe(201)
  ours = await createWorld()
  manager = await ours.signIn('manager')
  member = await ours.signIn('member')
})
afterAll(async () => {
  await theirs.close()
  await ours.close()
})

describe('telling our prices', () => {
  it('is off until the manager says so, and off again at once', async () => {
    const chief = await theirs.signIn('manager')
    expect((await theirs.visitor().send('GET', '/api/open-prices')).status).toBe(404)
    const on = await chief.send<View>('PUT', '/api/other-clubs/publishing', { body: { publishes: true } })
    expect(on.body).toMatchObject({ publishes: true, address: expect.stringMatching(/\/api\/open-prices$/) })
    expect((await theirs.visitor().send('GET', '/api/open-prices')).status).toBe(200)
    await chief.send('PUT', '/api/other-clubs/publishing', { body: { publishes: false } })
    expect((await theirs.visitor().send('GET', '/api/open-prices')).status).toBe(404)
    await chief.send('PUT', '/api/other-clubs/publishing', { body: { publishes: true } })
  })

  it('tells prices without member, note, hour or an id of ours, and 304 to whoever has them', async () => {
    const answer = await theirs.visitor().send('GET', '/api/open-prices')
    expect(answer.headers.get('content-type')).toContain('application/ld+json')
    feed = answer.text
    expect(JSON.parse(feed).dataFeedElement).toHaveLength(2)
    expect(feed).not.toContain('Ada')
    const rows = await theirs.db
      .selectFrom('sighting')
      .innerJoin('person', 'person.id', 'reporter_id')
      .select(['sighting.id', 'store_id', 'person.name', 'reporter_id'])
      .execute()
    for (const hidden of rows.flatMap(Object.values)) expect(feed).not.toContain(hidden)
    const etag = answer.headers.get('etag') ?? ''
    expect((await theirs.visitor().send('GET', '/api/open-prices', { headers: { 'if-none-match': etag } })).status).toBe(304)
  })

  it('tells nothing that came with a file, whoever confirmed it here: it may be what another club told', async () => {
    const [first, ...others] = await ownOpenPrices(theirs.db, '2000-01-01')
    const setImported = (imported: boolean) =>
      theirs.db
        .updateTable('sighting')
        .set({ imported, confirmations: imported ? 2 : 0 })
        .where('id', '=', first?.id ?? '')
        .execute()
    await setImported(true)
    expect(await ownOpenPrices(theirs.db, '2000-01-01')).toEqual(others)
    await setImported(false)
  })
})

describe('reading another club', () => {
  let heaterId: string
  let storeId: string
  const prices = async (): Promise<PriceView[]> =>
    (await member.send<{ prices: PriceView[] }>('POST', '/api/price-views', { body: { productIds: [heaterId] } })).body.prices

  it.each([
    'http://reed.example/x',
    'https://127.0.0.1/x',
    'https://[::1]/',
    'https://reed.example:8443/',
    'https://me:pw@reed.example/',
    'nonsense',
  ])('takes no address like %s', async (address) => {
    const refused = await manager.send<{ errors: Array<{ field: string }> }>('POST', '/api/other-clubs', { body: { address } })
    expect([refused.status, refused.body.errors[0]?.field]).toEqual([422, 'address'])
  })

  it('tells why nothing came of it, and keeps on', async () => {
    get = async () => Promise.reject(new AddressRefused('no'))
    const added = await manager.send<View>('POST', '/api/other-clubs', { body: { address: ADDRESS } })
    expect(added.status, added.text).toBe(200)
    await work()
    expect((await view()).clubs[0]).toMatchObject({ name: 'reed.example', readAt: null, fault: expect.stringContaining('open internet') })
    for (const [status, body, words] of [
      [503, '', 'did not answer'],
      [404, '', 'no prices'],
      [200, '<html>', 'no JSON'],
      [200, '{}', 'not a feed'],
    ] as const) {
      // prettier-ignore
      get = answers(status, body)
      await ours.db.updateTable('other_club').set({ tried_at: null }).execute()
      expect(await readClubsDue(ours.db, new Date())).toBe(1)
      expect(await readClubsDue(ours.db, new Date())).toBe(0)
      await work()
      expect((await view()).clubs[0]?.fault).toContain(words)
    }
    for (const spelling of [
      `${ADDRESS}#top`,
      ADDRESS.replace('reed.example', 'REED.example.'),
      ADDRESS.replace('example/', 'example:443/'),
    ]) {
      const twin = await manager.send<{ errors: unknown[] }>('POST', '/api/other-clubs', { body: { address: spelling } })
      expect([twin.status, twin.text], spelling).toEqual([422, expect.stringContaining('is read already')])
    }
    const again = await manager.send('POST', '/api/other-clubs', { body: { address: ADDRESS } })
    expect(again.status).toBe(422)
    const id = (await view()).clubs[0]?.id ?? ''
    expect((await manager.send('POST', `/api/other-clubs/${id}/read`)).status).toBe(409)
  })

  it('finds our products by their number and waits for somebody to say which store is ours', async () => {
    heaterId = (await product(ours.db, { kind: 'heater', gtin: GTIN, name: 'Tall heater' })).id
    storeId = (await store(ours.db, { name: 'Pond and Pine', taxBasisPoints: 600 })).id
    get = answers(200, feed, '"v1"')
    await ours.db.updateTable('other_club').set({ tried_at: null }).execute()
    await readClubsDue(ours.db, new Date())
    await work()
    const [club] = (await view()).clubs
    expect(club).toMatchObject({
      fault: null,
      prices: 2,
      ofOurProducts: 1,
      used: 0,
      leftOut: 0,
      stores: [{ name: 'Pond & Pine', storeId: null }],
    })
    expect(await prices()).toEqual([])
    const path = `/api/other-clubs/${club?.id}/stores/${club?.stores[0]?.key}`
    expect((await manager.send('PUT', path, { body: { storeId: '0198c0de-0000-7000-8000-000000000000' } })).status).toBe(422)
    expect((await manager.send<View>('PUT', path, { body: { storeId } })).body.clubs[0]?.used).toBe(1)
    expect(await prices()).toEqual([
      expect.objectContaining({ storeId, otherClub: expect.any(String), today: expect.objectContaining({ priceMinor: 4200 }) }),
    ])
    const rows = await member.send<{ items: OtherClubRow[] }>('GET', `/api/other-clubs/prices?productId=${heaterId}`)
    expect(rows.body.items).toEqual([expect.objectContaining({ priceMinor: 4200, storeName: 'Pond and Pine', storeId })])
  })

  it('sends the tag back and changes nothing where nothing is new', async () => {
    let sent: string | undefined
    get = async (_, headers) => {
      sent = headers['if-none-match']
      return { status: 304, etag: null, body: Buffer.alloc(0) }
    }
    await ours.db.updateTable('other_club').set({ tried_at: null, fault: 'old' }).execute()
    await readClubsDue(ours.db, new Date())
    await work()
    expect(sent).toBe('"v1"')
    expect((await view()).clubs[0]).toMatchObject({ fault: null, prices: 2, used: 1 })
  })

  it('gives way to what our own members see, and is unlikely where it is far from it', async () => {
    const elsewhere = await store(ours.db, { name: 'Elsewhere', taxBasisPoints: 600 })
    const seen = [20, 10, 0].map((days) => sighting(heaterId, elsewhere.id, { seenOn: addDays(today(), -days), priceMinor: 42_000 }))
    for (const body of seen) expect((await member.send('POST', '/api/sightings', { body })).status).toBe(201)
    // A tenth of what it costs anywhere else: a slipped decimal, which no member's word is needed for to leave out.
    expect((await prices()).map((one) => one.storeId)).toEqual([elsewhere.id])
    for (const { id } of seen) expect((await member.send('POST', `/api/sightings/${id}/withdraw`)).status).toBe(200)
    expect((await prices()).map((one) => one.otherClub)).toHaveLength(1)
    await member.send('POST', '/api/sightings', { body: sighting(heaterId, storeId, { seenOn: today(), priceMinor: 4300 }) })
    const [own] = await prices()
    expect([own?.today?.priceMinor, own?.otherClub]).toEqual([4300, undefined])
  })

  it('forgets what is told no more, and everything when the club is taken out', async () => {
    const document = JSON.parse(feed)
    get = answers(200, JSON.stringify({ ...document, dataFeedElement: document.dataFeedElement.slice(0, 1) }))
    await ours.db.updateTable('other_club').set({ tried_at: null }).execute()
    await readClubsDue(ours.db, new Date())
    await work()
    const [club] = (await view()).clubs
    expect(club?.prices).toBe(1)
    expect((await manager.send<View>('DELETE', `/api/other-clubs/${club?.id}`)).body.clubs).toEqual([])
    expect(await ours.db.selectFrom('other_club_price').selectAll().execute()).toEqual([])
    expect((await manager.send('DELETE', `/api/other-clubs/${club?.id}`)).status).toBe(404)
  })
})

it('a job of a club that was taken out meanwhile ends well', async () => {
  const { enqueue } = await import('../../db/jobs.ts')
  const id = await enqueue(ours.db, READ_CLUB_JOB, { clubId: '0198c0de-0000-7000-8000-000000000000' }, new Date())
  await work()
  expect((await findJob(ours.db, id))?.state).toBe('done')
})
