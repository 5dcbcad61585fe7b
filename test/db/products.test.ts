import { fc, test as property } from '@fast-check/vitest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { SpecTest } from '../../core/catalog/spec-filter.ts'
import { createProduct, findProduct, getProducts, listProducts, updateProduct, valuesOf } from '../../db/products.ts'
import { createStore, findStore, listStores, updateStore } from '../../db/stores.ts'
import { createInstall } from '../../db/install.ts'
import { insertSighting } from '../../db/sightings.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, heater, install, person, product, sighting, store, storeFields, unique } from '../support/rows.ts'

let test: TestDatabase
beforeAll(async () => {
  test = await testDatabase()
})
afterAll(() => test.close())

const page = { limit: 50, offset: 0 }
const kit = (parts: Array<{ productId: string; quantity: number }>, name = unique('Kit')) => heater({ kind: 'kit', name, spec: {}, parts })

describe('products', () => {
  it('come back as they were entered, and what nobody entered stays absent', async () => {
    const entered = heater({ maker: 'Torvane', gtin: '2000000000015', note: 'two sockets', spec: { powerW: 150 } })
    const made = granted(await createProduct(test.db, entered))
    expect(await findProduct(test.db, made.id)).toEqual({ ...entered, id: made.id, version: 1 })
    expect(Object.keys(made.spec)).toEqual(['powerW'])
  })

  it('refuse a name of the same kind in any case, and a number with or without leading zeros', async () => {
    const made = await product(test.db, { gtin: '200000000028' })
    const sameName = await createProduct(test.db, heater({ name: made.name.toUpperCase() }))
    expect(sameName).toMatchObject({ ok: false, refusal: { code: 'name_taken', field: 'name' } })
    expect(await createProduct(test.db, heater({ gtin: '0200000000028' }))).toMatchObject({ ok: false, refusal: { code: 'gtin_taken' } })
    expect((await createProduct(test.db, heater({ kind: 'light', name: made.name, spec: {} }))).ok).toBe(true)
  })

  it('change at the version that was read, and keep their kind', async () => {
    const made = await product(test.db)
    const fields = heater({ name: made.name, spec: { powerW: 200 } })
    expect(granted(await updateProduct(test.db, made.id, 1, fields))).toMatchObject({ version: 2, spec: { powerW: 200 } })
    expect(await updateProduct(test.db, made.id, 1, fields)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
    const asLight = heater({ kind: 'light', name: made.name, spec: {} })
    expect(await updateProduct(test.db, made.id, 2, asLight)).toMatchObject({ ok: false, refusal: { code: 'kind_fixed' } })
    expect(await updateProduct(test.db, 'no-id', 1, fields)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
  })

  it('refuse a change to a name another has', async () => {
    const [a, b] = [await product(test.db), await product(test.db)]
    expect(await updateProduct(test.db, b.id, 1, heater({ name: a.name }))).toMatchObject({ ok: false, refusal: { code: 'name_taken' } })
    expect((await findProduct(test.db, b.id))?.version).toBe(1)
  })

  it('made at the same moment under one name: one is kept, the other refused', async () => {
    const fields = heater()
    const answers = await Promise.all([createProduct(test.db, fields), createProduct(test.db, fields)])
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1)
    expect(answers.find((answer) => !answer.ok)).toMatchObject({ refusal: { code: 'name_taken' } })
  })
})

describe('kits', () => {
  it('hold single products in their order, and bring them along when asked', async () => {
    const [a, b] = [await product(test.db), await product(test.db)]
    const parts = [
      { productId: b.id, quantity: 1 },
      { productId: a.id, quantity: 2 },
    ]
    const made = granted(await createProduct(test.db, kit(parts)))
    expect((await findProduct(test.db, made.id))?.parts).toEqual(parts)
    expect((await getProducts(test.db, [made.id, a.id], { withParts: true })).map((one) => one.id).toSorted()).toEqual(
      [a.id, b.id, made.id].toSorted(),
    )
    const fewer = granted(await updateProduct(test.db, made.id, 1, kit(parts.slice(1), made.name)))
    expect(await findProduct(test.db, made.id)).toEqual(fewer)
  })

  it('refuse a kit inside, themselves included, and a part that does not exist', async () => {
    const made = granted(await createProduct(test.db, kit([])))
    const inside = [{ productId: made.id, quantity: 1 }]
    expect(await createProduct(test.db, kit(inside))).toMatchObject({
      ok: false,
      refusal: { code: 'part_is_kit', field: 'parts.0.productId' },
    })
    expect(await updateProduct(test.db, made.id, 1, kit(inside, made.name))).toMatchObject({ ok: false, refusal: { code: 'part_is_kit' } })
    const unknown = kit([{ productId: '00000000-0000-4000-8000-000000000000', quantity: 1 }])
    expect(await createProduct(test.db, unknown)).toMatchObject({ ok: false, refusal: { code: 'part_unknown' } })
  })

  it('inside a kit are refused by the database itself', async () => {
    const [outer, inner] = [granted(await createProduct(test.db, kit([]))), granted(await createProduct(test.db, kit([])))]
    const row = { kit_id: outer.id, part_id: inner.id, part_kind: 'kit' as const, quantity: 1, position: 0 }
    await expect(test.db.insertInto('kit_part').values(row).execute()).rejects.toThrow(/kit_part_is_no_kit/)
    await expect(
      test.db
        .insertInto('kit_part')
        .values({ ...row, part_kind: 'heater' })
        .execute(),
    ).rejects.toThrow(/kit_part_part_fk/)
  })
})

describe('search', () => {
  it('finds a part of name, maker or number in any case, by kind, without archived ones', async () => {
    await product(test.db, { name: 'Millrace 300 Tidewheel', maker: 'Millrace', gtin: '2000000000039' })
    await product(test.db, { name: 'Tidewheel spare', archived: true })
    const search = async (q: string, more = {}) => (await listProducts(test.db, { ...page, q, ...more })).items.map((one) => one.name)
    expect(await search('tideWHEEL')).toEqual(['Millrace 300 Tidewheel'])
    expect(await search('millrace')).toEqual(['Millrace 300 Tidewheel'])
    expect(await search('0000039')).toEqual(['Millrace 300 Tidewheel'])
    expect(await search('tidewheel', { kind: 'light' })).toEqual([])
    expect(await search('tidewheel', { archived: true })).toEqual(['Tidewheel spare'])
  })

  it('finds all words in any order, in name, maker, kind and look, and a side in whole inches or centimetres', async () => {
    const spec = { lengthMm: 914, widthMm: 457, heightMm: 406, style: 'rimless' as const }
    await product(test.db, { kind: 'tank', name: 'Quietglass Shallow', maker: 'Osmere', spec })
    await product(test.db, { kind: 'tank', name: 'Quietglass Tall', maker: 'Osmere', spec: { ...spec, lengthMm: 600, style: 'rimmed' } })
    const search = async (q: string) => (await listProducts(test.db, { ...page, q })).items.map((one) => one.name)
    // 914 mm is 36 in (914.4 mm) and 91 cm to the whole unit.
    for (const q of ['36 rimless quietglass', 'quietglass 91', 'shallow OSMERE quietglass', 'rimless tank quietglass'])
      expect(await search(q), q).toEqual(['Quietglass Shallow'])
    expect(await search('quietglass 60')).toEqual(['Quietglass Tall'])
    expect(await search('quietglass 37')).toEqual([])
    expect(await search('osmere quietglass')).toHaveLength(2)
  })

  it('forgives a slip in a word, a figure tied to its unit, and accents, whatever the order', async () => {
    const made = async (name: string, more = {}) => product(test.db, { name, spec: {}, ...more })
    await made('Brackwell Crème 100 W', { spec: { powerW: 100 } })
    await made('Brackwell Crème 150 W', { spec: { powerW: 150 } })
    await made('Brackwell Sill', { spec: { powerW: 100 } })
    const search = async (q: string) => (await listProducts(test.db, { ...page, q, kind: 'heater' })).items.map((one) => one.name)
    for (const q of [
      'brackwel creme 100w',
      'crème bracwell 100 W',
      '100w heter brackwell creme',
      'brakcwell cremee 100w',
      'BRACKWELLL CRÈME 100w',
    ])
      expect(await search(q), q).toEqual(['Brackwell Crème 100 W'])
    expect(await search('brackwell 100w')).toEqual(['Brackwell Crème 100 W', 'Brackwell Sill'])
    expect(await search('brackwull 200w')).toEqual([])
  })

  it('never takes one figure for another: a model number is itself or nothing', async () => {
    await product(test.db, { name: 'Dunmarsh D-1800', kind: 'filter', spec: {} })
    await product(test.db, { name: 'Dunmarsh D-1200', kind: 'filter', spec: {} })
    const search = async (q: string) => (await listProducts(test.db, { ...page, q })).items.map((one) => one.name)
    expect(await search('dunmarsh d1800')).toEqual(['Dunmarsh D-1800'])
    expect(await search('dunmarsh d-1500')).toEqual([])
  })

  it('puts the very name first, then what begins with it, then what only holds it; exact finds leave no room for near ones', async () => {
    for (const name of ['Old Fernhollow', 'Fernhollow', 'Fernhollow Two', 'Superfernhollow', 'Fernhallow']) await product(test.db, { name })
    const names = (await listProducts(test.db, { ...page, q: 'fernhollow' })).items.map((one) => one.name)
    expect(names).toEqual(['Fernhollow', 'Fernhollow Two', 'Old Fernhollow', 'Superfernhollow'])
  })

  it('puts fewer slips before more', async () => {
    await product(test.db, { name: 'Quernstone rack' })
    await product(test.db, { name: 'Quernstane rack' })
    const names = (await listProducts(test.db, { ...page, q: 'quernstonee' })).items.map((one) => one.name)
    expect(names).toEqual(['Quernstone rack', 'Quernstane rack'])
  })

  it('knows a tank by the name of its size, spelt nearly right, whatever the tank is called', async () => {
    // 20 long: 30 x 12 x 12 in outside, common practice; makers differ by a centimetre.
    const spec = { lengthMm: 765, widthMm: 310, heightMm: 305 }
    await product(test.db, { kind: 'tank', name: 'Saltmere Low', spec })
    await product(test.db, { kind: 'tank', name: 'Saltmere High', spec: { ...spec, heightMm: 406 } })
    await product(test.db, { kind: 'tank', name: 'Saltmere Bow', spec: { ...spec, shape: 'bow_front', bowMm: 60 } })
    const search = async (q: string) => (await listProducts(test.db, { ...page, q })).items.map((one) => one.name)
    for (const q of ['saltmere 20 long', '20 longg saltmere', 'satlmere 20 lnog']) expect(await search(q), q).toEqual(['Saltmere Low'])
    expect(await search('saltmere 21 long')).toEqual([])
  })

  it('follows a change of the name, and many at once', async () => {
    const made = await product(test.db, { name: 'Wickerford', spec: {} })
    granted(await updateProduct(test.db, made.id, 1, heater({ name: 'Larkspurre', spec: {} })))
    const ids = async (q: string) => (await listProducts(test.db, { ...page, q })).items.map((one) => one.id)
    expect(await ids('wikcerford')).toEqual([])
    expect(await ids('larkspure')).toEqual([made.id])
    await test.db
      .insertInto('product')
      .values([heater({ name: 'Thistledene', spec: {} }), heater()].map(valuesOf))
      .execute()
    expect(await ids('thistldene')).toHaveLength(1)
  })

  it('counts beyond the last page, and finds nothing for signs that nobody wrote', async () => {
    await product(test.db, { name: 'Farpage one' })
    expect(await listProducts(test.db, { q: 'farpage', limit: 2, offset: 9 })).toEqual({ items: [], total: 1 })
    for (const q of ['.*+?^${}()|[]\\', '%%%%', "' or 1=1 --", '(((((((', 'a'.repeat(200)])
      expect((await listProducts(test.db, { ...page, q })).total, q).toBe(0)
  })

  it('counts all and gives one page', async () => {
    for (let n = 0; n < 5; n++) await product(test.db, { name: `Paged ${n}` })
    const second = await listProducts(test.db, { q: 'paged', limit: 2, offset: 2 })
    expect(second.total).toBe(5)
    expect(second.items.map((one) => one.name)).toEqual(['Paged 2', 'Paged 3'])
  })

  property.prop([fc.string({ minLength: 1, maxLength: 12 }).filter((text) => text.trim() === text && !text.includes('\0'))], {
    numRuns: 40,
  })('finds a name by any of its signs, pattern signs included', async (sign) => {
    const name = `${unique('Sign')} ${sign}.`
    const made = await product(test.db, { name })
    const found = await listProducts(test.db, { q: name.slice(5), limit: 200, offset: 0 })
    expect(found.items.map((one) => one.id)).toContain(made.id)
  })

  it('takes a pattern sign for itself', async () => {
    await product(test.db, { name: 'Ratio 50% mix' })
    expect((await listProducts(test.db, { ...page, q: '50% m' })).total).toBe(1)
    expect((await listProducts(test.db, { ...page, q: '5%mix' })).total).toBe(0)
    expect((await listProducts(test.db, { ...page, q: 'ra_ 50' })).total).toBe(0)
  })
})

describe('what makers state', () => {
  const found = async (kind: 'heater' | 'tank' | 'filter' | 'stand', spec: SpecTest[], q = 'fennick') =>
    (await listProducts(test.db, { ...page, kind, q, spec })).items.map((one) => one.name)

  it('narrows by a figure within bounds, a word and a yes; what nobody stated is left out', async () => {
    await product(test.db, { name: 'Fennick 50', spec: { powerW: 50, adjustable: true } })
    await product(test.db, { name: 'Fennick 100', spec: { powerW: 100, adjustable: false } })
    await product(test.db, { name: 'Fennick 200', spec: { powerW: 200 } })
    await product(test.db, { name: 'Fennick unsaid', spec: {} })
    expect(await found('heater', [{ key: 'powerW', least: 100, most: null }])).toEqual(['Fennick 100', 'Fennick 200'])
    expect(await found('heater', [{ key: 'powerW', least: null, most: 99.5 }])).toEqual(['Fennick 50'])
    expect(await found('heater', [{ key: 'powerW', least: 100, most: 100 }])).toEqual(['Fennick 100'])
    expect(await found('heater', [{ key: 'adjustable', is: false }])).toEqual(['Fennick 100'])
    await product(test.db, { name: 'Fennick can', kind: 'filter', spec: { type: 'canister' } })
    await product(test.db, { name: 'Fennick box', kind: 'filter', spec: { type: 'hang_on' } })
    expect(await found('filter', [{ key: 'type', is: 'canister' }])).toEqual(['Fennick can'])
  })

  it('finds a stand whose top takes a tank, and a length to the rounding of an inch, misspelt names too', async () => {
    await product(test.db, { name: 'Fennick Bench 90', kind: 'stand', spec: { topLengthMm: 900, topWidthMm: 450 } })
    await product(test.db, { name: 'Fennick Bench 90 slim', kind: 'stand', spec: { topLengthMm: 900, topWidthMm: 400 } })
    const top: SpecTest[] = [{ key: 'topLengthMm', least: 900, most: null }, { key: 'topWidthMm', least: 450, most: null }] // prettier-ignore
    expect(await found('stand', top)).toEqual(['Fennick Bench 90'])
    expect(await found('stand', top, 'fenick bnech')).toEqual(['Fennick Bench 90'])
    await product(test.db, { name: 'Fennick Pane', kind: 'tank', spec: { lengthMm: 914, widthMm: 300, heightMm: 300 } })
    // 36 in = 914.4 mm (international inch, 1959).
    expect(await found('tank', [{ key: 'lengthMm', least: 914.4, most: null }])).toEqual(['Fennick Pane'])
    expect(await found('tank', [{ key: 'lengthMm', least: 915, most: null }])).toEqual([])
  })
})

describe('stores', () => {
  beforeAll(async () => void granted(await createInstall(test.db, install)))

  it('come back as entered, change at their version, and keep their name to themselves', async () => {
    const fields = storeFields({ delivery: { kind: 'free_over', feeMinor: 995, freeOverMinor: 9900, oversizeMinor: 4500 } })
    const made = granted(await createStore(test.db, fields))
    expect(await findStore(test.db, made.id)).toEqual({ ...fields, id: made.id, version: 1 })
    expect(await createStore(test.db, storeFields({ name: made.name.toLowerCase() }))).toMatchObject({
      ok: false,
      refusal: { code: 'name_taken' },
    })
    expect(granted(await updateStore(test.db, made.id, 1, { ...fields, archived: true })).version).toBe(2)
    expect(await updateStore(test.db, made.id, 1, fields)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
    const other = await store(test.db)
    expect(await updateStore(test.db, other.id, 1, storeFields({ name: made.name }))).toMatchObject({
      ok: false,
      refusal: { code: 'name_taken' },
    })
    expect((await listStores(test.db)).map((one) => one.id)).not.toContain(made.id)
    expect((await listStores(test.db, { archived: 'all' })).map((one) => one.id)).toContain(made.id)
  })
  it('keep their currency while a price is stored in it, and change it while there is none', async () => {
    const { id, version: _version, ...fields } = await store(test.db)
    expect(granted(await updateStore(test.db, id, 1, { ...fields, currency: 'JPY' })).currency).toBe('JPY')
    const reporter = await person(test.db)
    granted(await insertSighting(test.db, reporter, sighting((await product(test.db)).id, id, { priceMinor: 4500 }), null))
    expect(await updateStore(test.db, id, 2, fields)).toMatchObject({
      ok: false,
      refusal: { code: 'currency_in_use', field: 'currency', message: expect.stringContaining('1 sighting') as string },
    })
    expect(granted(await updateStore(test.db, id, 2, { ...fields, currency: 'JPY', note: 'second floor' }))).toMatchObject({
      currency: 'JPY',
      version: 3,
    })
  })

  it('of the own one keep it while the price list has a price, and the install’s own currency may be written out', async () => {
    const { id, version: _version, ...fields } = await store(test.db, { own: true })
    const stocked = (await product(test.db)).id
    await test.db.insertInto('stock_item').values({ product_id: stocked }).execute()
    await test.db.insertInto('list_price').values({ product_id: stocked, valid_from: '2026-10-20', price_minor: 4999 }).execute()
    expect(granted(await updateStore(test.db, id, 1, { ...fields, currency: 'USD' })).currency).toBe('USD')
    expect(await updateStore(test.db, id, 2, { ...fields, currency: 'CAD' })).toMatchObject({
      ok: false,
      refusal: { code: 'currency_in_use', message: expect.stringContaining('1 list price') as string },
    })
    granted(await updateStore(test.db, id, 2, { ...fields, own: false }))
  })
  it('marked as the own one at the same moment: one is, the other is told why not', async () => {
    await test.db.updateTable('store').set({ own: false }).execute()
    const made = await Promise.all([1, 2].map(() => createStore(test.db, storeFields({ own: true }))))
    expect(made.map((one) => (one.ok ? 'made' : one.refusal.code)).sort()).toEqual(['made', 'own_taken'])
    await test.db.updateTable('store').set({ own: false }).execute()
    const [a, b] = [await store(test.db), await store(test.db)]
    const marked = await Promise.all(
      [a, b].map(({ id, version, ...fields }) => updateStore(test.db, id, version, { ...fields, own: true })),
    )
    expect(marked.map((one) => (one.ok ? 'marked' : one.refusal.code)).sort()).toEqual(['marked', 'own_taken'])
  })
})
