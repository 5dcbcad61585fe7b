import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hashPassword } from '../../api/auth/password-hash.ts'
import { createPerson } from '../../db/people.ts'
import type { ImportView } from '../../core/exchange/import-view.ts'
import { granted, product, sighting, store } from '../support/rows.ts'
import { sendFile } from './support/imports.ts'
import { today } from './support/quotes.ts'
import { createWorld, PASSWORD, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
let member: Browser
const twins: Browser[] = []
const [NAME, FIRST, SECOND] = ['Ines Halberg', 'ines.one', 'ines.two']
beforeAll(async () => {
  world = await createWorld()
  ;[manager, member] = [await world.signIn('manager'), await world.signIn('member')]
  const passwordHash = await hashPassword(PASSWORD)
  for (const [signInName, name] of [
    [FIRST, NAME],
    [SECOND, 'INES HALBERG'],
  ] as const) {
    // prettier-ignore
    const { id } = granted(await createPerson(world.db, { name, signInName, role: 'manager', passwordHash, invitedBy: null }))
    const browser = world.visitor()
    await browser.send('POST', '/api/session', { body: { signInName, password: PASSWORD } })
    twins.push({ ...browser, personId: id, signInName })
  }
})
afterAll(() => world.close())

/** A sighting of each twin, on one product. */
async function seenByBoth(): Promise<string> {
  const [{ id: productId }, { id: storeId }] = [await product(world.db), await store(world.db)]
  for (const twin of twins) await twin.send('POST', '/api/sightings', { body: sighting(productId, storeId, { seenOn: today() }) })
  return productId
}
const CALLED = [`${NAME} (${FIRST})`, `INES HALBERG (${SECOND})`]

describe('two people of one name', () => {
  it('are told apart for a manager in the record, and not for a member, who learns nobody’s sign-in name', async () => {
    const productId = await seenByBoth()
    const record = async (by: Browser) => (await by.send<{ sightings: Array<{ reporterName: string }> }>('GET', `/api/products/${productId}/record`)) // prettier-ignore
    const names = (await record(manager)).body.sightings.map(({ reporterName }) => reporterName)
    expect(names.toSorted()).toEqual(CALLED.toSorted())
    for (const reader of [member, await world.signIn('advisor')]) {
      const answer = await record(reader)
      expect(answer.body.sightings.map(({ reporterName }) => reporterName).toSorted()).toEqual([NAME, 'INES HALBERG'].toSorted())
      expect(answer.text).not.toContain(FIRST)
      const board = await reader.send('GET', '/api/board')
      expect(board.text).toContain(NAME.toUpperCase())
      expect(board.text).not.toMatch(/ines\.(one|two)/)
    }
    expect((await manager.send('GET', '/api/board')).text).toContain(CALLED[1])
  })

  it('are told apart where sightings are taken back, and by whom', async () => {
    await seenByBoth()
    const listed = async () => (await manager.send<{ reporters: Array<{ id: string; name: string; sightings: number }>; undos: Array<{ reporter: { name: string }; undoneBy: string }> }>('GET', '/api/moderation/undos')).body // prettier-ignore
    const { reporters } = await listed()
    expect(reporters.map(({ name }) => name)).toEqual(expect.arrayContaining(CALLED))
    const [first] = twins
    const sightings = reporters.find(({ id }) => id === first?.personId)?.sightings
    await twins[1]?.send('POST', '/api/moderation/undos', { body: { personId: first?.personId, sightings } })
    expect((await listed()).undos[0]).toMatchObject({ reporter: { name: CALLED[0] }, undoneBy: CALLED[1] })
  })

  it('are told apart in the trail and its file, among invitations and imports', async () => {
    const [first, second] = twins
    await first?.send('POST', '/api/people/invitations', { body: { name: 'Ole Brandt', role: 'member' } })
    await manager.send('POST', '/api/session/proof', { body: { password: PASSWORD } })
    await manager.send('POST', `/api/people/${second?.personId}/password-link`)
    const trail = await manager.send<{ items: Array<{ actor: { name: string }; subject: { kind: string; name: string } }> }>('GET', '/api/audit') // prettier-ignore
    expect(trail.body.items[0]).toMatchObject({ subject: { kind: 'person', name: CALLED[1] } })
    expect(trail.body.items.map(({ actor }) => actor.name)).toContain(CALLED[0])
    expect((await manager.send('GET', '/api/audit/file')).text).toContain(CALLED[0])
    const { items } = (await manager.send<{ items: Array<{ madeBy: string }> }>('GET', '/api/people/invitations')).body
    expect(items.map(({ madeBy }) => madeBy)).toEqual([CALLED[0]])
    if (first) expect((await sendFile(first, 'name\nOle', { set: 'customers' })).body.startedBy).toBe(CALLED[0])
    expect((await manager.send<{ items: ImportView[] }>('GET', '/api/imports')).body.items[0]?.startedBy).toBe(CALLED[0])
  })

  it('are one name again once the other is called something else', async () => {
    await world.db.updateTable('person').set({ name: 'Odo Fennick' }).where('sign_in_name', '=', SECOND).execute()
    const { reporters } = (await manager.send<{ reporters: Array<{ name: string }> }>('GET', '/api/moderation/undos')).body
    expect(reporters.map(({ name }) => name)).toContain('Odo Fennick')
    expect(JSON.stringify(reporters)).not.toContain('(ines')
  })
})
