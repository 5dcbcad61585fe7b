import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { ImportView } from '../../core/exchange/import-view.ts'
import type { Worker } from '../../api/jobs/worker.ts'
import { product, store, unique } from '../support/rows.ts'
import { ended, importFile, sendFile, workIn, type Sending } from './support/imports.ts'
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

const NOBODY = '0198c0de-0000-7000-8000-000000000000'
const places = ({ faults }: ImportView) => faults.map(({ row, column }) => [row, column])
const count = async (table: 'product' | 'sighting' | 'list_price' | 'customer'): Promise<number> =>
  (await world.db.selectFrom(table).selectAll().execute()).length
/** Rows and columns of the fault file, its heading aside. */
async function filePlaces(id: string): Promise<string[]> {
  const { text } = await manager.send('GET', `/api/imports/${id}/faults`)
  return text.trimEnd().split('\r\n').slice(1).map((line) => line.split(',').slice(0, 2).join(' ')) // prettier-ignore
}

describe('a file with faults of cells and faults against what is here', () => {
  it.each([true, false])('of products has all of them told at once, and nothing written (tried first: %s)', async (dryRun) => {
    const [known, other] = [await product(world.db, { gtin: dryRun ? '4006381333931' : '96385074' }), await product(world.db)]
    const before = await count('product')
    const csv = [
      'id,name,gtin,powerW',
      `,${unique('Sound')},,50`,
      ',,,75',
      `${NOBODY},Ghost,,60`,
      `,${unique('Odd')},,lots`,
      `,${other.name},${known.gtin},50`,
      `,${unique('Odd')},123,99999`,
    ].join('\n')
    const view = await importFile(manager, csv, { kind: 'heater', dryRun })
    expect(view).toMatchObject({ state: 'done', outcome: { rows: 6, creates: 2, faults: 5, applied: false, ready: false, more: false } })
    expect(places(view)).toEqual([[3, 'name'], [5, 'powerW'], [6, 'name'], [7, 'gtin'], [7, 'powerW']]) // prettier-ignore
    expect(await filePlaces(view.id)).toEqual(['3 name', '5 powerW', '6 name', '7 gtin', '7 powerW'])
    expect(await count('product')).toBe(before)
    expect((await manager.send('POST', `/api/imports/${view.id}/write`)).status).toBe(409)
  })

  it('of sightings, prices and customers has all of them told at once', async () => {
    const [seen, shop] = [await product(world.db), await store(world.db)]
    const files: Array<[Sending['set'], string, unknown[]]> = [
      ['sightings', `product,store,condition,price,seenOn\nNo such,${shop.name},shelf,5,${today()}\n${seen.name},${shop.name},shelf,cheap,${today()}\n${seen.name},Nowhere,shelf,5,${today()}`, [[2, 'product'], [3, 'price'], [4, 'store']]], // prettier-ignore
      ['price_list', `product,price,stock\nNo such,5,\n${seen.name},0,\n${seen.name},9,many\n${seen.name},8,1`, [[2, 'product'], [3, 'price'], [4, 'stock']]], // prettier-ignore
      ['customers', `id,name\n${NOBODY},Ines\n,\nnone,Ines\n,Ines`, [[4, 'id']]],
    ]
    const before = [await count('sighting'), await count('list_price'), await count('customer')]
    for (const [set, csv, wanted] of files) expect(places(await importFile(manager, csv, { set: set ?? 'catalog' })), set).toEqual(wanted)
    expect([await count('sighting'), await count('list_price'), await count('customer')]).toEqual(before)
  })

  it('does not blame a kit for the fault of its part’s own row', async () => {
    const [first, second, twin] = [unique('Part'), unique('Part'), unique('Part')]
    const csv = [
      'kind,name,parts,powerW,gtin',
      `kit,${unique('Kit')},${first}; ${second},,`,
      `heater,${first},,lots,`,
      `heater,${second},,50,12`,
      `kit,${unique('Kit')},${twin},,`,
      `heater,${twin},,50,`,
      `heater,${twin},,50,`,
      `kit,${unique('Kit')},Nothing of the kind,,`,
    ].join('\n')
    const view = await importFile(manager, csv, { dryRun: true })
    expect(places(view)).toEqual([[3, 'powerW'], [4, 'gtin'], [7, 'name'], [8, 'parts']]) // prettier-ignore
    expect(view.faults.at(-1)?.message).toBe('"Nothing of the kind" is not in the catalog. Add it to the file, or check the name.')
  })

  it.each([
    ['cannot be cut into cells', 'heater,Hidden part,,50,60,70'],
    ['opens a quotation mark that is never closed', 'heater,"Hidden part,,50'],
  ])('says of a part that it may be in a row which %s', async (_what, row) => {
    const csv = ['kind,name,parts,powerW', `kit,${unique('Kit')},Hidden part,`, row].join('\n')
    const view = await importFile(manager, csv, { dryRun: true })
    expect(view.faults.map(({ row: at }) => at)).toEqual([2, 3])
    expect(view.faults[0]?.message).toContain('"Hidden part" is not in the catalog, nor in a row that could be read.')
  })
})

describe('the faults of an import that was cut off', () => {
  /** Every third row has a wrong cell, every third means a product of another kind; more of them than are checked in one step. */
  const rows = 2_400
  const otherKind = (index: number): string => `${NOBODY.slice(0, -4)}${String(1000 + index)}`
  beforeAll(async () => {
    const { archived, spec } = await product(world.db)
    const made = Array.from({ length: rows }, (_, index) => ({ id: otherKind(index), kind: 'thermometer' as const, name: unique('Other'), oversize: false, archived, spec })) // prettier-ignore
    for (let start = 0; start < rows; start += 800)
      await world.db
        .insertInto('product')
        .values(made.slice(start, start + 800))
        .execute()
  })
  const mixed = (): string =>
    ['id,name,powerW', ...Array.from({ length: rows }, (_, index) => [`,${unique('Cut')},50`, `,${unique('Cut')},lots`, `${otherKind(index)},${unique('Cut')},5`][index % 3])].join('\n') // prettier-ignore
  const wanted = Array.from({ length: rows }, (_, index) => [null, `${index + 2} powerW`, `${index + 2} id`][index % 3] ?? null).filter((one) => one !== null) // prettier-ignore

  it.each(['reading', 'checking'])('while it was %s are all in its file, each once', async (phase) => {
    const { body } = await sendFile(manager, mixed(), { kind: 'heater', dryRun: true })
    const position = async () => (await world.db.selectFrom('job').select(['phase', 'position']).where('id', '=', body.id).executeTakeFirstOrThrow()) // prettier-ignore
    const isThere = async (): Promise<boolean> => {
      const at = await position()
      const { line = 0, checked = 0 } = (at.position ?? {}) as { line?: number; checked?: number }
      return phase === 'reading' ? line > 0 : checked > 0
    }
    while (!(await isThere())) await new Promise((resolve) => setTimeout(resolve, 2))
    await worker.stop()
    expect((await manager.send<ImportView>('GET', `/api/imports/${body.id}`)).body.state).toBe('waiting')
    worker = workIn(world)
    const view = await ended(manager, body.id)
    expect(view.outcome).toMatchObject({ rows, creates: rows / 3, faults: (2 * rows) / 3, applied: false })
    expect(await filePlaces(body.id)).toEqual(wanted)
  })

  it('behind the last look at its rows are not found twice', async () => {
    const view = await importFile(manager, `id,name,powerW\n${otherKind(0)},A,5\n,B,lots`, { kind: 'heater', dryRun: true })
    // As a server leaves it that was killed before the end was kept.
    await world.db.updateTable('job').set({ state: 'waiting', outcome: null, ended_at: null }).where('id', '=', view.id).execute()
    await worker.stop()
    worker = workIn(world)
    const again = await ended(manager, view.id)
    expect(again.outcome).toEqual(view.outcome)
    expect(await filePlaces(view.id)).toEqual(['2 id', '3 powerW'])
  })
})

describe('the fault file', () => {
  const dispositionOf = async (fileName: string): Promise<string | null> => {
    const query = `set=customers&dryRun=true&fileName=${encodeURIComponent(fileName)}`
    const { body } = await manager.send<ImportView>('POST', `/api/imports?${query}`, { body: 'age\n4', headers: { 'content-type': 'text/csv' } }) // prettier-ignore
    await ended(manager, body.id)
    return (await manager.send('GET', `/api/imports/${body.id}/faults`)).headers.get('content-disposition')
  }

  it('is called after the file that was sent and its day, and a name cannot leave its place', async () => {
    expect(await dispositionOf('members 2026.csv')).toBe(`attachment; filename="members-2026-faults-${today()}.csv"`)
    expect(await dispositionOf('../../x"; a=b.csv')).toBe(`attachment; filename="x-a-b-faults-${today()}.csv"`)
    expect(await dispositionOf('Mitglieder März.csv')).toBe(
      `attachment; filename="Mitglieder-M-rz-faults-${today()}.csv"; filename*=UTF-8''Mitglieder-M%C3%A4rz-faults-${today()}.csv`,
    )
  })

  it('has every fault of a long file, a thousand and more', async () => {
    const csv = ['name,powerW', ...Array.from({ length: 2_500 }, () => `${unique('Long')},lots`)].join('\n')
    const view = await importFile(manager, csv, { kind: 'heater', dryRun: true })
    expect(view.outcome).toMatchObject({ faults: 2_500, more: false })
    expect(view.faults, 'one that says it for all').toMatchObject([{ row: 2, column: 'powerW', rows: 2_500 }])
    expect(await filePlaces(view.id)).toHaveLength(2_500)
  })
})
