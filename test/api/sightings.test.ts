import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, civilDateAt } from '../../core/dates.ts'
import type { PriceRecord, SightingRow } from '../../core/pricing/record.ts'
import { keepLearned } from '../../db/learned.ts'
import { inTransaction } from '../../db/refusal.ts'
import { phoneId, product, sighting, store } from '../support/rows.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let member: Browser
let other: Browser
let heater: Product
let shop: Store
const today = civilDateAt(Date.now(), 'America/Detroit')
beforeAll(async () => {
  world = await createWorld()
  member = await world.signIn('member')
  other = await world.signIn('member')
  heater = await product(world.db)
  shop = await store(world.db)
})
afterAll(() => world.close())

const seen = (fields: Parameters<typeof sighting>[2] = {}) => sighting(heater.id, shop.id, { seenOn: today, ...fields })
type Refused = { errors: Array<{ field: string; message: string }>; detail: string }

describe('posting a sighting', () => {
  it('takes it once, however often a phone repeats it', async () => {
    const body = seen()
    const first = await member.send<SightingRow>('POST', '/api/sightings', { body })
    expect(first.status, first.text).toBe(201)
    const again = await member.send<SightingRow>('POST', '/api/sightings', { body })
    expect(again.status).toBe(200)
    expect(again.body).toEqual(first.body)
    const record = await member.send<{ sightings: SightingRow[] }>('GET', `/api/products/${heater.id}/record`)
    expect(record.body.sightings.filter(({ id }) => id === body.id)).toHaveLength(1)
  })

  it('leaves a store that was closed since out of what the product costs, and keeps what was seen there', async () => {
    const { id: productId } = await product(world.db)
    const closing = await store(world.db)
    for (const [at, priceMinor] of [
      [shop.id, 5000],
      [closing.id, 3000],
    ] as const)
      await member.send('POST', '/api/sightings', { body: sighting(productId, at, { seenOn: today, priceMinor }) })
    const rolledUp = async () =>
      (await member.send<PriceRecord>('GET', `/api/products/${productId}/record`)).body.rolledUp.find(({ part }) => part === 'all')?.new
    // With 6 % each.
    expect(await rolledUp()).toMatchObject({ stores: 2, today: { priceMinor: 3180 }, regular: { stores: 2 } })
    await world.db.updateTable('store').set({ archived: true }).where('id', '=', closing.id).execute()
    expect(await rolledUp()).toMatchObject({
      stores: 1,
      today: { priceMinor: 5300, storeId: shop.id },
      regular: { medianMinor: 5300, stores: 1 },
      best: { priceMinor: 3180, storeId: closing.id },
    })
  })

  it('tells what it usually costs with the tax of each store, and not as their tags happen to hold it', async () => {
    const { id: productId } = await product(world.db)
    const reduced = { name: 'Reduced', basisPoints: 500, kinds: ['heater' as const], productIds: [] }
    const shops = [
      [await store(world.db, { taxBasisPoints: 600 }), 10_000],
      [await store(world.db, { taxBasisPoints: 2000, pricesIncludeTax: true }), 10_400],
      [await store(world.db, { taxBasisPoints: 1000, otherRates: [reduced] }), 10_010],
    ] as const
    for (const [at, priceMinor] of shops)
      await member.send('POST', '/api/sightings', { body: sighting(productId, at.id, { seenOn: today, priceMinor }) })
    const { rolledUp, views } = (await member.send<PriceRecord>('GET', `/api/products/${productId}/record`)).body
    // 10,000 and 6 % are 10,600; 10,400 hold their tax; 10,010 and 5 % are 10,510.5. The middle of the tags would be 10,010.
    expect(rolledUp[0]?.new).toMatchObject({
      regular: { medianMinor: 10_511, lowestMinor: 10_400, highestMinor: 10_600, stores: 3 },
      today: { priceMinor: 10_400, storeId: shops[1][0].id },
      best: { priceMinor: 10_400, storeId: shops[1][0].id },
    })
    expect(views.map(({ regular }) => regular?.priceMinor).toSorted(), 'a store’s own figures stay as on its tag').toEqual([
      10_000, 10_010, 10_400,
    ])
  })

  it('answers 429 with the wait once a person has posted 120 within an hour', async () => {
    const fast = await world.signIn('member')
    const template = seen()
    await fast.send('POST', '/api/sightings', { body: template })
    const {
      id: _,
      accepted: __,
      ...row
    } = await world.db.selectFrom('sighting').selectAll().where('id', '=', template.id).executeTakeFirstOrThrow()
    const more = Array.from({ length: 119 }, () => ({ ...row, id: phoneId() }))
    await world.db.insertInto('sighting').values(more).execute()
    const answer = await fast.send<Refused>('POST', '/api/sightings', { body: seen() })
    expect(answer.status).toBe(429)
    expect(Number(answer.headers.get('retry-after'))).toBeGreaterThan(3_400)
    expect(answer.body).toMatchObject({ errors: [], detail: expect.stringContaining('within an hour') })
    await world.db.deleteFrom('sighting').where('reporter_id', '=', fast.personId).execute()
  })

  it('takes one of many repeats at the same moment', async () => {
    const body = seen({ priceMinor: 5000 })
    const all = await Promise.all(Array.from({ length: 6 }, () => member.send('POST', '/api/sightings', { body })))
    expect(all.map(({ status }) => status).sort()).toEqual([200, 200, 200, 200, 200, 201])
  })

  it('refuses the same id with another body, or from another person, and keeps the first', async () => {
    const body = seen()
    await member.send('POST', '/api/sightings', { body })
    const changed = await member.send<Refused>('POST', '/api/sightings', { body: { ...body, priceMinor: 4800 } })
    expect(changed.status).toBe(422)
    expect(changed.body.errors[0]?.field).toBe('id')
    expect((await other.send('POST', '/api/sightings', { body })).status).toBe(422)
    expect((await member.send<SightingRow>('GET', `/api/sightings/${body.id}`)).body.priceMinor).toBe(4999)
  })

  it('answers a repeat as before when the product was archived in between', async () => {
    const old = await product(world.db)
    const body = sighting(old.id, shop.id, { seenOn: today })
    await member.send('POST', '/api/sightings', { body })
    const advisor = await world.signIn('advisor')
    const { id: _id, version: _version, ...fields } = old
    await advisor.send('PUT', `/api/products/${old.id}`, { body: { ...fields, archived: true }, headers: { 'if-match': '"1"' } })
    expect((await member.send('POST', '/api/sightings', { body })).status).toBe(200)
    const fresh = await member.send<Refused>('POST', '/api/sightings', { body: sighting(old.id, shop.id, { seenOn: today }) })
    expect(fresh.status).toBe(422)
    expect(fresh.body.errors[0]).toMatchObject({ field: 'productId' })
    expect(fresh.body.detail).toContain('archived')
  })

  it('goes by the day at the store, not at the server', async () => {
    const apia = await store(world.db, { timeZone: 'Pacific/Apia' })
    const pagoPago = await store(world.db, { timeZone: 'Pacific/Pago_Pago' })
    const ahead = civilDateAt(Date.now(), 'Pacific/Apia')
    expect((await member.send('POST', '/api/sightings', { body: sighting(heater.id, apia.id, { seenOn: ahead }) })).status).toBe(201)
    // Apia is 24 hours ahead of Pago Pago: its day has not come there.
    expect(
      (await member.send<Refused>('POST', '/api/sightings', { body: sighting(heater.id, pagoPago.id, { seenOn: ahead }) })).body.errors[0]
        ?.field,
    ).toBe('seenOn')
  })

  it.each([
    ['a day in the future', { seenOn: addDays(today, 2) }, 'seenOn'],
    ['a day that is none', { seenOn: '2026-02-30' }, 'seenOn'],
    ['a day of long ago', { seenOn: addDays(today, -800) }, 'seenOn'],
    ['a price of 0', { priceMinor: 0 }, 'priceMinor'],
    ['a negative price', { priceMinor: -100 }, 'priceMinor'],
    ['a price with a fraction of a cent', { priceMinor: 12.5 }, 'priceMinor'],
    ['a price as text', { priceMinor: '49.99' }, 'priceMinor'],
    ['an unknown product', { productId: '0198c0de-0000-7000-8000-000000000000' }, 'productId'],
    ['an unknown store', { storeId: '0198c0de-0000-7000-8000-000000000000' }, 'storeId'],
    ['an id that is no id', { id: 'one' }, 'id'],
    ['a last day on a shelf price', { lastDay: today }, 'lastDay'],
    ['a last day before the first', { condition: 'sale', lastDay: addDays(today, -3) }, 'lastDay'],
    ['a condition that is none', { condition: 'cheap' }, 'condition'],
    ['a field that is none', { reporterId: '0198c0de-0000-7000-8000-000000000000' }, 'body'],
  ])('refuses %s, names the field and stores nothing', async (_what, change, field) => {
    const before = await world.db.selectFrom('sighting').select('id').execute()
    const answer = await member.send<Refused>('POST', '/api/sightings', { body: { ...seen(), ...change } })
    expect(answer.status, answer.text).toBe(422)
    expect(answer.body.errors.map((error) => error.field)).toContain(field)
    expect(await world.db.selectFrom('sighting').select('id').execute()).toHaveLength(before.length)
  })

  it('takes a slipped decimal with doubt, and it changes no price until a second member confirms', async () => {
    const lamp = await product(world.db)
    await member.send('POST', '/api/sightings', { body: sighting(lamp.id, shop.id, { seenOn: today, priceMinor: 19500 }) })
    const slipped = await member.send<SightingRow>('POST', '/api/sightings', {
      body: sighting(lamp.id, shop.id, { seenOn: today, priceMinor: 1950 }),
    })
    expect(slipped.status).toBe(201)
    expect(slipped.body.doubt?.code).toBe('slipped_decimal')
    const views = await member.send<{ prices: Array<{ today: { priceMinor: number } }> }>('POST', '/api/price-views', {
      body: { productIds: [lamp.id] },
    })
    expect(views.body.prices[0]?.today.priceMinor).toBe(19500)
  })
})

describe('doubt and what the last night’s snapshot says of who reports', () => {
  it('comes to a careless member’s odd price earlier and to a trusted one’s later; a newcomer’s ordinary change stands', async () => {
    const [careless, newcomer, trusted] = [await world.signIn('member'), await world.signIn('member'), await world.signIn('member')]
    const votes = { [careless.personId]: { confirmed: 1, disputed: 8 }, [trusted.personId]: { confirmed: 30, disputed: 0 } }
    const learned = { asOf: today, kinds: {}, products: {}, stores: {}, unwatched: {}, running: {}, trust: votes }
    expect(await inTransaction(world.db, (trx) => keepLearned(trx, learned))).toBe(true)
    const doubted = async (by: Browser, priceMinor: number): Promise<boolean> => {
      const lamp = await product(world.db)
      for (const days of [30, 20, 10])
        await member.send('POST', '/api/sightings', {
          body: sighting(lamp.id, shop.id, { seenOn: addDays(today, -days), priceMinor: 10_000 }),
        })
      const body = sighting(lamp.id, shop.id, { seenOn: today, priceMinor })
      return (await by.send<SightingRow>('POST', '/api/sightings', { body })).body.doubt !== null
    }
    // |ln(price ÷ 100)| ÷ 0.02, the floor of the spread: 3.09 and 4.17 deviations; limits 2.5, 3.5 and 4.5.
    expect([await doubted(careless, 9400), await doubted(newcomer, 9400), await doubted(trusted, 9400)]).toEqual([true, false, false])
    expect([await doubted(careless, 9200), await doubted(newcomer, 9200), await doubted(trusted, 9200)]).toEqual([true, true, false])
    await world.db.deleteFrom('price_snapshot').execute()
  })
})

describe('doubt across currencies', () => {
  it('takes no price of another currency for the usual one elsewhere, and says amounts in the store’s own', async () => {
    const lamp = await product(world.db)
    const [abroad, beside] = [await store(world.db, { currency: 'JPY' }), await store(world.db, { currency: 'JPY' })]
    const post = (storeId: string, priceMinor: number) =>
      member.send<SightingRow>('POST', '/api/sightings', { body: sighting(lamp.id, storeId, { seenOn: today, priceMinor }) })
    expect((await post(shop.id, 4500)).body.doubt).toBeNull()
    // Ten times as many minor units, of a currency that has none below its main one (ISO 4217): no slipped decimal.
    expect((await post(abroad.id, 45_000)).body.doubt).toBeNull()
    const slipped = await post(beside.id, 4500)
    expect(slipped.body.doubt?.code).toBe('slipped_decimal')
    expect(slipped.body.doubt?.words).toContain('JPY 45,000')
  })
})

describe('a sighting', () => {
  it('is not confirmed or disputed by the one who posted it', async () => {
    const body = seen()
    await member.send('POST', '/api/sightings', { body })
    for (const act of ['confirm', 'dispute']) expect((await member.send('POST', `/api/sightings/${body.id}/${act}`)).status).toBe(409)
  })
  it('is confirmed by another member, once', async () => {
    const body = seen()
    await member.send('POST', '/api/sightings', { body })
    const first = await other.send<SightingRow>('POST', `/api/sightings/${body.id}/confirm`)
    expect(first.body).toMatchObject({ confirmations: 1, myVote: 'confirm' })
    expect((await other.send<SightingRow>('POST', `/api/sightings/${body.id}/confirm`)).body.confirmations).toBe(1)
  })
  it('is withdrawn by its reporter or a manager, not by another member', async () => {
    const body = seen()
    await member.send('POST', '/api/sightings', { body })
    expect((await other.send('POST', `/api/sightings/${body.id}/withdraw`)).status).toBe(409)
    expect((await member.send<SightingRow>('POST', `/api/sightings/${body.id}/withdraw`)).body.withdrawn).toBe(true)
  })
  it('stands on the board with what it is under', async () => {
    const pump = await product(world.db)
    await member.send('POST', '/api/sightings', { body: sighting(pump.id, shop.id, { seenOn: addDays(today, -20), priceMinor: 10000 }) })
    await member.send('POST', '/api/sightings', {
      body: sighting(pump.id, shop.id, { seenOn: today, priceMinor: 7500, condition: 'sale' }),
    })
    const board = await member.send<{ rows: Array<{ regularMinor: number; underRegular: number; sighting: SightingRow }>; total: number }>(
      'GET',
      `/api/board?q=${encodeURIComponent(pump.name)}`,
    )
    expect(board.body.total).toBe(1)
    expect(board.body.rows[0]).toMatchObject({ regularMinor: 10000, underRegular: 0.25 })
    expect((await member.send('GET', '/api/board?kind=spaceship')).status).toBe(422)
    expect((await member.send('GET', '/api/board?limit=5&limit=6')).status).toBe(422)
  })
})
