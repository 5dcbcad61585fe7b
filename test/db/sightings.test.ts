import { sql } from 'kysely'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import { isAccepted } from '../../core/pricing/sighting.ts'
import { board, recordOfPairs } from '../../db/board.ts'
import { findSighting, insertSighting, sightingRowsOfProduct, sightingsOfProducts } from '../../db/sightings.ts'
import { voteOnSighting, withdrawSighting } from '../../db/sighting-votes.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, person, phoneId, product, sighting, store, unique } from '../support/rows.ts'

let test: TestDatabase
let reporter: Viewer
let other: Viewer
let heater: Product
let shop: Store
beforeAll(async () => {
  test = await testDatabase()
})
beforeEach(async () => {
  reporter = await person(test.db)
  other = await person(test.db)
  heater = await product(test.db)
  shop = await store(test.db)
})
afterAll(() => test.close())

const post = (fields = {}, doubt: Parameters<typeof insertSighting>[3] = null, by = reporter) =>
  insertSighting(test.db, by, sighting(heater.id, shop.id, fields), doubt)
const vote = (by: Viewer, id: string, what: 'confirm' | 'dispute') =>
  test.db.transaction().execute((trx) => voteOnSighting(trx, by, id, what))
const tooDeep = { code: 'too_deep', words: 'less than a third of the regular price' } as const

describe('posting', () => {
  it('gives the sighting back with names, and whose it is', async () => {
    const body = sighting(heater.id, shop.id, {
      condition: 'sale',
      priceMinor: 3999,
      printedRegularMinor: 4999,
      lastDay: '2026-10-25',
      note: 'by the till',
    })
    const { sighting: row, repeated } = granted(await insertSighting(test.db, reporter, body, tooDeep))
    expect(repeated).toBe(false)
    expect(row).toMatchObject({
      ...body,
      doubt: tooDeep,
      productName: heater.name,
      storeName: shop.name,
      reporterId: reporter.id,
      own: true,
      mayVote: false,
    })
    expect(await findSighting(test.db, other, body.id)).toMatchObject({ own: false, mayVote: true, myVote: null })
  })

  it('the same thing again answers with the stored one, and there is one row', async () => {
    const body = sighting(heater.id, shop.id)
    const first = granted(await insertSighting(test.db, reporter, body, null))
    const again = granted(await insertSighting(test.db, reporter, body, tooDeep))
    expect(again).toEqual({ sighting: first.sighting, repeated: true })
    expect(await sightingsOfProducts(test.db, [heater.id])).toHaveLength(1)
  })

  it('the same thing twice at one moment makes one row', async () => {
    const body = sighting(heater.id, shop.id)
    const answers = await Promise.all([1, 2, 3].map(() => insertSighting(test.db, reporter, body, null)))
    expect(answers.map((answer) => granted(answer).repeated).filter((repeated) => !repeated)).toHaveLength(1)
  })

  it.each([
    ['price', { priceMinor: 4899 }],
    ['day', { seenOn: '2026-10-19' }],
    ['note', { note: 'seen twice' }],
    ['kind of price', { condition: 'clearance' as const }],
  ])('another %s under the same id is refused, and the first one stands', async (_, change) => {
    const body = sighting(heater.id, shop.id)
    granted(await insertSighting(test.db, reporter, body, null))
    expect(await insertSighting(test.db, reporter, { ...body, ...change }, null)).toMatchObject({
      ok: false,
      refusal: { code: 'id_taken' },
    })
    expect(await findSighting(test.db, reporter, body.id)).toMatchObject(body)
  })

  it("another person's sighting under the same id is refused", async () => {
    const body = sighting(heater.id, shop.id)
    granted(await insertSighting(test.db, reporter, body, null))
    expect(await insertSighting(test.db, other, body, null)).toMatchObject({ ok: false, refusal: { code: 'id_taken' } })
  })

  it('is taken 120 times an hour from one person; then the wait is told, others go on, and a repeat is still answered', async () => {
    const first = sighting(heater.id, shop.id)
    granted(await insertSighting(test.db, reporter, first, null))
    for (let count = 2; count <= 120; count += 1) granted(await post())
    const refused = await post()
    expect(refused).toMatchObject({
      ok: false,
      refusal: { code: 'too_many', message: expect.stringContaining('120 sightings within an hour') },
    })
    const waitS = refused.ok ? 0 : refused.refusal.retryAfterS
    expect(waitS).toBeGreaterThan(3_400)
    expect(waitS).toBeLessThanOrEqual(3_600)
    expect(granted(await insertSighting(test.db, reporter, first, null)).repeated).toBe(true)
    granted(await post({}, null, other))
    // As if the first of them were over an hour old.
    await sql`update sighting set received_at = now() - interval '61 minutes' where id = ${first.id}`.execute(test.db)
    granted(await post())
    expect(await post()).toMatchObject({ ok: false, refusal: { code: 'too_many' } })
  })

  it('of an unknown or archived product or store is refused with the field', async () => {
    const nobody = '00000000-0000-4000-8000-000000000000'
    const archived = await product(test.db, { archived: true })
    const shut = await store(test.db, { archived: true })
    const refusal = async (productId: string, storeId: string) => {
      const answer = await insertSighting(test.db, reporter, sighting(productId, storeId), null)
      return answer.ok ? 'taken' : `${answer.refusal.code} ${answer.refusal.field}`
    }
    expect(await refusal(nobody, shop.id)).toBe('product_unknown productId')
    expect(await refusal(archived.id, shop.id)).toBe('product_archived productId')
    expect(await refusal(heater.id, nobody)).toBe('store_unknown storeId')
    expect(await refusal(heater.id, shut.id)).toBe('store_archived storeId')
  })

  it.each([{ priceMinor: 0 }, { lastDay: '2026-10-01', condition: 'sale' as const }, { lastDay: '2026-11-01' }])(
    'of what cannot be (%o) is refused by the database too',
    async (fields) => {
      await expect(post(fields)).rejects.toThrow(/sighting_(price|last_day)/)
    },
  )
})

describe('confirming and disputing', () => {
  it('counts one vote a person, and a later one replaces it', async () => {
    const { id } = granted(await post()).sighting
    granted(await vote(other, id, 'confirm'))
    expect(granted(await vote(other, id, 'confirm'))).toMatchObject({ confirmations: 1, disputes: 0, myVote: 'confirm' })
    expect(granted(await vote(other, id, 'dispute'))).toMatchObject({ confirmations: 0, disputes: 1, myVote: 'dispute' })
    expect(granted(await vote(await person(test.db), id, 'confirm'))).toMatchObject({ confirmations: 1, disputes: 1 })
  })

  it('two people at one moment both count', async () => {
    const { id } = granted(await post()).sighting
    await Promise.all([vote(other, id, 'confirm'), vote(await person(test.db), id, 'confirm')])
    expect((await findSighting(test.db, other, id))?.confirmations).toBe(2)
  })

  it('of a list counts from the second on among those tied to who imported it, and from the first among others', async () => {
    const importer = await person(test.db, 'manager')
    const [one, two] = [await person(test.db, 'member', importer.id), await person(test.db, 'member', importer.id)]
    const { id } = granted(await post({}, tooDeep, importer)).sighting
    await test.db.updateTable('sighting').set({ imported: true }).where('id', '=', id).execute()
    const counted = async () =>
      test.db.selectFrom('sighting').select(['confirmations', 'disputes', 'accepted']).where('id', '=', id).executeTakeFirst()
    expect(granted(await vote(one, id, 'confirm'))).toMatchObject({
      myVote: 'confirm',
      oneMore: expect.stringContaining('One more is needed') as string,
    })
    expect(await counted()).toEqual({ confirmations: 0, disputes: 0, accepted: false })
    expect(granted(await vote(two, id, 'confirm'))).toMatchObject({ confirmations: 1, oneMore: null })
    expect(await counted()).toMatchObject({ accepted: true })
    expect(granted(await vote(two, id, 'dispute'))).toMatchObject({
      confirmations: 0,
      disputes: 0,
      oneMore: expect.stringContaining('disputes it too') as string,
    })
    expect(granted(await vote(other, id, 'confirm'))).toMatchObject({ confirmations: 1, oneMore: null })
    expect(await counted()).toMatchObject({ accepted: true })
  })

  it('is not for the reporter, nor for who invited or was invited by the reporter', async () => {
    const inviter = await person(test.db)
    const invited = await person(test.db, 'member', inviter.id)
    const { id } = granted(await post({}, null, invited)).sighting
    const ofInviter = granted(await post({ id: phoneId() }, null, inviter)).sighting
    for (const [who, which] of [
      [invited, id],
      [inviter, id],
      [invited, ofInviter.id],
    ] as const) {
      expect(await vote(who, which, 'confirm')).toMatchObject({ ok: false, refusal: { code: 'own' } })
      expect(await findSighting(test.db, who, which)).toMatchObject({ own: true, mayVote: false, confirmations: 0 })
    }
    expect((await vote(other, id, 'confirm')).ok).toBe(true)
  })

  it('of a withdrawn or unknown one is refused', async () => {
    const { id } = granted(await post()).sighting
    granted(await withdrawSighting(test.db, reporter, id))
    expect(await vote(other, id, 'confirm')).toMatchObject({ ok: false, refusal: { code: 'withdrawn' } })
    expect(await vote(other, phoneId(), 'confirm')).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
  })
})

describe('withdrawing', () => {
  it('is for the reporter and the manager', async () => {
    const { id } = granted(await post()).sighting
    expect(await withdrawSighting(test.db, other, id)).toMatchObject({ ok: false, refusal: { code: 'not_yours' } })
    expect(await withdrawSighting(test.db, await person(test.db, 'advisor'), id)).toMatchObject({
      ok: false,
      refusal: { code: 'not_yours' },
    })
    expect(granted(await withdrawSighting(test.db, await person(test.db, 'manager'), id)).withdrawn).toBe(true)
    expect(granted(await withdrawSighting(test.db, reporter, id)).withdrawn).toBe(true)
  })

  it('takes it out of the prices, and the record still shows it', async () => {
    const { id } = granted(await post()).sighting
    granted(await withdrawSighting(test.db, reporter, id))
    expect(await sightingsOfProducts(test.db, [heater.id])).toEqual([])
    expect(await sightingRowsOfProduct(test.db, other, heater.id)).toMatchObject([{ id, withdrawn: true, mayVote: false }])
  })
})

it('accepts in the database exactly what the rule accepts', async () => {
  for (const doubt of [null, tooDeep])
    for (const withdrawn of [false, true])
      for (const confirmations of [0, 1, 2])
        for (const disputes of [0, 1, 2]) {
          const { id } = granted(await post({ id: phoneId() }, doubt)).sighting
          await test.db
            .updateTable('sighting')
            .set({ confirmations, disputes, withdrawn_at: withdrawn ? new Date() : null })
            .where('id', '=', id)
            .execute()
          const row = await test.db.selectFrom('sighting').select('accepted').where('id', '=', id).executeTakeFirstOrThrow()
          expect(row.accepted, JSON.stringify({ doubt, withdrawn, confirmations, disputes })).toBe(
            isAccepted({ doubt, withdrawn, confirmations, disputes }),
          )
        }
})

describe('the record', () => {
  it('is oldest first for prices, newest first for the reader, from a day on where asked', async () => {
    for (const seenOn of ['2026-09-01', '2026-10-01', '2026-08-01']) granted(await post({ id: phoneId(), seenOn }))
    const days = (rows: Array<{ seenOn: string }>) => rows.map((row) => row.seenOn)
    expect(days(await sightingsOfProducts(test.db, [heater.id]))).toEqual(['2026-08-01', '2026-09-01', '2026-10-01'])
    expect(days(await sightingsOfProducts(test.db, [heater.id], '2026-09-01'))).toEqual(['2026-09-01', '2026-10-01'])
    expect(days(await sightingRowsOfProduct(test.db, other, heater.id))).toEqual(['2026-10-01', '2026-09-01', '2026-08-01'])
    expect(await sightingsOfProducts(test.db, ['no id', ''])).toEqual([])
  })

  it('of pairs leaves out the same product at another store', async () => {
    granted(await post())
    const elsewhere = await store(test.db)
    granted(await insertSighting(test.db, reporter, sighting(heater.id, elsewhere.id), null))
    const rows = await recordOfPairs(test.db, [{ productId: heater.id, storeId: shop.id }], '2026-01-01')
    expect(rows.map((row) => row.storeId)).toEqual([shop.id])
  })
})

describe('the board', () => {
  const since = '2026-05-01'
  it('shows the newest accepted sighting of each product and store, newest first', async () => {
    const elsewhere = await store(test.db)
    const at = async (storeId: string, seenOn: string, doubt: typeof tooDeep | null = null) =>
      granted(await insertSighting(test.db, reporter, sighting(heater.id, storeId, { seenOn }), doubt)).sighting.id
    await at(shop.id, '2026-10-01')
    const newest = await at(shop.id, '2026-10-05')
    await at(shop.id, '2026-10-09', tooDeep)
    const there = await at(elsewhere.id, '2026-10-07')
    await at((await store(test.db)).id, '2026-04-30')
    const seen = await board(test.db, other, { q: heater.name, since, limit: 10, offset: 0 })
    expect(seen.rows.map((row) => row.sighting.id)).toEqual([there, newest])
    expect(seen.total).toBe(2)
    expect(seen.rows[0]).toMatchObject({ kind: 'heater', sighting: { productName: heater.name, mayVote: true } })
    const page = await board(test.db, other, { q: heater.name, since, limit: 1, offset: 1 })
    expect(page).toMatchObject({ total: 2, rows: [{ sighting: { id: newest } }] })
    const one = await board(test.db, other, { storeId: elsewhere.id, since, limit: 10, offset: 0 })
    expect(one.rows.map((row) => row.sighting.id)).toEqual([there])
  })

  it('finds a product by words in any order, a slip in one of them forgiven', async () => {
    const lamp = await product(test.db, { kind: 'light', name: 'Glimmerwick Long Row', maker: 'Glimmerwick', spec: {} })
    granted(await insertSighting(test.db, reporter, sighting(lamp.id, shop.id), null))
    const found = async (q: string) => (await board(test.db, other, { q, since, limit: 10, offset: 0 })).total
    for (const q of ['glimmerwick', 'row glimmerwick', 'glimerwick', 'glimmerwikc lnog', 'light glimmerwick'])
      expect(await found(q), q).toBe(1)
    expect(await found('glimmerwick short')).toBe(0)
    expect(await found('  ')).toBeGreaterThan(1)
  })

  it('narrows by kind, and shows no archived product', async () => {
    const word = unique('Boardword')
    const lamp = await product(test.db, { kind: 'light', name: word, spec: {} })
    granted(await insertSighting(test.db, reporter, sighting(lamp.id, shop.id), null))
    const count = async (more = {}) => (await board(test.db, other, { q: word, since, limit: 10, offset: 0, ...more })).total
    expect(await count({ kind: 'light' })).toBe(1)
    expect(await count({ kind: 'heater' })).toBe(0)
    await test.db.updateTable('product').set({ archived: true }).where('id', '=', lamp.id).execute()
    expect(await count()).toBe(0)
  })
})
