import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import { addDays } from '../../core/dates.ts'
import type { OutlookView } from '../../core/pricing/outlook-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { limits } from '../../api/watches/limits.ts'
import type { Watch } from '../../core/pricing/watches/watch.ts'
import { getInstall } from '../../db/install.ts'
import { createRegion } from '../../db/regions.ts'
import { learnPrices } from '../../api/outlook/learn-prices.ts'
import type { LearnedHead } from '../../core/pricing/outlook/learned.ts'
import { pricesTold } from '../../core/pricing/outlook/told-prices.ts'
import { trustByReporter, trustFrom } from '../../core/pricing/trust.ts'
import { acceptedText, keepLearned, newestLearnedOn, readLearned, votesByReporter } from '../../db/learned.ts'
import { inTransaction } from '../../db/refusal.ts'
import { product, sighting, store } from '../support/rows.ts'
import { draftOf, issue, newQuote, stockedShop, today } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

const acceptedOf = async (since: string) => pricesTold(await acceptedText(world.db, [heater.id], since))

let world: World
let member: Browser
let shop: Store
let heater: Product
beforeAll(async () => {
  world = await createWorld()
  member = await world.signIn('member')
  shop = await store(world.db, { name: 'Kettle Lane', taxBasisPoints: 1000, pricesIncludeTax: false })
  heater = await product(world.db)
  const post = async (daysAgo: number, condition: 'shelf' | 'sale', priceMinor: number) => {
    const body = sighting(heater.id, shop.id, { seenOn: addDays(today(), -daysAgo), condition, priceMinor, lastDay: null })
    expect((await member.send('POST', '/api/sightings', { body })).status).toBe(201)
  }
  for (const [daysAgo, condition, price] of [[300, 'shelf', 10_000], [270, 'sale', 7_000], [200, 'shelf', 10_000], [150, 'sale', 7_000], [100, 'shelf', 10_000], [60, 'sale', 7_500], [20, 'shelf', 10_000]] as const) await post(daysAgo, condition, price) // prettier-ignore
})
afterAll(() => world.close())

const ask = (fields: object = {}) =>
  member.send<OutlookView>('POST', '/api/outlook', {
    body: { lines: [{ productId: heater.id, quantity: 1 }], until: addDays(today(), 60), ...fields },
  })

describe('what to expect', () => {
  it('says so where nothing was learnt yet', async () => {
    const { status, body } = await ask()
    expect([status, body.learnedOn, body.lines, body.total]).toEqual([200, null, [], null])
  })

  it('is learnt once a day and kept, and gone on from the next day', async () => {
    const now = Date.now()
    expect(await learnPrices(world.db, now)).toBe('learned')
    expect(await learnPrices(world.db, now), 'the same day').toBe('nothing_to_do')
    expect(await newestLearnedOn(world.db, today())).toBe(today())
    const kept = await readLearned(world.db, [heater.id], today())
    expect(Object.keys(kept?.products ?? {})).toEqual([heater.id])
    expect(kept?.products[heater.id]?.saleDays).toBe(3)
    expect((await readLearned(world.db, ['no id'], today()))?.products).toEqual({})
  })

  it('a snapshot of a day that has not come is not read, and goes with the next one', async () => {
    const ahead = Date.now() + 30 * 86_400_000
    expect(await learnPrices(world.db, ahead)).toBe('learned')
    expect(await newestLearnedOn(world.db, today())).toBe(today())
    expect((await readLearned(world.db, [], today()))?.asOf).toBe(today())
    await world.db.deleteFrom('price_snapshot').where('day', '=', today()).execute()
    expect(await learnPrices(world.db, Date.now())).toBe('learned')
    const days = await world.db.selectFrom('price_snapshot').select('day').execute()
    expect(days).toEqual([{ day: today() }])
  })

  it('is kept once a day, by whichever of two processes has learnt it first', async () => {
    const kept = await readLearned(world.db, [heater.id], today())
    if (kept === undefined) throw new Error('nothing was learnt')
    const other = { ...kept, products: {}, trust: {} }
    expect(await inTransaction(world.db, (trx) => keepLearned(trx, other))).toBe(false)
    expect((await readLearned(world.db, [heater.id], today()))?.products).toEqual(kept.products)
  })

  it('of another method stands beside it and is not read', async () => {
    await world.db
      .insertInto('price_snapshot')
      .values({ day: today(), method: 1, learned: sql<LearnedHead>`'{}'::jsonb` })
      .execute()
    expect((await readLearned(world.db, [], today()))?.asOf).toBe(today())
    await world.db.deleteFrom('price_snapshot').where('method', '=', 1).execute()
  })

  it('names what others said of its reporters that day, and a later vote waits for the next snapshot', async () => {
    const id = member.personId
    const other = await world.signIn('advisor')
    const [seen] = await acceptedOf(addDays(today(), -400))
    expect((await other.send('POST', `/api/sightings/${seen?.id}/confirm`)).status).toBe(200)
    expect((await readLearned(world.db, [heater.id], today()))?.trust).toEqual({})
    await world.db.deleteFrom('price_snapshot').execute()
    expect(await learnPrices(world.db, Date.now())).toBe('learned')
    const learned = await readLearned(world.db, [heater.id], today())
    expect(learned?.trust).toEqual({ [id]: { confirmed: 1, disputed: 0 } })
    expect(trustFrom(learned?.trust ?? {})(id)).toBe(3 / 4)
    const whole = trustByReporter(await acceptedOf('2000-01-01'))
    expect(trustFrom(await votesByReporter(world.db))(id)).toBe(whole(id))
    const [, listed] = await acceptedOf(addDays(today(), -400))
    await world.db
      .updateTable('sighting')
      .set({ imported: true, confirmations: 4 })
      .where('id', '=', listed?.id ?? '')
      .execute()
    expect((await votesByReporter(world.db))[id], 'a vote on a list says nothing of who imported it').toEqual({ confirmed: 1, disputed: 0 })
    await world.db
      .updateTable('sighting')
      .set({ imported: false, confirmations: 0 })
      .where('id', '=', listed?.id ?? '')
      .execute()
    expect((await readLearned(world.db, [], today()))?.trust, 'of nobody who reported none of the products').toEqual({})
  })

  it('tells what is paid by the date, the chance of a sale and words to act on', async () => {
    const { body, text } = await ask()
    const [line] = body.lines
    if (!line) throw new Error(text)
    expect(line.payTodayMinor).toBe(10_000)
    expect(line.chanceOfSale).toBeGreaterThan(0)
    expect(line.chanceOfSale).toBeLessThan(1)
    expect(line.paid10Minor).toBeLessThanOrEqual(line.expectedPaidMinor as number)
    expect(line.paid90Minor).toBeGreaterThanOrEqual(line.expectedPaidMinor as number)
    expect(line.title.length * line.words.length).toBeGreaterThan(0)
    expect((await ask()).body, 'the same is told the same').toEqual(body)
  })

  it('waits for nothing that saves less than the manager set, nor where a week’s wait costs more than it saves', async () => {
    const until = { until: addDays(today(), 300) }
    expect((await ask(until)).body.lines[0]).toMatchObject({ advice: 'wait', onSale: false, quantity: 1 })
    expect((await ask({ ...until, weekWaitMinor: 100_000 })).body.lines[0]?.advice).toBe('buy_when_convenient')
    await world.db.updateTable('install').set({ least_saving_minor: 10_000 }).execute()
    expect((await ask(until)).body.lines[0]?.advice).toBe('buy_when_convenient')
    await world.db.updateTable('install').set({ least_saving_minor: 500 }).execute()
  })

  it('says of a product that is reported as used alone what was reported', async () => {
    const used = await product(world.db)
    const body = sighting(used.id, shop.id, { seenOn: today(), condition: 'used', priceMinor: 4500, lastDay: null })
    expect((await member.send('POST', '/api/sightings', { body })).status).toBe(201)
    const [line] = (await ask({ lines: [{ productId: used.id, quantity: 1 }] })).body.lines
    expect(line).toMatchObject({ title: 'No price known', payTodayMinor: null, buyAtTagMinor: null })
    expect(line?.words).toContain('Reported only as used, $45.00')
  })

  it('says nothing of a used price at a store where the line is not bought', async () => {
    const used = await product(world.db)
    const elsewhere = await store(world.db)
    const body = sighting(used.id, elsewhere.id, { seenOn: today(), condition: 'used', priceMinor: 4500, lastDay: null })
    expect((await member.send('POST', '/api/sightings', { body })).status).toBe(201)
    const words = async (storeId: string) =>
      (await ask({ lines: [{ productId: used.id, quantity: 1, storeId }] })).body.lines[0]?.words ?? ''
    expect([await words(elsewhere.id), await words(shop.id)]).toEqual([
      expect.stringContaining('Reported only as used, $45.00'),
      expect.stringContaining('Nobody has reported a price'),
    ])
  })

  it('adds tax where a build is added up, for as many as are bought', async () => {
    const { body } = await ask({ lines: [{ productId: heater.id, quantity: 2, storeId: shop.id }], withTax: true })
    // Two at 100.00 with 10 % tax are 220.00.
    expect([body.lines[0]?.payTodayMinor, body.total?.payTodayMinor]).toEqual([22_000, 22_000])
  })

  it('a product without a price is told as not known, and makes no total', async () => {
    const other = await product(world.db)
    const { body } = await ask({
      lines: [
        { productId: heater.id, quantity: 1 },
        { productId: other.id, quantity: 1 },
      ],
    })
    expect(body.lines[1]).toMatchObject({ payTodayMinor: null, expectedPaidMinor: null, priceToBuyAtMinor: null, basis: 'too_little' })
    expect(body.total).toBeNull()
  })

  it('is frozen line by line with a version that says by when, at what a week’s wait is worth to the customer', async () => {
    const advisor = await world.signIn('advisor')
    const stocked = await stockedShop(world, member)
    const draft = draftOf({ ...stocked, heater })
    const need = { ...draft.need, byDate: addDays(today(), 300), weekWaitMinor: 100 }
    const quote = await newQuote(advisor, { ...draft, need })
    const issued = await issue(advisor, quote)
    expect([issued.status, issued.text.slice(0, 200)]).toEqual([200, expect.any(String)])
    const { body } = await advisor.send<RevisionDocument>('GET', `/api/quotes/${quote.id}/revisions/1`)
    const [build] = body.builds
    expect(build?.advice?.map(({ lineId }) => lineId)).toEqual(['t', 'h'])
    expect(build?.advice?.[1]).toMatchObject({ advice: 'wait', by: need.byDate, title: expect.stringMatching(/^Wait: buy at /) as string })
    expect(build?.advice?.[1]?.words).toContain('A week’s wait is counted as $1.00.')
    expect(body.need.weekWaitMinor).toBe(100)
  })

  it('refuses days that are past or too far', async () => {
    expect((await ask({ until: addDays(today(), -1) })).status).toBe(422)
    expect((await ask({ until: addDays(today(), 367) })).status).toBe(422)
    expect((await ask({ until: today() })).status).toBe(200)
  })
})

describe('the price to buy at of a watch', () => {
  it('is the one that the product’s page tells, with tax, also where one store prints it in the price and another adds it', async () => {
    const within = await store(world.db, { taxBasisPoints: 1000, pricesIncludeTax: true })
    const { id: productId } = await product(world.db)
    for (const [at, priceMinor] of [
      [shop, 10_000],
      [within, 10_900],
    ] as const) {
      const body = sighting(productId, at.id, { seenOn: today(), condition: 'shelf', priceMinor, lastDay: null })
      expect((await member.send('POST', '/api/sightings', { body })).status).toBe(201)
    }
    const told = (await ask({ lines: [{ productId, quantity: 1 }], withTax: true })).body.lines[0]
    // 100.00 and 10 % on it are 110.00; 109.00 holds its tax.
    expect(told).toMatchObject({ payTodayMinor: 10_900, tagsAgree: false })
    const limitOf = limits(world.db, await getInstall(world.db), today())
    const watch = { limitMinor: null, byDay: addDays(today(), 60), regionId: null, storeIds: [] as string[] } as Watch
    expect(await limitOf(watch, productId)).toBe(told?.priceToBuyAtMinor)
    const atShop = (await ask({ lines: [{ productId, quantity: 1 }], storeIds: [shop.id], withTax: true })).body.lines[0]
    expect(await limitOf({ ...watch, storeIds: [shop.id] }, productId)).toBe(atShop?.priceToBuyAtMinor)
    expect(atShop).toMatchObject({ payTodayMinor: 11_000, tagsAgree: true })
  })

  it('is that of the stores of its region, of them those that it names', async () => {
    const [near, far] = [await store(world.db), await store(world.db)]
    const { id: productId } = await product(world.db)
    for (const [at, priceMinor] of [
      [near, 10_000],
      [far, 5_000],
    ] as const) {
      const body = sighting(productId, at.id, { seenOn: today(), condition: 'shelf', priceMinor, lastDay: null })
      expect((await member.send('POST', '/api/sightings', { body })).status).toBe(201)
    }
    const region = async (name: string, storeIds: string[]): Promise<string> => {
      const made = await inTransaction(world.db, (trx) => createRegion(trx, { name, storeIds }))
      if (!made.ok) throw new Error(made.refusal.message)
      return made.value.id
    }
    const [valley, both] = [await region('Valley', [near.id]), await region('Both', [near.id, far.id])]
    const limitOf = limits(world.db, await getInstall(world.db), today())
    const limit = (regionId: string | null, storeIds: string[]) =>
      limitOf({ limitMinor: null, byDay: addDays(today(), 60), regionId, storeIds } as Watch, productId)
    const [atNear, atFar] = [await limit(null, [near.id]), await limit(null, [far.id])]
    expect(atNear).toBeGreaterThan(atFar ?? Infinity)
    expect([await limit(valley, []), await limit(both, []), await limit(both, [near.id])]).toEqual([atNear, atFar, atNear])
    expect(await limit(valley, [far.id]), 'nowhere to buy it').toBeNull()
  })
})
