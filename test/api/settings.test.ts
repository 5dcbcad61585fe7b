import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Install } from '../../core/install.ts'
import { product, sighting, store, storeFields } from '../support/rows.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
beforeEach(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterEach(() => world.close())

interface Refused {
  errors: Array<{ field: string; message: string }>
}
async function change(part: Partial<Install>) {
  const read = await manager.send<Install & { version: number }>('GET', '/api/install')
  const { version: _version, ...install } = read.body
  const headers = { 'if-match': read.headers.get('etag') ?? '' }
  return manager.send<Refused & Install>('PUT', '/api/install', { body: { ...install, ...part }, headers })
}

it('takes another currency while no amount is stored', async () => {
  await store(world.db)
  const changed = await change({ currency: 'JPY' })
  expect(changed.status).toBe(200)
  expect(changed.body.currency).toBe('JPY')
})

it('keeps the currency once a price was seen, and says why', async () => {
  const [heater, shop] = [await product(world.db), await store(world.db)]
  expect((await manager.send('POST', '/api/sightings', { body: sighting(heater.id, shop.id) })).status).toBe(201)
  const refused = await change({ currency: 'JPY' })
  expect(refused.status).toBe(422)
  expect(refused.body.errors).toEqual([{ field: 'currency', message: expect.stringContaining('stored in USD') as string }])
  expect((await change({ currency: 'USD', name: 'Tarnwick Club' })).status).toBe(200)
})

it('keeps the currency once a store charges for delivery, or a quote was begun', async () => {
  const shop = await store(world.db, { delivery: { kind: 'flat', feeMinor: 1500, oversizeMinor: 0 } })
  expect((await change({ currency: 'EUR' })).status).toBe(422)
  await world.db.deleteFrom('store').where('id', '=', shop.id).execute()
  const customer = await manager.send<{ id: string }>('POST', '/api/customers', {
    body: { name: 'Ada Quill' },
  })
  expect((await manager.send('POST', '/api/quotes', { body: { customerId: customer.body.id } })).status).toBe(201)
  expect((await change({ currency: 'EUR' })).status).toBe(422)
})

it('refuses a currency that there is not', async () => {
  const refused = await change({ currency: 'UDS' })
  expect(refused.body.errors[0]).toMatchObject({ field: 'currency', message: expect.stringContaining('no such currency') as string })
})

it('keeps a price of a kilowatt hour in hundredths of a cent', async () => {
  expect((await change({ energyPriceMinor: 17.34 })).body.energyPriceMinor).toBe(17.34)
})

it('keeps the saving worth waiting for, and where it is left out what was kept', async () => {
  const first = await manager.send<Install>('GET', '/api/install')
  expect(first.body.leastSavingMinor).toBe(500)
  expect((await change({ leastSavingMinor: 0 })).body.leastSavingMinor).toBe(0)
  expect((await change({ leastSavingMinor: undefined })).body.leastSavingMinor).toBe(0)
  const refused = await change({ leastSavingMinor: -1 })
  expect(refused.body.errors[0]).toMatchObject({ field: 'leastSavingMinor', message: expect.stringContaining('not below 0') as string })
})

it('keeps a tax rate with three decimals', async () => {
  const added = await manager.send<{ taxBasisPoints: number }>('POST', '/api/stores', { body: storeFields({ taxBasisPoints: 887.5 }) })
  expect(added.status).toBe(201)
  expect(added.body.taxBasisPoints).toBe(887.5)
})
