import { readdir, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import fc from 'fast-check'
import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { ImportView } from '../../core/exchange/import-view.ts'
import type { Worker } from '../../api/jobs/worker.ts'
import { saveUpload } from '../../api/exchange/upload.ts'
import type { ProblemError } from '../../api/http/problem.ts'
import { createProduct } from '../../db/products.ts'
import { insertSighting } from '../../db/sightings.ts'
import { engine } from '../support/database.ts'
import { granted, heater, product, sighting, store } from '../support/rows.ts'
import { addressOf, ended, importFile, sendFile, workIn } from './support/imports.ts'
import { today } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let worker: Worker
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
  worker = workIn(world)
  manager = await world.signIn('manager')
})
afterAll(async () => {
  await worker.stop()
  await world.close()
})

const uploads = () => readdir(join(world.deps.config.dataDir, 'imports'))
const exported = async (set: string, query = ''): Promise<string> => (await manager.send('GET', `/api/exports/${set}${query}`)).text
const customers = (count: number): string =>
  ['name,reach,note', ...Array.from({ length: count }, (_, index) => `Customer ${index},ask ${index},`)].join('\n')
/** The worker does nothing until it is let go; what is sent meanwhile waits. */
async function paused<Value>(work: () => Promise<Value>): Promise<Value> {
  await worker.stop()
  try {
    return await work()
  } finally {
    worker = workIn(world)
  }
}

describe('an export', () => {
  const FORMS: Array<[string, string, string]> = [
    ['safe CSV', '?format=csv', 'text/csv'],
    ['raw CSV', '?format=csv&text=raw', 'text/csv'],
    ['JSON', '?format=json', 'application/json'],
  ]
  /** What a name or a note may be, with much that a spreadsheet, a CSV or a list of parts could take for something else. */
  const text = fc
    .string({
      unit: fc.constantFrom("'", '"', '=', '+', '-', '@', '\uFF1D', ',', ';', ' ', '\n', 'a', 'É', '1', 'x'),
      minLength: 1,
      maxLength: 12,
    })
    .map((value) => value.trim())
    .filter((value) => value !== '')

  it.each(FORMS)(
    'of products and kits as %s is read back without a change',
    async (_what, query, type) => {
      await fc.assert(
        fc.asyncProperty(
          fc.uniqueArray(text, { minLength: 2, maxLength: 4, selector: (one) => one.toLowerCase() }),
          text,
          async (names, note) => {
            await world.db.deleteFrom('kit_part').execute()
            await world.db.deleteFrom('product').execute()
            const parts = []
            for (const name of names)
              parts.push(
                granted(await createProduct(world.db, heater({ name, note, maker: note, spec: { powerW: 50.5, adjustable: false } }))),
              )
            const [first] = parts
            await product(world.db, { kind: 'light', name: first?.name ?? '', spec: {}, archived: true })
            granted(
              await createProduct(
                world.db,
                heater({
                  kind: 'kit',
                  name: note,
                  spec: {},
                  parts: parts.map(({ id }, index) => ({ productId: id, quantity: index + 1 })),
                }),
              ),
            )
            const file = await exported('catalog', query)
            const { outcome, faults } = await importFile(manager, file, { type })
            expect(faults).toEqual([])
            expect(outcome).toMatchObject({ rows: names.length + 2, creates: 0, updates: 0, unchanged: names.length + 2, applied: true })
          },
        ),
        { numRuns: 12 },
      )
    },
    180_000,
  )

  it.each(FORMS)('of the catalog as %s makes it anew where there is nothing', async (_what, query, type) => {
    const wipe = async (): Promise<void> => {
      await world.db.deleteFrom('kit_part').execute()
      await world.db.deleteFrom('product').execute()
    }
    await wipe()
    const [one, two] = [
      await product(world.db, { name: 'Halden 60 x 30' }),
      await product(world.db, { note: 'two\nlines', archived: true }),
    ]
    await product(world.db, { kind: 'light', name: one.name.toUpperCase().replace('X', 'y'), spec: {} })
    const parts = [one, two].map(({ id }, index) => ({ productId: id, quantity: index + 1 }))
    granted(await createProduct(world.db, heater({ kind: 'kit', name: 'A kit before its parts', spec: {}, parts })))
    const before = (await exported('catalog', query)).replaceAll(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, '')
    const file = query.includes('json') ? before.replaceAll('"id":"",', '') : before
    await wipe()
    const { outcome, faults, words } = await importFile(manager, file, { type })
    expect([faults, words]).toEqual([[], null])
    expect(outcome?.creates).toBeGreaterThan(2)
    expect((await exported('catalog', query)).replaceAll(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, '')).toBe(before)
  })

  it.each(FORMS)('of sightings as %s is read back without a change, and names nobody', async (_what, query, type) => {
    const [seen, shop, member] = [await product(world.db), await store(world.db), await world.signIn('member')]
    const viewer = { id: member.personId, role: 'member' as const }
    for (const note of ['=2+2', "'-quoted", null])
      granted(
        await insertSighting(world.db, viewer, sighting(seen.id, shop.id, { seenOn: today(), note, printedRegularMinor: 5999 }), null),
      )
    const file = await exported('sightings', query)
    expect(file).not.toContain(member.signInName)
    expect(file).not.toContain(member.personId)
    const before = await world.db.selectFrom('sighting').selectAll().orderBy('id').execute()
    const { outcome, faults } = await importFile(manager, file, { set: 'sightings', type })
    expect(faults).toEqual([])
    expect(outcome).toMatchObject({ creates: 0, updates: 0, applied: true })
    expect(outcome?.unchanged).toBe(before.length)
    expect(await world.db.selectFrom('sighting').selectAll().orderBy('id').execute()).toEqual(before)
  })

  it.each(FORMS)('of customers as %s is read back without a change', async (_what, query, type) => {
    for (const name of ['Ines Halberg', '=cmd()', "'@Odd"])
      await manager.send('POST', '/api/customers', { body: { name, reach: '+1 555 0100', note: '-' } })
    const { outcome, faults } = await importFile(manager, await exported('customers', query), { set: 'customers', type })
    expect(faults).toEqual([])
    expect(outcome).toMatchObject({ creates: 0, updates: 0, applied: true })
    expect(outcome?.unchanged).toBeGreaterThanOrEqual(3)
  })

  it('runs nothing in a spreadsheet, and keeps numbers as they are', async () => {
    await product(world.db, { name: '=HYPERLINK("http://x")', maker: '@maker', note: '-1', spec: { powerW: 25 } })
    const lines = (await exported('catalog')).split('\r\n')
    const line = lines.find((one) => one.includes('HYPERLINK')) ?? ''
    expect(line).toContain('"\'=HYPERLINK(""http://x"")"')
    expect(line).toContain(",'@maker,")
    expect(line).toContain(",'-1,")
    expect(line).toContain(',25,')
    expect(await exported('catalog', '?text=raw')).toContain('"=HYPERLINK(""http://x"")"')
  })

  it('of stores tells each with its rates and fees, archived ones too, and runs nothing in a spreadsheet', async () => {
    const kept = await store(world.db, {
      name: '=Quillon Basin',
      note: '-1',
      taxBasisPoints: 887.5,
      otherRates: [{ name: 'Food', basisPoints: 200, kinds: ['food', 'plant'], productIds: [] }],
      delivery: { kind: 'free_over', feeMinor: 590, freeOverMinor: 4900, oversizeMinor: 1000 },
      returnDays: 14,
      archived: true,
    })
    const abroad = await store(world.db, { name: 'Tide, and Pool', currency: 'JPY', delivery: { kind: 'flat', feeMinor: 450, oversizeMinor: 0 } }) // prettier-ignore
    const rows = JSON.parse(await exported('stores', '?format=json')) as Array<Record<string, unknown>>
    expect(rows).toHaveLength((await world.db.selectFrom('store').select('id').execute()).length)
    expect(rows.find(({ id }) => id === kept.id)).toMatchObject({
      name: '=Quillon Basin', taxPercent: 8.875, otherRates: 'Food 2 %: food, plant', delivery: 'free_over', deliveryFee: '5.90', freeOver: '49.00', oversizeFee: '10.00',
      returnDays: 14, currency: 'USD', own: false, archived: true,
    }) // prettier-ignore
    // The yen has no minor unit (ISO 4217).
    expect(rows.find(({ id }) => id === abroad.id)).toMatchObject({ currency: 'JPY', deliveryFee: '450', oversizeFee: '0' })
    const csv = await exported('stores')
    expect(csv).toContain(`${kept.id},'=Quillon Basin,local,`)
    expect(csv).toContain(",'-1,")
    expect(csv).toContain('"Tide, and Pool"')
    expect(await exported('stores', '?text=raw')).toContain(',=Quillon Basin,')
    expect((await manager.send('POST', '/api/imports?set=stores', { body: csv, headers: { 'content-type': 'text/csv' } })).status).toBe(422)
  })

  it('is a manager’s alone, and the trail says who took the customers', async () => {
    const advisor = await world.signIn('advisor')
    for (const set of ['catalog', 'sightings', 'customers', 'stores'])
      expect((await advisor.send('GET', `/api/exports/${set}`)).status).toBe(403)
    expect(
      (await advisor.send('POST', addressOf({ set: 'customers' }), { body: 'name\nX', headers: { 'content-type': 'text/csv' } })).status,
    ).toBe(403)
    await exported('customers')
    const trail = await world.db
      .selectFrom('audit_entry')
      .select(['action', 'actor_id'])
      .where('action', '=', 'customers_exported')
      .execute()
    expect(trail.at(-1)).toEqual({ action: 'customers_exported', actor_id: manager.personId })
  })
})

describe('kits of a file', () => {
  it('have their parts written in steps, to the last one, and read back without a change', async () => {
    const parts = [await product(world.db), await product(world.db)]
    const said = parts.map(({ id }, index) => `${id} x ${index + 1}`).join('; ')
    const names = Array.from({ length: 501 }, (_, index) => `Kit of many ${index}`)
    const csv = ['name,parts', ...names.map((name) => `${name},${said}`)].join('\n')
    const { outcome, faults } = await importFile(manager, csv, { kind: 'kit' })
    expect(faults).toEqual([])
    expect(outcome).toMatchObject({ applied: true, creates: 501 })
    const written = await world.db
      .selectFrom('kit_part')
      .innerJoin('product', 'product.id', 'kit_part.kit_id')
      .select(['product.name', 'kit_part.quantity'])
      .where('product.name', 'like', 'Kit of many %')
      .execute()
    const wanted = names.flatMap((name) => [`${name}: 1`, `${name}: 2`])
    expect(written.map(({ name, quantity }) => `${name}: ${quantity}`).toSorted()).toEqual(wanted.toSorted())
    expect((await importFile(manager, csv, { kind: 'kit' })).outcome).toMatchObject({ creates: 0, updates: 0, unchanged: 501 })
  }, 120_000)
})

describe('sightings of a file', () => {
  const heading = 'product,store,condition,price,seenOn'
  it('are found by number or name, judged against the record, and taken whole', async () => {
    const [seen, shop] = [await product(world.db, { gtin: '4006381333931' }), await store(world.db)]
    const rows = [`${seen.name},${shop.name},shelf,49.99,${today()}`, `anything,${shop.name.toUpperCase()},shelf,499.90,${today()}`]
    const csv = `${heading},gtin\n${rows[0]},\n${rows[1]},4006381333931`
    const { outcome, faults } = await importFile(manager, csv, { set: 'sightings' })
    expect(faults).toEqual([])
    expect(outcome).toMatchObject({ applied: true, creates: 2 })
    const kept = await world.db.selectFrom('sighting').selectAll().where('product_id', '=', seen.id).orderBy('price_minor').execute()
    expect(kept.map(({ price_minor, reporter_id }) => [price_minor, reporter_id])).toEqual([[4999, manager.personId], [49990, manager.personId]]) // prettier-ignore
    // Ten times the price beside it: it waits for a second member like any other.
    expect(kept.map(({ doubt }) => doubt?.code ?? null)).toEqual([null, 'slipped_decimal'])
    expect(kept.every(({ id }) => id[14] === '7')).toBe(true)
    const post = sighting(seen.id, shop.id, { seenOn: today(), priceMinor: 5000 })
    expect((await manager.send('POST', '/api/sightings', { body: post })).status).toBe(201)
  })

  it('are in the currency of their store, out of a file and into it', async () => {
    const [seen, shop] = [await product(world.db), await store(world.db, { currency: 'JPY' })]
    const csv = `${heading},currency,printedRegular\n${seen.name},${shop.name},sale,4500,${today()},jpy,5000\n${seen.name},${shop.name},used,2100,${today()},,`
    expect((await importFile(manager, csv, { set: 'sightings' })).outcome).toMatchObject({ applied: true, creates: 2 })
    const kept = await world.db
      .selectFrom('sighting')
      .select('price_minor')
      .where('store_id', '=', shop.id)
      .orderBy('price_minor')
      .execute()
    // The yen has no minor unit (ISO 4217).
    expect(kept.map(({ price_minor }) => price_minor)).toEqual([2100, 4500])
    const file = await exported('sightings')
    const rows = file.split('\r\n').filter((line) => line.includes(shop.id))
    expect(rows.filter((line) => line.includes(',4500,JPY,5000,'))).toHaveLength(1)
    const again = await importFile(manager, file, { set: 'sightings' })
    expect(again.faults).toEqual([])
    expect(again.outcome).toMatchObject({ creates: 0 })
    const wrong = await importFile(manager, `${heading},currency\n${seen.name},${shop.name},shelf,45.00,${today()},USD`, {
      set: 'sightings',
    })
    expect(wrong.faults.map(({ row, column }) => [row, column])).toContainEqual([2, 'currency'])
    expect(wrong.outcome).toMatchObject({ applied: false })
  })

  it('are judged against the rows before them, however far apart these stand', async () => {
    const [seen, filler, shop] = [await product(world.db), await product(world.db), await store(world.db)]
    // More rows lie between than are checked at once.
    const between = Array.from({ length: 600 }, () => `${filler.name},${shop.name},shelf,5,${today()}`)
    const csv = [
      heading,
      `${seen.name},${shop.name},shelf,49.99,${today()}`,
      ...between,
      `${seen.name},${shop.name},shelf,499.90,${today()}`,
    ]
    expect((await importFile(manager, csv.join('\n'), { set: 'sightings' })).outcome).toMatchObject({ applied: true, creates: 602 })
    const kept = await world.db.selectFrom('sighting').select('doubt').where('product_id', '=', seen.id).orderBy('price_minor').execute()
    expect(kept.map(({ doubt }) => doubt?.code ?? null)).toEqual([null, 'slipped_decimal'])
  })

  it('are not held against prices of another currency', async () => {
    const [seen, here, abroad] = [await product(world.db), await store(world.db), await store(world.db, { currency: 'JPY' })]
    const csv = [heading, `${seen.name},${here.name},shelf,45.00,${today()}`, `${seen.name},${abroad.name},shelf,45000,${today()}`].join(
      '\n',
    )
    expect((await importFile(manager, csv, { set: 'sightings' })).outcome).toMatchObject({ applied: true, creates: 2 })
    const kept = await world.db.selectFrom('sighting').select('doubt').where('product_id', '=', seen.id).execute()
    expect(kept.map(({ doubt }) => doubt)).toEqual([null, null])
  })

  it('are refused by row and column where product, store or day is not to be had', async () => {
    const [seen, gone, shop] = [await product(world.db), await product(world.db, { archived: true }), await store(world.db)]
    const csv = [heading, `No such,${shop.name},shelf,5,${today()}`, `${seen.name},Nowhere,shelf,5,${today()}`, `${gone.name},${shop.name},shelf,5,${today()}`, `${seen.name},${shop.name},shelf,5,2020-01-01`].join('\n') // prettier-ignore
    const { outcome, faults } = await importFile(manager, csv, { set: 'sightings' })
    expect(outcome).toMatchObject({ applied: false, faults: 4 })
    expect(faults.map(({ row, column }) => [row, column])).toEqual([[2, 'product'], [3, 'store'], [4, 'product'], [5, 'seenOn']]) // prettier-ignore
  })
})

describe('a file without rows', () => {
  const NONE = { rows: 0, creates: 0, updates: 0, unchanged: 0, faults: 0 }

  it.each([
    ['a heading of customers', 'name,reach,note\n', { set: 'customers' }],
    ['a heading and empty lines', 'name,reach,note\r\n\r\n,,\r\n', { set: 'customers' }],
    ['an empty list of products', '[]', { type: 'application/json' }],
    ['an empty list of sightings', ' [\n] ', { set: 'sightings', type: 'application/json' }],
  ] as const)('is nothing to import, tried or written: %s', async (_what, file, sending) => {
    expect(await importFile(manager, file, { ...sending, dryRun: true })).toMatchObject({
      state: 'done',
      outcome: { ...NONE, applied: false, ready: false },
      faults: [],
    })
    expect(await importFile(manager, file, sending)).toMatchObject({ state: 'done', outcome: { ...NONE, applied: true }, faults: [] })
  })

  it.each([
    ['white space for a heading', ' \n \n', {}, 'The file has no heading. Its first line names the columns; take the template.'],
    ['white space for a list', ' \n', { type: 'application/json' }, 'The file ends before its list does. It may have been cut off.'],
  ] as const)('is refused with neither heading nor list: %s', async (_what, file, sending, words) => {
    const { outcome, faults } = await importFile(manager, file, sending)
    expect(outcome).toMatchObject({ rows: 0, applied: false })
    expect(faults.map(({ message }) => message)).toEqual([words])
  })
})

describe('an import under way', () => {
  it('waits its turn, and of two files each is taken whole', async () => {
    const sent = await paused(async () => [await sendFile(manager, customers(300), { set: 'customers' }), await sendFile(manager, 'name,powerW\nBeside 1,50', { kind: 'heater' })]) // prettier-ignore
    expect(sent.map(({ status, body }) => [status, body.state])).toEqual([[201, 'waiting'], [201, 'waiting']]) // prettier-ignore
    const [first, second] = await Promise.all(sent.map(({ body }) => ended(manager, body.id)))
    expect(first?.outcome).toMatchObject({ applied: true, creates: 300 })
    expect(second?.outcome).toMatchObject({ applied: true, creates: 1 })
    expect(await uploads()).toEqual([])
  })

  it('is cancelled while it waits, and leaves neither file nor rows', async () => {
    const cancelled = await paused(async () => {
      const { body } = await sendFile(manager, customers(10), { set: 'customers' })
      return manager.send<ImportView>('POST', `/api/imports/${body.id}/cancel`)
    })
    expect(cancelled.body).toMatchObject({ state: 'cancelled', outcome: null })
    expect(await uploads()).toEqual([])
    expect((await manager.send('POST', `/api/imports/${cancelled.body.id}/cancel`)).status).toBe(409)
  })

  it('is cancelled while it is read, and nothing of it was written', async () => {
    const before = await world.db.selectFrom('customer').select('id').execute()
    const { body } = await sendFile(manager, customers(30_000), { set: 'customers' })
    while ((await manager.send<ImportView>('GET', `/api/imports/${body.id}`)).body.state === 'waiting');
    expect((await manager.send('POST', `/api/imports/${body.id}/cancel`)).status).toBe(200)
    expect(await ended(manager, body.id)).toMatchObject({ state: 'cancelled' })
    expect(await world.db.selectFrom('customer').select('id').execute()).toHaveLength(before.length)
    expect(await world.db.selectFrom('import_row').select('line').where('job_id', '=', body.id).execute()).toEqual([])
  }, 120_000)

  it('goes on where it was after the server was stopped in its middle', async () => {
    const { body } = await sendFile(manager, customers(4_000), { set: 'customers' })
    const staged = async () => (await world.db.selectFrom('import_row').select('line').where('job_id', '=', body.id).execute()).length
    while ((await staged()) === 0) await new Promise((resolve) => setTimeout(resolve, 5))
    await worker.stop()
    expect((await manager.send<ImportView>('GET', `/api/imports/${body.id}`)).body.state).toBe('waiting')
    const before = await world.db.selectFrom('customer').select('id').execute()
    worker = workIn(world)
    expect((await ended(manager, body.id)).outcome).toMatchObject({ applied: true, rows: 4_000 })
    expect((await world.db.selectFrom('customer').select('id').execute()).length - before.length).toBeGreaterThan(3_000)
  }, 120_000)

  it('is written later by whoever says so, once, in the light of what is there by then', async () => {
    const tried = await importFile(manager, 'name,powerW\nLater 1,50\nLater 2,75', { kind: 'heater', dryRun: true })
    expect(tried.outcome).toMatchObject({ ready: true, applied: false, creates: 2 })
    await product(world.db, { name: 'later 1', spec: { powerW: 60 } })
    const said = await Promise.all([1, 2].map(() => manager.send('POST', `/api/imports/${tried.id}/write`)))
    expect(said.map(({ status }) => status).toSorted()).toEqual([200, 409])
    expect((await ended(manager, tried.id)).outcome).toMatchObject({ applied: true, creates: 1, updates: 1 })
    expect((await manager.send('POST', `/api/imports/${tried.id}/write`)).status).toBe(409)
  })

  it('is written in the name of the manager who says so, whoever tried it', async () => {
    const [seen, shop, other] = [await product(world.db), await store(world.db), await world.signIn('manager')]
    const csv = `product,store,condition,price,seenOn\n${seen.name},${shop.name},shelf,12.50,${today()}`
    const tried = await importFile(manager, csv, { set: 'sightings', dryRun: true })
    expect((await other.send('POST', `/api/imports/${tried.id}/write`)).status).toBe(200)
    expect((await ended(other, tried.id)).outcome).toMatchObject({ applied: true, creates: 1 })
    const kept = await world.db.selectFrom('sighting').select('reporter_id').where('product_id', '=', seen.id).execute()
    expect(kept).toEqual([{ reporter_id: other.personId }])
    const trail = await world.db.selectFrom('audit_entry').select('actor_id').where('action', '=', 'sightings_imported').execute()
    expect(trail.at(-1)).toEqual({ actor_id: other.personId })
  })

  it('is thrown away after it was tried, rows and file, and then written by nobody', async () => {
    const tried = await importFile(manager, 'name,powerW\nUnwanted 1,50\nUnwanted 2,75', { kind: 'heater', dryRun: true })
    const rows = () => world.db.selectFrom('import_row').select('line').where('job_id', '=', tried.id).execute()
    expect(await rows()).toHaveLength(2)
    const thrown = await manager.send<ImportView>('POST', `/api/imports/${tried.id}/cancel`)
    expect(thrown).toMatchObject({ status: 200, body: { state: 'cancelled', outcome: null } })
    expect([await rows(), await uploads()]).toEqual([[], []])
    for (const act of ['write', 'cancel']) expect((await manager.send('POST', `/api/imports/${tried.id}/${act}`)).status).toBe(409)
    expect(await world.db.selectFrom('product').select('id').where('name', 'like', 'Unwanted%').execute()).toEqual([])
  })

  it('is not written for somebody who is no manager any more', async () => {
    const other = await world.signIn('manager')
    const { body } = await paused(async () => {
      const sent = await sendFile(other, 'name,powerW\nNever,50', { kind: 'heater' })
      await world.db.updateTable('person').set({ role: 'member' }).where('id', '=', other.personId).execute()
      return sent
    })
    expect(await ended(manager, body.id)).toMatchObject({
      state: 'failed',
      words: 'Whoever started this may no longer import. Nothing was written.',
    })
  })

  it('tells its faults as a file that no spreadsheet runs', async () => {
    const view = await importFile(manager, 'name,powerW\nGood,50\n"=1+1",lots', { kind: 'heater' })
    const file = await manager.send('GET', `/api/imports/${view.id}/faults`)
    expect(file.headers.get('content-disposition')).toBe(`attachment; filename="rows-faults-${today()}.csv"`)
    expect(file.text).toBe('row,column,message\r\n3,powerW,"Power is ""lots"". Write a plain number of W, without the unit."\r\n')
    const listed = (await manager.send<{ items: ImportView[] }>('GET', '/api/imports')).body.items[0]
    expect(listed).toMatchObject({ id: view.id, startedBy: expect.stringMatching(/^Person/), outcome: { faults: 1 } })
  })

  // The embedded engine stages some thousand rows a second: a tenth of the most shows the same there.
  const most = engine === 'postgres' ? 200_000 : 20_000
  it(`of ${most} rows is taken whole, others being answered meanwhile, without all of it in memory`, async () => {
    const { body } = await sendFile(manager, customers(most), { set: 'customers', dryRun: true })
    let asked = 0
    const counting = setInterval(
      () =>
        void world
          .visitor()
          .send('GET', '/health/live')
          .then(() => (asked += 1)),
      50,
    )
    const view = await ended(manager, body.id, 500_000)
    clearInterval(counting)
    expect(view.outcome).toMatchObject({ ready: true, rows: most })
    expect(asked).toBeGreaterThan(10)
    // What the planner was told before the check; it counts some pages and reckons the rest.
    const { rows } = await sql<{ counted: number }>`select reltuples as counted from pg_class where oid = 'import_row'::regclass`.execute(
      world.db,
    )
    expect(rows[0]?.counted).toBeGreaterThan(most / 2)
  }, 600_000)

  it.skipIf(engine !== 'postgres')(
    'of one row more than 200 000 is refused at that row',
    async () => {
      const { body } = await sendFile(manager, customers(200_001), { set: 'customers', dryRun: true })
      const { faults } = await ended(manager, body.id, 500_000)
      expect(faults.map(({ row, message }) => [row, message])).toEqual([[200_002, 'The file has more than 200000 rows. Split it.']])
    },
    600_000,
  )
})

describe('a file that is sent', () => {
  it('is refused empty, of another type, or of a set that is none', async () => {
    expect((await sendFile(manager, '', { set: 'customers' })).status).toBe(422)
    expect((await sendFile(manager, 'name\nX', { set: 'customers', type: 'application/zip' })).status).toBe(415)
    expect((await manager.send('POST', '/api/imports?set=prices', { body: 'x', headers: { 'content-type': 'text/csv' } })).status).toBe(422)
    expect(await uploads()).toEqual([])
  })

  it.each([
    ['[{"name": "Ines"}, {"name": }]', /row 2 .*not well-formed/],
    ['{"name": "Ines"}', /no list of rows/],
    ['[{"name": "Ines"}', /cut off/],
    ['[{"name": "Ines", "age": 4}]', /"age" is not a field/],
  ])('of JSON %s is refused with words that help', async (file, words) => {
    const { outcome, faults } = await importFile(manager, file, { set: 'customers', type: 'application/json' })
    expect(outcome).toMatchObject({ applied: false })
    expect(faults.map(({ row, message }) => `row ${row} ${message}`).join()).toMatch(words)
  })

  it('is refused in words where the disk is full, and nothing is queued', async () => {
    const stream = () => new Blob(['name\nInes\n']).stream()
    // A device that is always full (Linux): what a full disk says of every write.
    const path = join(world.deps.config.dataDir, 'full')
    await symlink('/dev/full', path)
    const full = await saveUpload(stream(), path).catch((error: unknown) => error as ProblemError)
    expect(full).toMatchObject({ problem: { status: 507, type: '/api/reference#no_room' } })
    // A data folder that takes no folder of ours: a file stands in its way.
    const { config } = world.deps
    const before = await world.db.selectFrom('job').select('id').execute()
    const dataDir = join(config.dataDir, 'taken')
    await writeFile(dataDir, '')
    world.rebuild({ config: { ...config, dataDir } })
    expect((await sendFile(manager, 'name\nInes', { set: 'customers' })).status).toBe(507)
    world.rebuild({ config })
    expect(await world.db.selectFrom('job').select('id').execute()).toHaveLength(before.length)
  })
})
