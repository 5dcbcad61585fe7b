import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Worker } from '../../api/jobs/worker.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { ImportView } from '../../core/exchange/import-view.ts'
import { product, store, unique } from '../support/rows.ts'
import { ended, importFile, workIn, type Sending } from './support/imports.ts'
import { today } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

const DAY_MS = 86_400_000
let world: World
let worker: Worker
let manager: Browser
let aheadMs = 0
beforeAll(async () => {
  world = await createWorld({ clock: () => Date.now() + aheadMs })
  worker = workIn(world)
  manager = await world.signIn('manager')
})
afterAll(async () => {
  await worker.stop()
  await world.close()
})

/** Tries a file, lets something happen, then writes it. */
async function triedThenWritten(csv: string, sending: Sending, meanwhile: () => Promise<unknown>): Promise<[ImportView, ImportView]> {
  const tried = await importFile(manager, csv, { ...sending, dryRun: true })
  expect(tried.outcome).toMatchObject({ ready: true, faults: 0 })
  await meanwhile()
  expect((await manager.send('POST', `/api/imports/${tried.id}/write`)).status).toBe(200)
  return [tried, await ended(manager, tried.id)]
}
/** What somebody does to a product between the two. */
const change = async (id: string, values: { name?: string; archived?: boolean; warranty_months?: number }) =>
  world.db
    .updateTable('product')
    .set((eb) => ({ ...values, version: eb('version', '+', 1) }))
    .where('id', '=', id)
    .execute()
const kept = (name: string) => world.db.selectFrom('product').selectAll().where('name', '=', name).executeTakeFirst()

describe('a file of products that is written some time after it was tried', () => {
  it.each([
    ['the same', 150, { updates: 0, unchanged: 1 }],
    ['changed', 100, { updates: 1, unchanged: 0 }],
  ])('makes one anew that was to be %s and has another name by now', async (_what, powerW, before) => {
    const here = await product(world.db)
    const csv = `name,powerW,adjustable\n${here.name},${powerW},yes`
    const [tried, written] = await triedThenWritten(csv, { kind: 'heater' }, () => change(here.id, { name: unique('Other name') }))
    expect(tried.outcome).toMatchObject({ ...before, creates: 0 })
    expect([written.words, written.outcome]).toMatchObject([null, { applied: true, creates: 1, updates: 0, unchanged: 0 }])
    const made = await kept(here.name)
    expect(made).toMatchObject({ spec: { powerW, adjustable: true }, version: 1 })
    expect(made?.id).not.toBe(here.id)
  })

  it.each([
    ['heater', 'powerW', '100'],
    ['kit', 'parts', null],
  ] as const)('without a column for it leaves a %s archived that was archived meanwhile, and its warranty', async (kind, heading, cell) => {
    const [old, fresh] = [await product(world.db), await product(world.db)]
    const here = await product(world.db, kind === 'kit' ? { kind, spec: {}, parts: [{ productId: old.id, quantity: 1 }] } : {})
    const csv = `name,${heading}\n${here.name},${cell ?? fresh.name}`
    const [tried, written] = await triedThenWritten(csv, { kind }, () => change(here.id, { archived: true, warranty_months: 30 }))
    expect([tried.outcome, written.outcome]).toMatchObject([{ updates: 1 }, { applied: true, updates: 1 }])
    const after = await kept(here.name)
    expect(after).toMatchObject({ id: here.id, archived: true, warranty_months: 30 })
    if (kind === 'heater') expect(after?.spec).toEqual({ powerW: 100 })
    const parts = await world.db.selectFrom('kit_part').select('part_id').where('kit_id', '=', here.id).execute()
    expect(parts).toEqual(kind === 'kit' ? [{ part_id: fresh.id }] : [])
  })

  it('with a column for it says so, whatever was done meanwhile', async () => {
    const here = await product(world.db, { warrantyMonths: 12 })
    const csv = `name,powerW,archived,warrantyMonths\n${here.name},100,no,24`
    await triedThenWritten(csv, { kind: 'heater' }, () => change(here.id, { archived: true, warranty_months: 30 }))
    expect(await kept(here.name)).toMatchObject({ archived: false, warranty_months: 24 })
  })

  it('finds a livestock group by the name that the file has', async () => {
    const group = async (id: string, name: string) => {
      const like = await world.db.selectFrom('livestock_group').selectAll().executeTakeFirstOrThrow()
      await world.db
        .insertInto('livestock_group')
        .values({ ...like, id, name })
        .execute()
    }
    await group('brook-one', 'Brook fish')
    const name = unique('Animal')
    await triedThenWritten(`name,group\n${name},Brook fish`, { kind: 'livestock' }, async () => {
      await world.db.updateTable('livestock_group').set({ name: 'Brook fish of old' }).where('id', '=', 'brook-one').execute()
      await group('brook-two', 'Brook fish')
    })
    expect(await kept(name)).toMatchObject({ spec: { group: 'brook-two' } })
  })
})

describe('a file of another set that is written some time after it was tried', () => {
  it.each([
    ['the same', 'by telephone', { updates: 0, unchanged: 1 }],
    ['changed', 'at the door', { updates: 1, unchanged: 0 }],
  ])('makes a customer anew who was to be %s and has another name by now', async (_what, note, before) => {
    const name = unique('Customer')
    const values = { name, reach: 'ask', note: 'by telephone' }
    const { id } = await world.db.insertInto('customer').values(values).returning('id').executeTakeFirstOrThrow()
    const rename = () =>
      world.db
        .updateTable('customer')
        .set({ name: unique('Other'), version: 2 })
        .where('id', '=', id)
        .execute()
    const [tried, written] = await triedThenWritten(`name,reach,note\n${name},ask,${note}`, { set: 'customers' }, rename)
    expect(tried.outcome).toMatchObject({ ...before, creates: 0 })
    expect([written.words, written.outcome]).toMatchObject([null, { applied: true, creates: 1, updates: 0, unchanged: 0 }])
    expect(await world.db.selectFrom('customer').select('note').where('name', '=', name).execute()).toEqual([{ note }])
  })

  it('puts a sighting where product and store of these names are by then', async () => {
    const [seen, shop] = [await product(world.db), await store(world.db)]
    const csv = `product,store,condition,price,seenOn\n${seen.name},${shop.name},shelf,12.50,${today()}`
    const places: { productId?: string; storeId?: string } = {}
    await triedThenWritten(csv, { set: 'sightings' }, async () => {
      await change(seen.id, { name: unique('Other name') })
      await world.db
        .updateTable('store')
        .set({ name: unique('Other store') })
        .where('id', '=', shop.id)
        .execute()
      places.productId = (await product(world.db, { name: seen.name })).id
      places.storeId = (await store(world.db, { name: shop.name })).id
    })
    const rows = await world.db.selectFrom('sighting').select(['product_id as productId', 'store_id as storeId']).execute()
    expect(rows).toEqual([places])
  })

  it('sets a price of the product that has the name by then, from the day on that the file was tried', async () => {
    await store(world.db, { own: true })
    const here = await product(world.db)
    let successor = ''
    const triedOn = today()
    await triedThenWritten(`product,price\n${here.name},39.90`, { set: 'price_list' }, async () => {
      await change(here.id, { name: unique('Other name') })
      successor = (await product(world.db, { name: here.name })).id
      aheadMs = DAY_MS
    })
    aheadMs = 0
    const prices = await world.db.selectFrom('list_price').select(['product_id', 'valid_from', 'price_minor']).execute()
    expect(prices).toEqual([{ product_id: successor, valid_from: triedOn, price_minor: 3990 }])
  })
})

/** An id that another install gave. */
const foreign = (): string => crypto.randomUUID()

describe('a file of another install', () => {
  it('is taken: a product by its number, else by kind and name, else as a new one, and a kit’s parts by the ids that the file gives them', async () => {
    const [numbered, named] = [await product(world.db, { gtin: '4006381333931' }), await product(world.db, { maker: 'Torvane' })]
    const [twin, kit, part] = [unique('Twin'), unique('Kit'), foreign()]
    const csv = [
      'kind,id,name,maker,gtin,powerW,lengthMm,widthMm,heightMm,parts',
      `heater,${foreign()},${unique('Renamed')},,4006381333931,150,,,,`,
      `heater,${foreign()},${named.name},Torvane,,175,,,,`,
      `heater,${part},${twin},,,75,,,,`,
      `kit,${foreign()},${kit},,,,,,,${part} x 2`,
    ].join('\n')
    const view = await importFile(manager, csv, { set: 'catalog' })
    expect(view, JSON.stringify(view.faults)).toMatchObject({ outcome: { applied: true, updates: 2, creates: 2 }, faults: [] })
    const read = async (id: string) => (await manager.send<Product>('GET', `/api/products/${id}`)).body
    expect(await read(numbered.id)).toMatchObject({ spec: { powerW: 150 } })
    expect(await read(named.id)).toMatchObject({ spec: { powerW: 175 } })
    const made = await world.db.selectFrom('product').select(['id', 'name']).where('name', 'in', [twin, kit]).execute()
    const idOf = (name: string) => made.find((one) => one.name === name)?.id ?? 'none'
    expect((await read(idOf(kit))).parts).toEqual([{ productId: idOf(twin), quantity: 2 }])
  })

  it('does not put another maker’s product of the same name in the place of ours', async () => {
    const ours = await product(world.db, { maker: 'Torvane' })
    const view = await importFile(manager, `id,name,maker,powerW\n${foreign()},${ours.name},Brimley,25`, { kind: 'heater' })
    expect(view.faults).toMatchObject([{ row: 2, column: 'maker' }])
  })

  it('where it names one of ours by its name alone, is a fault told once, tried or stored, and changes nothing', async () => {
    const ours = [
      await product(world.db, { maker: 'Torvane' }),
      await product(world.db, { maker: 'Torvane' }),
      await product(world.db, { maker: 'Torvane' }),
      await product(world.db),
    ]
    const rows = ours.map(({ name }, index) => `${foreign()},${name},${index < 3 ? '' : 'Brimley'},yes,25`)
    for (const dryRun of [true, false]) {
      const view = await importFile(manager, ['id,name,maker,archived,powerW', ...rows].join('\n'), { kind: 'heater', dryRun })
      expect(view.faults).toMatchObject([{ row: 2, column: 'maker', rows: 4 }])
      expect(view.outcome).toMatchObject({ applied: false })
    }
    for (const one of ours)
      expect((await manager.send<Product>('GET', `/api/products/${one.id}`)).body).toMatchObject({ version: one.version, archived: false })
  })

  it('empties nothing of ours that it names by name and maker, puts nothing away and no note in place of ours; without its id it may', async () => {
    const ours = await product(world.db, {
      maker: 'Torvane',
      gtin: '6291041500213',
      note: 'Runs warm',
      oversize: true,
      spec: { powerW: 150, lengthMm: 240 },
    })
    const file = (id: string) => `id,name,maker,gtin,note,archived,powerW,lengthMm\n${id},${ours.name},torvane,,from elsewhere,yes,175,\n`
    const view = await importFile(manager, file(foreign()), { kind: 'heater' })
    expect(view, JSON.stringify(view.faults)).toMatchObject({ outcome: { applied: true, updates: 1 } })
    const read = async () => (await manager.send<Product>('GET', `/api/products/${ours.id}`)).body
    const kept = { gtin: '6291041500213', note: 'Runs warm', oversize: true, archived: false }
    expect(await read()).toMatchObject({ ...kept, spec: { powerW: 175, lengthMm: 240 } })
    await importFile(manager, file(''), { kind: 'heater' })
    expect(await read()).toMatchObject({ gtin: null, note: 'from elsewhere', archived: true })
  })

  it('of sightings finds product and store by name, and a store that is not here is one fault for all of its rows', async () => {
    const [seen, shop] = [await product(world.db), await store(world.db)]
    const row = (place: string, price: number) => `${foreign()},${seen.name},${foreign()},${place},shelf,${price},${today()}`
    const head = 'productId,product,storeId,store,condition,price,seenOn'
    const refused = await importFile(manager, [head, ...[5, 6, 7, 8, 9].map((price) => row('Nowhere', price))].join('\n'), {
      set: 'sightings',
    })
    expect(refused.faults).toMatchObject([{ row: 2, column: 'store', rows: 5 }])
    const taken = await importFile(manager, [head, row(shop.name, 5)].join('\n'), { set: 'sightings' })
    expect(taken, JSON.stringify(taken.faults)).toMatchObject({ outcome: { applied: true, creates: 1 } })
    const stored = await world.db.selectFrom('sighting').select(['product_id', 'imported']).where('store_id', '=', shop.id).execute()
    expect(stored).toEqual([{ product_id: seen.id, imported: true }])
  })

  it('of sightings takes the store of the id where another has the name that the row tells', async () => {
    const [seen, meant, called] = [await product(world.db), await store(world.db), await store(world.db)]
    const csv = `productId,product,storeId,store,condition,price,seenOn\n${seen.id},${seen.name},${meant.id},${called.name},shelf,5,${today()}`
    expect((await importFile(manager, csv, { set: 'sightings' })).outcome).toMatchObject({ applied: true, creates: 1 })
    const stored = await world.db.selectFrom('sighting').select('store_id').where('product_id', '=', seen.id).execute()
    expect(stored).toEqual([{ store_id: meant.id }])
  })
})
