import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Worker } from '../../api/jobs/worker.ts'
import type { Product } from '../../core/catalog/product.ts'
import { product } from '../support/rows.ts'
import { importFile, sendFile, workIn } from './support/imports.ts'
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

/** What came of a file, with its faults beside it. */
async function importing(csv: string, dryRun = false, kind = 'heater') {
  const view = await importFile(manager, csv, { kind, dryRun })
  if (view.outcome === null) throw new Error(`no outcome: ${view.words}`)
  return { view, body: { ...view.outcome, dryRun: view.dryRun, faults: view.faults } }
}
const names = async (q: string): Promise<string[]> =>
  (await manager.send<{ items: Product[] }>('GET', `/api/products?q=${encodeURIComponent(q)}&limit=500`)).body.items.map(({ name }) => name)

describe('an import', () => {
  it('reads what a spreadsheet writes: byte order mark, CRLF, quotes, line breaks in cells, any order of columns', async () => {
    const csv = '\uFEFFPower W,name,note\r\n100,"Halden ""H1"" 100, slim","two\r\nlines"\r\n,Halden H2,\r\n'
    const report = await importing(csv)
    expect(report.body).toMatchObject({ applied: true, rows: 2, creates: 2, updates: 0, unchanged: 0, faults: [] })
    const found = await manager.send<{ items: Product[] }>('GET', '/api/products?q=Halden%20%22H1%22')
    expect(found.body.items[0]).toMatchObject({ name: 'Halden "H1" 100, slim', spec: { powerW: 100 }, note: 'two\r\nlines' })
    expect((await manager.send<{ items: Product[] }>('GET', '/api/products?q=Halden%20H2')).body.items[0]?.spec).toEqual({})
  })

  it('changes nothing on a dry run and says what it would do', async () => {
    const csv = 'name,powerW\nDry 1,50\nDry 2,75'
    expect((await importing(csv, true)).body).toMatchObject({ dryRun: true, applied: false, creates: 2 })
    expect(await names('Dry ')).toEqual([])
    expect((await importing(csv)).body).toMatchObject({ applied: true, creates: 2 })
    expect((await importing(csv)).body).toMatchObject({ applied: true, creates: 0, unchanged: 2 })
    expect((await importing('name,powerW\nDry 1,55\nDry 2,75')).body).toMatchObject({ updates: 1, unchanged: 1 })
  })

  it('names row, column and fix of every fault, and then stores nothing', async () => {
    const report = await importing('name,powerW\nGood 1,50\nBad 1,40000\n,75\nBad 2,lots\nGood 1,60')
    expect(report.body.applied).toBe(false)
    expect(report.body.faults.map(({ row, column }) => [row, column])).toEqual([[3, 'powerW'], [4, 'name'], [5, 'powerW'], [6, 'name']]) // prettier-ignore
    expect(await names('Good 1')).toEqual([])
  })

  it('stores nothing where the last row clashes with the catalog', async () => {
    const known = await product(world.db, { gtin: '4006381333931' })
    const report = await importing(`name,gtin,powerW\nFirst of two,,50\n${known.name} again,4006381333931,50\nHalf done,96385074x,50`)
    expect(report.body.applied).toBe(false)
    expect(await names('First of two')).toEqual([])
  })

  it.each([
    ['a quotation mark that never closes', 'name,powerW\n"Open,50\nB,60', /quotation mark/],
    ['a quotation mark in the middle', 'name,powerW\nLength 4" long,50', /quotation mark/],
    ['a row that is too long', 'name,powerW\nA,50,60', /cells/],
    ['a column that is none', 'name,wattage\nA,50', /wattage/],
    ['nothing but white space', '  \n \n', /heading/],
    ['a zero byte', 'name,powerW\nA\u0000,50', /character/],
  ])('refuses %s with words that help', async (_what, csv, words) => {
    const report = await importing(csv)
    expect(report.body).toMatchObject({ applied: false, creates: 0 })
    expect(report.body.faults.map(({ message }) => message).join(' ')).toMatch(words)
  })

  it.each([true, false])('takes a heading alone as nothing to import (tried first: %s)', async (dryRun) => {
    const report = await importing('name,powerW\n', dryRun)
    expect(report.body).toMatchObject({ applied: !dryRun, rows: 0, creates: 0, updates: 0, unchanged: 0, faults: [] })
  })

  it.each([
    ['semicolons and decimal commas', 'name;powerW;note\nSplit 1;50,5;"a; b, c"\nSplit 2;60;'],
    ['tabs', 'name\tpowerW\tnote\nSplit 3\t50.5\ta; b, c\nSplit 4\t60\t'],
  ])('reads %s between the columns as a spreadsheet writes them', async (_what, csv) => {
    const report = await importing(csv)
    expect(report.body).toMatchObject({ applied: true, creates: 2 })
    const found = await manager.send<{ items: Product[] }>('GET', `/api/products?q=${encodeURIComponent(/Split \d/.exec(csv)?.[0] ?? '')}`)
    expect(found.body.items[0]).toMatchObject({ spec: { powerW: 50.5 }, note: 'a; b, c' })
  })

  it('with semicolons is stored whole or not at all', async () => {
    const report = await importing('name;powerW\nWhole 1;50\nWhole 2;lots')
    expect(report.body).toMatchObject({ applied: false, creates: 1 })
    expect(report.body.faults).toHaveLength(1)
    expect(await names('Whole ')).toEqual([])
  })

  it('says how a part is written where the count stands first', async () => {
    await product(world.db, { name: 'Millrace 25 W' })
    for (const parts of ['2 x Millrace 25 W', '2 Millrace 25 W'])
      expect((await importing(`name,parts\nStarter nine,${parts}`, false, 'kit')).body.faults[0]?.message).toContain(
        'How many stands behind the name, as in "Torvane 150 W x 2".',
      )
  })

  it('makes kits of parts by name, and says which part is not known', async () => {
    const part = await product(world.db, { name: 'Millrace 40 W' })
    const made = await importing('name,parts\nStarter one,Millrace 40 W x 2', false, 'kit')
    expect(made.body).toMatchObject({ applied: true, creates: 1 })
    const kit = (await manager.send<{ items: Product[] }>('GET', '/api/products?kind=kit&q=Starter')).body.items[0]
    expect(kit?.parts).toEqual([{ productId: part.id, quantity: 2 }])
    const unknown = await importing('name,parts\nStarter two,No such thing', false, 'kit')
    expect(unknown.body.faults[0]).toMatchObject({ row: 2, column: 'parts' })
    const nested = await importing('name,parts\nStarter three,Starter one', false, 'kit')
    expect(nested.body.faults[0]?.message).toContain('kit')
  })

  it('renames the product whose id a row gives', async () => {
    const made = await product(world.db)
    const renamed = await importing(`id,name,powerW\n${made.id},Renamed by import,150`)
    expect(renamed.body).toMatchObject({ applied: true, updates: 1 })
    expect((await manager.send<Product>('GET', `/api/products/${made.id}`)).body).toMatchObject({ name: 'Renamed by import', version: 2 })
  })

  it('offers its columns as a file', async () => {
    const answer = await manager.send('GET', '/api/imports/template?set=catalog&kind=heater')
    expect(answer.headers.get('content-type')).toBe('text/csv; charset=utf-8')
    expect(answer.headers.get('content-disposition')).toBe('attachment; filename="heater.csv"')
    expect(answer.text).toMatch(/^\uFEFF?id,name,/)
    const faults = (await importing(answer.text)).body.faults
    expect(faults).toEqual([{ row: 2, column: 'name', message: 'This is the example of the template. Take the row out.' }])
    expect((await importing(answer.text.replace('Example: ', ''), true)).body).toMatchObject({ faults: [], creates: 1 })
  })

  it('of 20 000 rows is taken whole while others are answered', async () => {
    const csv = [
      'name,powerW,note',
      ...Array.from({ length: 20_000 }, (_, index) => `Bulk ${index},${5 + (index % 900)},"row ${index}"`),
    ].join('\n')
    const import20k = importing(csv)
    let turns = 0
    const state = { done: false }
    void import20k.finally(() => (state.done = true))
    while (!state.done) {
      await new Promise((resolve) => setTimeout(resolve, 20))
      turns += 1
    }
    const report = await import20k
    expect(report.body).toMatchObject({ applied: true, rows: 20_000, creates: 20_000 })
    // Without breaths between its steps the import would hold everything, and others would get a turn a handful of times.
    expect(turns).toBeGreaterThan(50)
  }, 120_000)

  it('of more than it takes is refused before it is read', async () => {
    const answer = await sendFile(manager, `name\n${'x'.repeat(101_000_000)}`)
    expect(answer.status).toBe(413)
  })
})
