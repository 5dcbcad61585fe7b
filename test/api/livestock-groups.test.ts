import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { LIVESTOCK_GROUPS } from '../../core/catalog/livestock.ts'
import type { LivestockGroup } from '../../core/sizing/conditions.ts'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import { resolveConditions } from '../../core/quote/conditions.ts'
import { listAudit } from '../../db/audit.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

type Stored = LivestockGroup & { version: number }
interface Refused {
  errors: Array<{ field: string; message: string }>
}

let world: World
let manager: Browser
beforeEach(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterEach(() => world.close())

const read = (id: string) => manager.send<Stored>('GET', `/api/livestock-groups/${id}`)
const bodyOf = ({ id: _id, version: _version, standing: _standing, ...fields }: Stored) => fields
async function change(id: string, part: Partial<LivestockGroup>, etag?: string) {
  const before = await read(id)
  const headers = { 'if-match': etag ?? before.headers.get('etag') ?? '' }
  return manager.send<Stored & Refused>('PUT', `/api/livestock-groups/${id}`, { body: { ...bodyOf(before.body), ...part }, headers })
}

describe('livestock groups', () => {
  it('are there from the first start, each as it comes and with its source', async () => {
    const { body } = await manager.send<{ items: Stored[] }>('GET', '/api/livestock-groups')
    const byId = new Map(body.items.map(({ version: _version, ...group }) => [group.id, group]))
    expect(byId.size).toBe(LIVESTOCK_GROUPS.length)
    for (const group of LIVESTOCK_GROUPS) expect(byId.get(group.id)).toEqual(group)
  })

  it('say that they were edited, at the version that was read', async () => {
    const first = await read('dwarf-shrimp')
    const changed = await change('dwarf-shrimp', { targetC: 23, source: 'the club’s breeders, autumn 2026' })
    expect(changed).toMatchObject({ status: 200, body: { targetC: 23, standing: 'edited', version: 2 } })
    expect((await change('dwarf-shrimp', { targetC: 24 }, first.headers.get('etag') ?? '')).status).toBe(412)
    const without = await manager.send('PUT', '/api/livestock-groups/dwarf-shrimp', { body: bodyOf(first.body) })
    expect(without.status).toBe(428)
    const trail = await listAudit(world.db, { id: (await manager.send<{ person: { id: string } }>('GET', '/api/session')).body.person.id, role: 'manager' }, { limit: 5, offset: 0 }) // prettier-ignore
    expect(trail.items.map(({ action }) => action)).toContain('livestock_group_changed')
  })

  it('that are saved as they were stay what they were, and are put back to what they came with', async () => {
    expect((await change('labyrinth', {})).body).toMatchObject({ version: 1 })
    expect((await change('labyrinth', {})).body.standing).toBeUndefined()
    await change('labyrinth', { feedGramsPerDay: 9 })
    const seed = LIVESTOCK_GROUPS.find(({ id }) => id === 'labyrinth')
    if (seed === undefined) throw new Error('no such group')
    const { id: _id, ...cameWith } = seed
    const back = await change('labyrinth', cameWith)
    expect(back).toMatchObject({ status: 200, body: { ...seed, version: 3 } })
    expect(back.body.standing).toBeUndefined()
  })

  it('may be a place’s own, if it says where the figures come from', async () => {
    const { body } = await read('small-tropical')
    const own = { ...bodyOf(body), name: 'Our pond shrimps', source: 'own record, 2019 to 2026' }
    const made = await manager.send<Stored>('POST', '/api/livestock-groups', { body: own })
    expect(made).toMatchObject({ status: 201, body: { standing: 'own', name: 'Our pond shrimps' } })
    const silent = await manager.send<Refused>('POST', '/api/livestock-groups', { body: { ...own, name: 'Another', source: '' } })
    expect(silent).toMatchObject({ status: 422, body: { errors: [{ field: 'source' }] } })
    const again = await manager.send<Refused>('POST', '/api/livestock-groups', { body: own })
    expect(again.status).toBe(422)
    expect(again.body.errors[0]?.field).toBe('name')
  })

  it.each([
    [{ targetC: 15 }, 'targetC'],
    [{ highestC: 20 }, 'highestC'],
    [{ dangerC: 28 }, 'dangerC'],
    [{ flowCeilingPerHour: 1 }, 'flowCeilingPerHour'],
    [{ smallestVolumeL: 0 }, 'smallestVolumeL'],
    [{ lowestC: 80 }, 'lowestC'],
  ])('refuse %j at its field', async (part, field) => {
    const refused = await change('small-tropical', part)
    expect(refused.status).toBe(422)
    expect(refused.body.errors.map((one) => one.field)).toContain(field)
  })

  it('are changed by a manager alone and read by everyone who is signed in', async () => {
    const advisor = await world.signIn('advisor')
    const before = await read('labyrinth')
    const headers = { 'if-match': before.headers.get('etag') ?? '' }
    expect((await advisor.send('PUT', '/api/livestock-groups/labyrinth', { body: bodyOf(before.body), headers })).status).toBe(403)
    expect((await advisor.send('GET', '/api/livestock-groups')).status).toBe(200)
  })
})

describe('a quote', () => {
  it('takes the edited figures, and holds temperatures against them', async () => {
    const customer = await manager.send<{ id: string }>('POST', '/api/customers', { body: { name: 'Ada Quill' } })
    const made = await manager.send<QuoteView>('POST', '/api/quotes', { body: { customerId: customer.body.id } })
    expect(resolveConditions(made.body.draft.need, made.body.install).livestock.targetC).toBe(25)
    await change('small-tropical', { lowestC: 23, targetC: 24 })
    const opened = await manager.send<QuoteView>('GET', `/api/quotes/${made.body.id}`)
    expect(resolveConditions(opened.body.draft.need, opened.body.install).livestock).toMatchObject({ targetC: 24, standing: 'edited' })
    // What was read before the edit still gives what it gave.
    expect(resolveConditions(made.body.draft.need, made.body.install).livestock.targetC).toBe(25)
    const draft = { ...opened.body.draft, need: { ...opened.body.draft.need, exact: { targetC: 22 } } }
    const refused = await manager.send<Refused>('PUT', `/api/quotes/${made.body.id}`, {
      body: { customerId: customer.body.id, draft },
      headers: { 'if-match': opened.headers.get('etag') ?? '' },
    })
    expect(refused).toMatchObject({ status: 422, body: { errors: [{ field: 'draft.need.exact.targetC' }] } })
    expect(refused.body.errors[0]?.message).toContain('23 °C')
  })
  it('is told by the sizing as well', async () => {
    const refused = await manager.send<Refused>('POST', '/api/sizing', {
      body: { gear: {}, livestockId: 'cool-stream', conditions: { targetC: 12 } },
    })
    expect(refused).toMatchObject({ status: 422, body: { errors: [{ field: 'conditions.targetC' }] } })
  })
})
