import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addDays } from '../../core/dates.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import type { PriceRecord, SightingRow } from '../../core/pricing/record.ts'
import { MOST_WATCHES, type WatchView } from '../../core/pricing/watches/watch.ts'
import { phoneId, product, sighting, store } from '../support/rows.ts'
import { draftOf, issue, newQuote, stockedShop, today } from './support/quotes.ts'
import { lookNow, setWatch, toldTo } from './support/watches.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let tom: Browser
let ada: Browser
let ida: Browser
let place: Store
beforeAll(async () => {
  world = await createWorld()
  ;[tom, ada, ida] = [await world.signIn('member'), await world.signIn('member'), await world.signIn('member')]
  place = await store(world.db)
})
afterAll(() => world.close())

const post = (who: Browser, productId: string, fields: object = {}, at: Store = place) =>
  who.send<SightingRow>('POST', '/api/sightings', {
    body: sighting(productId, at.id, { seenOn: today(), condition: 'sale', priceMinor: 3000, ...fields }),
  })
/** A product whose regular price is on record, so that a sale of it is nothing to doubt. */
async function known(fields: object = {}): Promise<Product> {
  const made = await product(world.db, fields)
  await post(ida, made.id, { condition: 'shelf', priceMinor: 3999, seenOn: addDays(today(), -20) })
  return made
}

describe('a watch', () => {
  it('is its owner’s alone: listed, read, changed on its version, ended', async () => {
    const { id: productId, name } = await known()
    const made = await setWatch(tom, { productId })
    expect(made).toMatchObject({ status: 201, body: { productName: name, kind: 'heater', limitMinor: 3600, currency: 'USD', told: 0 } })
    expect((await setWatch(tom, { productId, id: made.body.id })).status).toBe(200)
    expect((await setWatch(ada, { productId, id: made.body.id })).status).toBe(422)
    const path = `/api/watches/${made.body.id}`
    const terms = { limitMinor: 3000, byDay: null, conditions: ['used', 'new'], regionId: null, storeIds: [place.id] }
    for (const [method, sent] of [
      ['GET', {}],
      ['PUT', { body: terms, headers: { 'if-match': '"1"' } }],
      ['DELETE', {}],
    ] as const)
      // prettier-ignore
      expect((await ada.send(method, path, sent)).status, method).toBe(404)
    expect((await ada.send<{ items: unknown[] }>('GET', '/api/watches')).body.items).toEqual([])
    expect((await tom.send('PUT', path, { body: terms })).status).toBe(428)
    const changed = await tom.send('PUT', path, { body: terms, headers: { 'if-match': '"1"' } })
    expect(changed).toMatchObject({ status: 200, body: { ...terms, conditions: ['new', 'used'], version: 2 } })
    expect((await tom.send('PUT', path, { body: terms, headers: { 'if-match': '"1"' } })).status).toBe(412)
    expect((await tom.send('DELETE', path)).status).toBe(204)
    expect((await tom.send<{ items: Array<{ id: string }> }>('GET', '/api/watches')).body.items).toEqual([])
    expect((await tom.send('PUT', path, { body: terms, headers: { 'if-match': '"3"' } })).status).toBe(409)
  })

  it('names what is wrong with it: field, limit and what to do', async () => {
    const { id: productId } = await product(world.db)
    const refusal = async (fields: object) =>
      (await setWatch(tom, fields)).body as unknown as { errors: Array<{ field: string; message: string }> }
    const nothing = '0198c0de-0000-7000-8000-000000000000'
    for (const [fields, field] of [
      [{}, 'productId'],
      [{ productId, requirement: { kind: 'heater' } }, 'productId'],
      [{ productId, limitMinor: null }, 'limitMinor'],
      [{ productId, limitMinor: 0 }, 'limitMinor'],
      [{ productId, byDay: addDays(today(), -1) }, 'byDay'],
      [{ productId, byDay: addDays(today(), 400) }, 'byDay'],
      [{ productId, conditions: [] }, 'conditions'],
      [{ productId: nothing }, 'productId'],
      [{ productId, storeIds: [nothing] }, 'storeIds.0'],
      [{ productId, regionId: nothing }, 'regionId'],
      [{ requirement: { kind: 'heater', spec: 'weightKg:3..' } }, 'requirement.spec'],
      [{ requirement: { kind: 'heater', fits: { quoteId: nothing, letter: 'A' } } }, 'requirement.fits.quoteId'],
    ] as const)
      expect(
        (await refusal(fields)).errors?.map((one) => one.field),
        JSON.stringify(fields),
      ).toContain(field)
  })

  it(`is the last that fits at ${MOST_WATCHES} of a person, and one that ends makes room`, async () => {
    const rita = await world.signIn('member')
    const { id: productId } = await product(world.db)
    const rows = Array.from({ length: MOST_WATCHES - 1 }, () => ({
      id: phoneId(),
      person_id: rita.personId,
      product_id: productId,
      limit_minor: 100,
      currency: 'USD',
      conditions: ['new' as const],
    }))
    for (const row of rows) await world.db.insertInto('watch').values(row).execute()
    expect((await setWatch(rita, { productId })).status).toBe(201)
    const refused = await setWatch(rita, { productId })
    expect(refused).toMatchObject({ status: 409, body: { title: 'It takes no more' } })
    expect(refused.text).toContain('End one')
    await rita.send('DELETE', `/api/watches/${rows[0]?.id}`)
    expect((await setWatch(rita, { productId })).status).toBe(201)
  })
})

describe('a region that is taken out', () => {
  it('ends the watches of it, which say so until they are removed, and leaves the others', async () => {
    const { id: productId } = await known()
    const who = await world.signIn('member')
    const manager = await world.signIn('manager')
    const { body: region } = await manager.send<{ id: string }>('POST', '/api/regions', {
      body: { name: 'Old harbour', storeIds: [place.id] },
    })
    const [ofRegion, other] = [await setWatch(who, { productId, regionId: region.id }), await setWatch(who, { productId, limitMinor: 100 })]
    const ended = await setWatch(who, { productId, regionId: region.id })
    await who.send('DELETE', `/api/watches/${ended.body.id}`)
    const counted = (by: Browser) => by.send('GET', `/api/regions/${region.id}/watches`)
    expect((await counted(manager)).body, 'how many end with it').toEqual({ watches: 1 })
    expect((await counted(who)).status).toBe(403)
    expect((await manager.send('DELETE', `/api/regions/${region.id}`)).status).toBe(204)
    expect((await counted(manager)).status).toBe(404)
    const list = async () =>
      (await who.send<{ items: WatchView[] }>('GET', '/api/watches')).body.items.map(({ id, endedAt, regionGone }) => [
        id,
        endedAt !== null,
        regionGone,
      ])
    expect(await list()).toEqual([
      [other.body.id, false, false],
      [ofRegion.body.id, true, true],
    ])
    await post(ada, productId)
    await lookNow(world)
    expect(await toldTo(who), 'of nothing anywhere').toEqual([])
    expect((await who.send('DELETE', `/api/watches/${ofRegion.body.id}`)).status).toBe(204)
    expect(await list()).toEqual([[other.body.id, false, false]])
  })
})

describe('a region that gains a store', () => {
  it('has its watches looked at at once, and one that only loses one asks for no look', async () => {
    const { id: productId } = await known()
    const [who, manager, far] = [await world.signIn('member'), await world.signIn('manager'), await store(world.db)]
    const { body: region } = await manager.send<{ id: string }>('POST', '/api/regions', { body: { name: 'New quay', storeIds: [far.id] } })
    const { body: watch } = await setWatch(who, { productId, regionId: region.id })
    await post(ada, productId)
    await lookNow(world)
    expect(await toldTo(who), 'the price is at a store outside of it').toEqual([])
    const keep = (version: number, storeIds: string[]) =>
      manager.send('PUT', `/api/regions/${region.id}`, {
        body: { name: 'New quay', storeIds },
        headers: { 'if-match': `"${version}"` },
      })
    expect((await keep(1, [far.id, place.id])).status).toBe(200)
    expect(await lookNow(world)).toBe(1)
    expect((await toldTo(who)).map(({ watchId, storeId }) => [watchId, storeId])).toEqual([[watch.id, place.id]])
    expect((await keep(2, [place.id])).status).toBe(200)
    expect(await world.db.selectFrom('watch_due').selectAll().execute()).toEqual([])
  })
})

describe('a deal', () => {
  it('is told once, whoever reports it and however often, with what it costs and where', async () => {
    const { id: productId, name } = await known()
    await setWatch(tom, { productId })
    await lookNow(world)
    expect(await toldTo(tom)).toEqual([])
    const posted = await post(ada, productId, { lastDay: addDays(today(), 4) })
    expect(await lookNow(world)).toBe(1)
    for (const who of [ida, await world.signIn('member'), await world.signIn('member')]) await post(who, productId)
    await ida.send('POST', `/api/sightings/${posted.body.id}/confirm`)
    expect(await lookNow(world)).toBe(0)
    const [notice, ...more] = await toldTo(tom)
    expect(more).toEqual([])
    // 30.00 and the store's 6 % on top.
    expect(notice).toMatchObject({ productName: name, storeName: place.name, priceMinor: 3000, totalMinor: 3180, condition: 'sale', sightingId: posted.body.id, until: addDays(today(), 4), lastDayStated: true, answer: null }) // prettier-ignore
    expect(await toldTo(ada)).toEqual([])
  })

  it('that is standing already is told as soon as the watch is set', async () => {
    const { id: productId } = await known()
    await post(ada, productId)
    const { body } = await setWatch(tom, { productId })
    expect(await lookNow(world)).toBe(1)
    expect((await tom.send<{ told: number }>('GET', `/api/watches/${body.id}`)).body.told).toBe(1)
  })

  it('that is doubted is told when a second member confirms it, one that was withdrawn or disputed never', async () => {
    const { id: productId } = await known()
    const watching = await world.signIn('member')
    await setWatch(watching, { productId })
    const doubted = await post(ada, productId, { priceMinor: 399 })
    expect(doubted.body.doubt).not.toBeNull()
    const gone = await post(ada, productId, { priceMinor: 2500 })
    await ada.send('POST', `/api/sightings/${gone.body.id}/withdraw`)
    const wrong = await post(ada, productId, { priceMinor: 2600 })
    await ida.send('POST', `/api/sightings/${wrong.body.id}/dispute`)
    expect(await lookNow(world)).toBe(0)
    await ida.send('POST', `/api/sightings/${doubted.body.id}/confirm`)
    await lookNow(world)
    expect((await toldTo(watching)).map(({ priceMinor }) => priceMinor)).toEqual([399])
  })

  it('is told to nobody whose watch has ended or whose account is disabled', async () => {
    const { id: productId } = await known()
    const [left, out] = [await world.signIn('member'), await world.signIn('member')]
    const { body } = await setWatch(left, { productId })
    await setWatch(out, { productId })
    await left.send('DELETE', `/api/watches/${body.id}`)
    await world.db.updateTable('person').set({ disabled_at: new Date() }).where('id', '=', out.personId).execute()
    await post(ada, productId)
    expect(await lookNow(world)).toBe(0)
  })

  it('of another product asks for no look', async () => {
    await lookNow(world)
    await post(ada, (await product(world.db, { kind: 'thermometer', spec: {} })).id)
    expect(await world.db.selectFrom('watch_due').selectAll().execute()).toEqual([])
  })
})

describe('a watch of a requirement', () => {
  it('tells of any product of the kind that states what was asked for', async () => {
    const who = await world.signIn('member')
    const [strong, weak, silent] = [
      await known({ spec: { powerW: 250 } }),
      await known({ spec: { powerW: 100 } }),
      await known({ spec: {} }),
    ]
    await setWatch(who, { requirement: { kind: 'heater', spec: 'powerW:200..' } })
    for (const { id } of [strong, weak, silent]) await post(ada, id)
    await lookNow(world)
    expect((await toldTo(who)).map(({ productId }) => productId)).toEqual([strong.id])
  })

  it('that is to fit a build tells of those that its physics takes', async () => {
    const advisor = await world.signIn('advisor')
    const shop = await stockedShop(world, ida)
    const quote = await newQuote(advisor, draftOf(shop))
    const fits = { quoteId: quote.id, letter: 'B' }
    expect((await setWatch(tom, { requirement: { kind: 'heater', fits } })).status).toBe(422)
    await setWatch(advisor, { requirement: { kind: 'heater', fits } })
    // The build has two: of 10 W they do not hold the coldest room, of 200 W one that sticks cooks the animals (heater_holds, heater_stuck).
    const [little, right, strong] = [await known({ spec: { powerW: 10 } }), await known({ spec: { powerW: 100 } }), await known({ spec: { powerW: 200 } })] // prettier-ignore
    for (const { id } of [little, right, strong]) await post(ada, id)
    await lookNow(world)
    const told = (await toldTo(advisor)).map(({ productId }) => productId)
    expect([little, right, strong].filter(({ id }) => told.includes(id))).toEqual([right])
  })
})

describe('a watch that is to fit a build', () => {
  it('names the number of its quote to whoever advises, and no longer to one who does not', async () => {
    const advisor = await world.signIn('advisor')
    const quote = await issue(advisor, await newQuote(advisor, draftOf(await stockedShop(world, ida))))
    const watch = await setWatch(advisor, { requirement: { kind: 'heater', fits: { quoteId: quote.body.id, letter: 'B' } } })
    expect(watch.body.quoteNumber).toBe(quote.body.number)
    await world.db.updateTable('person').set({ role: 'member' }).where('id', '=', advisor.personId).execute()
    const { items } = (await advisor.send<{ items: WatchView[] }>('GET', '/api/watches')).body
    expect(items.map(({ id, quoteNumber }) => [id, quoteNumber])).toEqual([[watch.body.id, null]])
  })
})

describe('what was found at the store', () => {
  async function told(change: object = {}): Promise<{ who: Browser; id: string; sightingId: string; productId: string }> {
    const { id: productId } = await known()
    const who = await world.signIn('member')
    await setWatch(who, { productId })
    const posted = await post(ada, productId, change)
    await lookNow(world)
    const [notice] = await toldTo(who)
    return { who, id: notice?.id ?? 'none', sightingId: posted.body.id, productId }
  }
  const answer = (who: Browser, id: string, given: 'still_there' | 'gone', sightingId = phoneId()) =>
    who.send<{ done: string; notice: { answer: string | null } }>('POST', `/api/notices/${id}/answer`, {
      body: { answer: given, sightingId },
    })

  it('confirms a report of today', async () => {
    const { who, id, sightingId } = await told()
    expect(await answer(who, id, 'still_there')).toMatchObject({
      status: 200,
      body: { done: 'confirmed', notice: { answer: 'still_there' } },
    })
    expect((await who.send('GET', `/api/sightings/${sightingId}`)).body).toMatchObject({ confirmations: 1, myVote: 'confirm' })
  })

  it('posts the price as seen today where the report is older, once however often it is sent, and nobody is told again', async () => {
    const { who, id, productId } = await told({ seenOn: addDays(today(), -2), lastDay: addDays(today(), 3) })
    const phone = phoneId()
    for (const status of [200, 200]) expect(await answer(who, id, 'still_there', phone)).toMatchObject({ status, body: { done: 'posted' } })
    expect((await answer(who, id, 'still_there')).body, 'said once a day').toMatchObject({ done: 'said' })
    const posted = (await who.send('GET', `/api/sightings/${phone}`)).body
    expect(posted).toMatchObject({ productId, priceMinor: 3000, condition: 'sale', seenOn: today(), lastDay: addDays(today(), 3), reporterId: who.personId }) // prettier-ignore
    expect(await lookNow(world)).toBe(0)
  })

  it('is taken once where it is sent again after midnight', async () => {
    const { who, id } = await told({ seenOn: addDays(today(), -2), lastDay: addDays(today(), 3) })
    const [phone, clock, seenOn] = [phoneId(), world.deps.clock, today()]
    expect(await answer(who, id, 'still_there', phone)).toMatchObject({ status: 200, body: { done: 'posted' } })
    world.rebuild({ clock: () => clock() + 86_400_000 })
    const again = await answer(who, id, 'still_there', phone)
    world.rebuild({ clock })
    expect(again, again.text).toMatchObject({ status: 200, body: { done: 'posted' } })
    expect((await who.send('GET', `/api/sightings/${phone}`)).body).toMatchObject({ seenOn })
  })

  const todayOf = async (productId: string) =>
    (await ida.send<PriceRecord>('GET', `/api/products/${productId}/record`)).body.views.find(({ storeId }) => storeId === place.id)

  it('is posted once by one person, however many presses of however many notices come at one moment', async () => {
    const { id: productId } = await known()
    const who = await world.signIn('member')
    for (const limitMinor of [3600, 3700]) await setWatch(who, { productId, limitMinor })
    await post(ada, productId, { seenOn: addDays(today(), -2), lastDay: addDays(today(), 3) })
    await lookNow(world)
    const told = await toldTo(who)
    const pressed = await Promise.all([...told, ...told].map(({ id }) => answer(who, id, 'still_there')))
    expect(pressed.map(({ status }) => status)).toEqual([200, 200, 200, 200])
    expect(new Set(pressed.map(({ body }) => body.done))).toEqual(new Set(['posted', 'said']))
    const { sightings } = (await who.send<PriceRecord>('GET', `/api/products/${productId}/record`)).body
    expect(sightings.filter(({ reporterId }) => reporterId === who.personId)).toHaveLength(1)
  })

  it('ends a sale that is gone, so that the regular price is today’s again, and judges no report', async () => {
    const { who, id, sightingId, productId } = await told()
    expect((await todayOf(productId))?.today).toMatchObject({ priceMinor: 3000 })
    for (const _ of ['once', 'sent again'])
      expect(await answer(who, id, 'gone')).toMatchObject({ status: 200, body: { done: 'ended', notice: { answer: 'gone' } } })
    expect((await who.send('GET', `/api/sightings/${sightingId}`)).body).toMatchObject({ disputes: 0, myVote: null, goneOn: today() })
    expect(await todayOf(productId)).toMatchObject({ today: { priceMinor: 3999, condition: 'shelf' }, best: { priceMinor: 3000 } })
  })

  it('is taken of a member twenty times a day, and is there again while who said it is disabled', async () => {
    const { who, id, productId } = await told()
    expect((await answer(who, id, 'gone')).body.done).toBe('ended')
    const copies = (from: number, to: number) =>
      sql`insert into notice select (jsonb_populate_record(null::notice, to_jsonb(n)
      || jsonb_build_object('id', gen_random_uuid(), 'deal_key', n.deal_key || nth))).* from notice n, generate_series(${sql.lit(from)}, ${sql.lit(to)}) as nth where n.id = ${id}`.execute(
        world.db,
      )
    await copies(1, 19)
    await sql`update notice set answer = null, answered_at = null where id = ${id}`.execute(world.db)
    expect((await answer(who, id, 'gone')).status, 'the twentieth').toBe(200)
    await copies(20, 20)
    await sql`update notice set answer = null, answered_at = null where id = ${id}`.execute(world.db)
    const refused = await who.send<{ detail: string }>('POST', `/api/notices/${id}/answer`, {
      body: { answer: 'gone', sightingId: phoneId() },
    })
    expect(refused.status).toBe(429)
    expect(refused.body.detail).toMatch(/of 20 deals within 24 hours.*next is taken in 24 h/)
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(86_000)
    const chief = await world.signIn('manager')
    const setDisabled = async (disabled: boolean) => {
      const { version } =
        (await chief.send<{ items: Array<{ id: string; version: number }> }>('GET', '/api/people')).body.items.find(
          (one) => one.id === who.personId,
        ) ?? expect.fail('nobody')
      expect(
        (await chief.send('PATCH', `/api/people/${who.personId}`, { body: { disabled }, headers: { 'if-match': `"${version}"` } })).status,
      ).toBe(200)
      return (await todayOf(productId))?.today?.priceMinor
    }
    expect((await todayOf(productId))?.today?.priceMinor).toBe(3999)
    expect(await setDisabled(true)).toBe(3000)
    expect(await setDisabled(false)).toBe(3999)
  })

  it('leaves no price today where the regular price is gone: an older one does not come back', async () => {
    const { id: productId } = await known()
    const who = await world.signIn('member')
    await setWatch(who, { productId, limitMinor: 4500 })
    await post(ada, productId, { condition: 'shelf', priceMinor: 3900, seenOn: addDays(today(), -1) })
    await lookNow(world)
    const [notice] = await toldTo(who)
    expect((await answer(who, notice?.id ?? 'none', 'gone')).body.done).toBe('emptied')
    const view = await todayOf(productId)
    expect(view).toMatchObject({ goneOn: today(), regular: { priceMinor: 3900 } })
    expect(view?.today).toBeUndefined()
    // Seen again by anybody, it is there.
    await post(ida, productId, { condition: 'shelf', priceMinor: 3900 })
    expect((await todayOf(productId))?.today).toMatchObject({ priceMinor: 3900 })
    expect((await answer(who, notice?.id ?? 'none', 'gone')).body.done, 'and gone once more').toBe('emptied')
  })

  it('that was said to be gone by mistake is there again when that is taken back', async () => {
    const { who, id, sightingId, productId } = await told()
    await who.send('POST', `/api/sightings/${sightingId}/confirm`)
    await answer(who, id, 'gone')
    expect((await who.send('GET', `/api/sightings/${sightingId}`)).body).toMatchObject({ confirmations: 1, myVote: 'confirm' })
    expect((await ida.send('DELETE', `/api/notices/${id}/answer`)).status).toBe(404)
    expect(await who.send('DELETE', `/api/notices/${id}/answer`)).toMatchObject({
      status: 200,
      body: { id, answer: null, answeredAt: null },
    })
    expect((await who.send('GET', `/api/sightings/${sightingId}`)).body).toMatchObject({
      confirmations: 1,
      myVote: 'confirm',
      goneOn: null,
    })
    expect((await todayOf(productId))?.today).toMatchObject({ priceMinor: 3000 })
    expect((await answer(who, id, 'still_there')).body).toMatchObject({ done: 'confirmed' })
    const after = await who.send('DELETE', `/api/notices/${id}/answer`)
    expect(after.body, 'still there stays').toMatchObject({ answer: 'still_there' })
  })

  it('goes with it where it was pressed on the last day and is taken back on the next', async () => {
    const { who, id, sightingId } = await told({ lastDay: today() })
    const { clock } = world.deps
    expect((await answer(who, id, 'gone')).body.done).toBe('ended')
    world.rebuild({ clock: () => clock() + 86_400_000 })
    const back = await who.send('DELETE', `/api/notices/${id}/answer`)
    world.rebuild({ clock })
    expect(back.body).toMatchObject({ answer: null })
    expect((await who.send('GET', `/api/sightings/${sightingId}`)).body).toMatchObject({ goneOn: null })
  })

  it('of one report that two watches told is one word: gone until both are taken back, posted once a day', async () => {
    const { id: productId } = await known()
    const who = await world.signIn('member')
    for (const limitMinor of [3600, 3700]) await setWatch(who, { productId, limitMinor })
    const { id: sightingId } = (await post(ada, productId, { seenOn: addDays(today(), -2), lastDay: addDays(today(), 3) })).body
    await lookNow(world)
    const [first = 'none', second = 'none'] = (await toldTo(who)).map(({ id }) => id)
    const record = async () => (await who.send('GET', `/api/sightings/${sightingId}`)).body
    for (const id of [first, second]) await answer(who, id, 'gone')
    await who.send('DELETE', `/api/notices/${first}/answer`)
    expect(await record(), 'the other still says so').toMatchObject({ goneOn: today() })
    await who.send('DELETE', `/api/notices/${second}/answer`)
    expect(await record()).toMatchObject({ goneOn: null })
    expect((await answer(who, first, 'still_there')).body).toMatchObject({ done: 'posted' })
    expect((await answer(who, second, 'still_there')).body).toMatchObject({ done: 'said', notice: { answer: 'still_there' } })
  })

  it('is one used piece: taken back, it leaves another one gone', async () => {
    const { id: productId } = await known()
    const who = await world.signIn('member')
    await setWatch(who, { productId, conditions: ['used'] })
    for (const [by, priceMinor] of [
      [ada, 2100],
      [ida, 2000],
    ] as const) {
      await post(by, productId, { condition: 'used', priceMinor })
      await lookNow(world)
    }
    const [first, second] = await toldTo(who)
    for (const notice of [first, second]) expect((await answer(who, notice?.id ?? 'none', 'gone')).body.done).toBe('sold')
    await who.send('DELETE', `/api/notices/${first?.id}/answer`)
    expect((await who.send('GET', `/api/sightings/${first?.sightingId}`)).body).toMatchObject({ goneOn: null })
    expect((await who.send('GET', `/api/sightings/${second?.sightingId}`)).body).toMatchObject({ goneOn: today() })
  })

  it('is said anew where what was posted was withdrawn or is gone, by however many presses at one moment once', async () => {
    const { who, id, productId } = await told({ seenOn: addDays(today(), -2), lastDay: addDays(today(), 3) })
    const own = async () =>
      (await who.send<PriceRecord>('GET', `/api/products/${productId}/record`)).body.sightings.filter(
        ({ reporterId, withdrawn }) => reporterId === who.personId && !withdrawn,
      )
    const pressed = async () =>
      new Set((await Promise.all([1, 2, 3].map(() => answer(who, id, 'still_there')))).map(({ body }) => body.done))
    const once = new Set(['posted', 'said'])
    expect(await pressed()).toEqual(once)
    const [posted] = await own()
    expect((await who.send('POST', `/api/sightings/${posted?.id}/withdraw`)).status).toBe(200)
    expect(await own()).toEqual([])
    expect(await pressed(), 'after it was withdrawn').toEqual(once)
    const [again] = await own()
    await world.db
      .updateTable('sighting')
      .set({ gone_on: today() })
      .where('id', '=', again?.id ?? '')
      .execute()
    expect(await pressed(), 'after somebody found it gone').toEqual(once)
    expect((await own()).map(({ goneOn }) => goneOn).toSorted()).toEqual([null, today()].toSorted())
  })

  it('is kept with its answer or not at all', async () => {
    const { who, id, sightingId } = await told()
    await sql`create function no_answer() returns trigger language plpgsql as $$ begin raise exception 'no answer is kept'; end $$`.execute(
      world.db,
    )
    await sql`create trigger no_answer before update on notice for each row execute function no_answer()`.execute(world.db)
    const failed = await answer(who, id, 'gone')
    await sql`drop function no_answer cascade`.execute(world.db)
    expect(failed.status).toBe(500)
    expect((await who.send('GET', `/api/sightings/${sightingId}`)).body).toMatchObject({ goneOn: null })
  })

  it('is asked no more where the report was withdrawn or taken back since: it says so, posts nothing, and is answered again once put back', async () => {
    const { who, id, sightingId, productId } = await told({ seenOn: addDays(today(), -2), lastDay: addDays(today(), 3) })
    const manager = await world.signIn('manager')
    expect(await toldTo(who)).toMatchObject([{ id, withdrawn: false }])
    const setBack = async (withdrawn_at: Date | null) =>
      world.db.updateTable('sighting').set({ withdrawn_at }).where('id', '=', sightingId).execute()
    await setBack(new Date())
    expect(await toldTo(who)).toMatchObject([{ id, withdrawn: true }])
    await setBack(null)
    const taken = await manager.send('POST', `/api/moderation/sightings/${sightingId}`, {
      body: { decision: 'withdraw', reason: 'a misread tag' },
    })
    expect(taken.status, taken.text).toBe(200)
    expect(await toldTo(who)).toMatchObject([{ id, withdrawn: true, answer: null }])
    for (const given of ['still_there', 'gone'] as const) {
      const refused = await answer(who, id, given)
      expect(refused.status, given).toBe(409)
      expect(refused.text).toContain('was withdrawn since you were told')
    }
    const { sightings } = (await who.send<PriceRecord>('GET', `/api/products/${productId}/record`)).body
    expect(sightings.filter(({ reporterId }) => reporterId === who.personId)).toEqual([])
    await setBack(null)
    expect((await answer(who, id, 'still_there')).body.done, 'put back').toBe('posted')
  })

  it('is told to its owner alone', async () => {
    const { id } = await told()
    expect((await answer(ida, id, 'gone')).status).toBe(404)
  })

  it('of one’s own report counts too', async () => {
    const { id: productId } = await known()
    await setWatch(ada, { productId })
    const posted = await post(ada, productId)
    await lookNow(world)
    const [notice] = await toldTo(ada)
    expect(await answer(ada, notice?.id ?? 'none', 'gone')).toMatchObject({ body: { done: 'ended' } })
    expect((await ada.send('GET', `/api/sightings/${posted.body.id}`)).body).toMatchObject({
      goneOn: today(),
      disputes: 0,
      withdrawn: false,
    })
  })

  it('changes nothing once the record holds another price', async () => {
    const { who, id, sightingId, productId } = await told({ seenOn: addDays(today(), -2) })
    await post(ida, productId, { priceMinor: 2900 })
    expect((await answer(who, id, 'gone')).body.done).toBe('passed')
    expect((await who.send('GET', `/api/sightings/${sightingId}`)).body).toMatchObject({ goneOn: null })
  })

  it('is counted as not seen until it was looked at', async () => {
    const { who } = await told()
    expect((await who.send('GET', '/api/notices/count')).body).toEqual({ total: 1, notSeen: 1 })
    const upTo = new Date(world.deps.clock() + 1000).toISOString()
    expect((await who.send('POST', '/api/notices/seen', { body: { upTo } })).body).toEqual({ total: 1, notSeen: 0 })
  })
})

describe('a day', () => {
  it('that passes ends the watches which waited for it, and has the others looked at', async () => {
    const { id: productId } = await known()
    const who = await world.signIn('member')
    const made = await setWatch(who, { productId, byDay: today() })
    await setWatch(who, { productId, limitMinor: 4300 })
    await lookNow(world)
    expect((await toldTo(who)).map(({ condition }) => condition)).toEqual(['shelf'])
    const clock = world.deps.clock
    world.rebuild({ clock: () => clock() + 86_400_000 })
    await lookNow(world)
    world.rebuild({ clock })
    expect((await who.send('GET', `/api/watches/${made.body.id}`)).body).toHaveProperty('endedAt', expect.any(String))
    expect(await toldTo(who)).toHaveLength(1)
  })
})
