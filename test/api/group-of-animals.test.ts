import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Worker } from '../../api/jobs/worker.ts'
import type { Product } from '../../core/catalog/product.ts'
import { LIVESTOCK_GROUPS } from '../../core/catalog/livestock.ts'
import type { LivestockGroup } from '../../core/sizing/conditions.ts'
import { unique } from '../support/rows.ts'
import { importFile, workIn } from './support/imports.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let worker: Worker
let manager: Browser
let own: LivestockGroup & { version: number }
const NAME = 'Pond fish of the club'
const NOBODY = 'own-0198c0de-0000-7000-8000-000000000000'
beforeAll(async () => {
  world = await createWorld()
  worker = workIn(world)
  manager = await world.signIn('manager')
  const { id: _id, ...seed } = LIVESTOCK_GROUPS[0] as LivestockGroup
  const made = await manager.send<typeof own>('POST', '/api/livestock-groups', { body: { ...seed, name: NAME } })
  expect(made.status, made.text).toBe(201)
  own = made.body
})
afterAll(async () => {
  await worker.stop()
  await world.close()
})

const animal = (group: unknown) => ({
  kind: 'livestock',
  name: unique('Danio'),
  spec: { group, leastTogether: 6 },
  parts: [],
  oversize: false,
})
const add = (group: unknown) => manager.send<Product & { errors: Array<{ field: string; message: string }> }>('POST', '/api/products', { body: animal(group) }) // prettier-ignore
const groupIn = async (name: string): Promise<unknown> =>
  (await world.db.selectFrom('product').select('spec').where('name', '=', name).executeTakeFirstOrThrow()).spec

describe('an animal of the catalog', () => {
  it('belongs to a group of the place’s own, and to one that came with the service and was edited', async () => {
    const made = await add(own.id)
    expect(made, made.text).toMatchObject({ status: 201, body: { spec: { group: own.id } } })
    const { body: before } = await manager.send<typeof own>('GET', '/api/livestock-groups/labyrinth')
    const { id: _id, version: _version, ...fields } = before
    await manager.send('PUT', '/api/livestock-groups/labyrinth', { body: { ...fields, name: 'Bettas' }, headers: { 'if-match': '"1"' } })
    expect((await add('labyrinth')).status).toBe(201)
    const found = await manager.send<{ items: Product[] }>('GET', `/api/products?kind=livestock&spec=group:${own.id}`)
    expect(found.body.items.map(({ id }) => id)).toEqual([made.body.id])
  })

  it.each([NOBODY, 'koi', '', 7, 'own-'])('belongs to no group that there is not: %j', async (group) => {
    const refused = await add(group)
    expect(refused.status).toBe(422)
    expect(refused.body.errors[0]?.field).toBe('spec.group')
    if (group === NOBODY) expect(refused.body.errors[0]?.message).toContain(NAME)
  })

  it('is not moved to a group that there is not', async () => {
    const { body } = await add(own.id)
    const { id, version, ...fields } = body
    const send = (group: string) => manager.send('PUT', `/api/products/${id}`, { body: { ...fields, spec: { group } }, headers: { 'if-match': `"${version}"` } }) // prettier-ignore
    expect((await send(NOBODY)).status).toBe(422)
    expect((await send('dwarf-shrimp')).status).toBe(200)
  })
})

describe('animals of a file', () => {
  it('name their group by its name or id, whatever its capitals, and are read back from an export without a change', async () => {
    const names = [unique('Fish'), unique('Fish'), unique('Fish'), unique('Fish')]
    const said = [NAME.toUpperCase(), own.id, 'Dwarf shrimp', 'bettas']
    const csv = ['name,group', ...names.map((name, index) => `${name},${said[index]}`)].join('\n')
    const view = await importFile(manager, csv, { kind: 'livestock' })
    expect([view.faults, view.outcome]).toMatchObject([[], { creates: 4, applied: true }])
    const kept = await Promise.all(names.map(groupIn))
    expect(kept).toEqual([{ group: own.id }, { group: own.id }, { group: 'dwarf-shrimp' }, { group: 'labyrinth' }])
    expect((await importFile(manager, csv, { kind: 'livestock' })).outcome).toMatchObject({ creates: 0, updates: 0, unchanged: 4 })
    for (const [query, type] of [
      ['?kind=livestock', 'text/csv'],
      ['?kind=livestock&format=json', 'application/json'],
    ] as const) {
      // prettier-ignore
      const file = (await manager.send('GET', `/api/exports/catalog${query}`)).text
      expect(file).toContain(own.id)
      const again = await importFile(manager, file, { kind: 'livestock', type })
      expect([again.faults, again.outcome]).toMatchObject([[], { creates: 0, updates: 0, applied: true }])
    }
  })

  it('are refused by row and column where there is no such group, with those that there are', async () => {
    const view = await importFile(manager, `name,group\n${unique('Fish')},Dwarf shrimp\n${unique('Fish')},Mermaids\n${unique('Fish')},${NOBODY}`, { kind: 'livestock' }) // prettier-ignore
    expect(view.outcome).toMatchObject({ applied: false, faults: 2 })
    expect(view.faults.map(({ row, column }) => [row, column])).toEqual([[3, 'group'], [4, 'group']]) // prettier-ignore
    expect(view.faults[0]?.message).toContain(`"Mermaids" is no livestock group of this place.`)
    expect(view.faults[0]?.message).toContain(own.id)
  })
})
