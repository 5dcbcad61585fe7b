import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { SightingRow } from '../../core/pricing/record.ts'
import { createPerson } from '../../db/people.ts'
import { markGone } from '../../db/sighting-gone.ts'
import { granted, phoneId, product, sighting, store, unique } from '../support/rows.ts'
import { createWorld, testPasswordHash, PASSWORD, type Answer, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
let member: Browser
let ids: { productId: string; storeId: string }
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
  member = await world.signIn('member')
  ids = { productId: (await product(world.db)).id, storeId: (await store(world.db)).id }
})
afterAll(() => world.close())

type Row = SightingRow & Record<string, unknown>
const day = (): string => new Date(Date.now() - 2 * 86_400_000).toISOString().slice(0, 10)
const post = async (by: Browser, fields = {}): Promise<Row> => {
  const answer = await by.send<Row>('POST', '/api/sightings', {
    body: { ...sighting(ids.productId, ids.storeId), seenOn: day(), ...fields },
  })
  if (answer.status !== 201) throw new Error(answer.text)
  return answer.body
}
/** A tenth of what was seen there: it waits for a second person. Of a product of its own, whose record nothing else moves. */
async function doubted(by: Browser): Promise<Row> {
  const { id: productId } = await product(world.db)
  await post(member, { productId })
  return post(by, { productId, priceMinor: 499 })
}
const waiting = async (): Promise<string[]> =>
  (await manager.send<{ items: Row[] }>('GET', '/api/moderation/sightings')).body.items.map(({ id }) => id)
const judge = (id: string, body: object, by = manager): Promise<Answer<Row>> => by.send('POST', `/api/moderation/sightings/${id}`, { body })
const trail = async (action: string): Promise<number> =>
  (
    await world.db
      .selectFrom('audit_entry')
      .select('id')
      .where('action', '=', action as 'sighting_ruled')
      .execute()
  ).length

describe('the list of what waits', () => {
  it('holds the doubted and the disputed, and neither what counts nor what was withdrawn', async () => {
    const plain = await post(member)
    const waits = await doubted(member)
    const disputed = await post(member, { priceMinor: 5049 })
    await (await world.signIn('member')).send('POST', `/api/sightings/${disputed.id}/dispute`)
    const gone = await doubted(member)
    await member.send('POST', `/api/sightings/${gone.id}/withdraw`)
    const list = await waiting()
    expect(list).toEqual(expect.arrayContaining([waits.id, disputed.id]))
    expect(list).not.toContain(plain.id)
    expect(list).not.toContain(gone.id)
  })

  it('is left by an accepted one, in which the manager counts as the second person', async () => {
    const { id } = await doubted(member)
    const accepted = await judge(id, { decision: 'accept' })
    expect(accepted.status, accepted.text).toBe(200)
    expect(accepted.body).toMatchObject({ confirmations: 1, myVote: 'confirm' })
    expect(await waiting()).not.toContain(id)
  })

  it('does not take a manager who invited the reporter for a second person', async () => {
    const name = unique('Invited')
    const signInName = name.toLowerCase().replace(' ', '.')
    granted(
      await createPerson(world.db, {
        name,
        signInName,
        role: 'member',
        passwordHash: await testPasswordHash(),
        invitedBy: manager.personId,
      }),
    )
    const invited = world.visitor()
    await invited.send('POST', '/api/session', { body: { signInName, password: PASSWORD } })
    const { id } = await doubted(invited)
    const refused = await judge(id, { decision: 'accept' })
    expect(refused.status).toBe(409)
    expect(await waiting()).toContain(id)
    // Taking it away is her office, whoever invited whom.
    expect((await judge(id, { decision: 'withdraw', reason: 'a tag of the shelf above' })).status).toBe(200)
    expect(await waiting()).not.toContain(id)
  })

  it('has a vote on what came with a file for everybody but who imported it, whoever invited whom', async () => {
    const [name, signInName] = [unique('Listed'), unique('listed').toLowerCase().replace(' ', '.')]
    const passwordHash = await testPasswordHash()
    granted(await createPerson(world.db, { name, signInName, role: 'member', passwordHash, invitedBy: manager.personId }))
    const invited = world.visitor()
    await invited.send('POST', '/api/session', { body: { signInName, password: PASSWORD } })
    const posted = await post(manager)
    const told = async (who: Browser) => (await who.send<Row>('GET', `/api/sightings/${posted.id}`)).body
    expect(await told(invited)).toMatchObject({ mayVote: false, tie: 'invited_you' })
    expect((await invited.send('POST', `/api/sightings/${posted.id}/dispute`)).status).toBe(409)
    await world.db.updateTable('sighting').set({ imported: true }).where('id', '=', posted.id).execute()
    expect(await told(invited)).toMatchObject({ mayVote: true, tie: null, imported: true })
    expect((await invited.send('POST', `/api/sightings/${posted.id}/dispute`)).body).toMatchObject({
      disputes: 0,
      oneMore: expect.stringContaining('One more is needed') as string,
    })
    expect((await manager.send('POST', `/api/sightings/${posted.id}/confirm`)).status).toBe(409)
    expect(await told(manager)).toMatchObject({ mayVote: false, own: true })
  })

  it('is left by a withdrawn one only with a reason, once', async () => {
    const { id } = await doubted(member)
    const bare = await judge(id, { decision: 'withdraw' })
    expect(bare.status).toBe(422)
    expect(JSON.stringify(bare.body)).toContain('Reason')
    const withdrawn = await trail('sighting_withdrawn')
    expect((await judge(id, { decision: 'withdraw', reason: 'wrong shelf' })).body).toMatchObject({ withdrawn: true })
    expect((await judge(id, { decision: 'withdraw', reason: 'wrong shelf' })).status).toBe(409)
    expect(await trail('sighting_withdrawn')).toBe(withdrawn + 1)
    const [entry] = (await manager.send<{ items: Array<{ changes: unknown[] }> }>('GET', '/api/audit?subject=sighting')).body.items
    const price = expect.stringMatching(/^\$\d+\.\d\d$/) as string
    expect(entry?.changes, 'two withdrawals can be told apart').toEqual([
      { field: 'price', after: price },
      { field: 'reason', after: 'wrong shelf' },
      { field: 'seen', after: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) as string },
    ])
    // Its reporter reads why.
    expect((await member.send<Row>('GET', `/api/sightings/${id}`)).body).toMatchObject({ withdrawn: true, withdrawnReason: 'wrong shelf' })
  })
})

describe('a vote', () => {
  it('is taken back by who gave it, as if it had never been given', async () => {
    const { id } = await post(member)
    const [one, two] = [await world.signIn('member'), await world.signIn('member')]
    await one.send('POST', `/api/sightings/${id}/dispute`)
    await two.send('POST', `/api/sightings/${id}/dispute`)
    const taken = await one.send<Row>('DELETE', `/api/sightings/${id}/vote`)
    expect(taken.body).toMatchObject({ disputes: 1, myVote: null })
    expect((await one.send<Row>('DELETE', `/api/sightings/${id}/vote`)).body).toMatchObject({ disputes: 1 })
    expect((await two.send<Row>('DELETE', `/api/sightings/${id}/vote`)).body).toMatchObject({ disputes: 0, myVote: null })
    expect((await one.send('DELETE', `/api/sightings/${phoneId()}/vote`)).status).toBe(404)
  })
})

describe('all sightings of one person', () => {
  interface Undos {
    reporters: Array<{ id: string; sightings: number }>
    undos: Array<{ id: string; sightings: number; reversedAt: string | null }>
  }
  const told = async (personId: string): Promise<number> =>
    (await manager.send<Undos & Record<string, unknown>>('GET', '/api/moderation/undos')).body.reporters.find(({ id }) => id === personId)
      ?.sightings ?? 0
  const undo = (personId: string, sightings: number): Promise<Answer<{ id: string }>> =>
    manager.send('POST', '/api/moderation/undos', { body: { personId, sightings } })
  const standing = async (personId: string): Promise<number> =>
    (await world.db.selectFrom('sighting').select('id').where('reporter_id', '=', personId).where('withdrawn_at', 'is', null).execute())
      .length

  it('are taken back with the number that was told, and put back within 30 days', async () => {
    const careless = await world.signIn('member')
    for (let n = 0; n < 3; n += 1) await post(careless, { priceMinor: 5000 + n })
    expect(await told(careless.personId)).toBe(3)
    await post(careless)
    const stale = await undo(careless.personId, 3)
    expect(stale.status).toBe(412)
    expect(await standing(careless.personId)).toBe(4)
    const undone = await undo(careless.personId, 4)
    expect(undone.status, undone.text).toBe(201)
    expect(await standing(careless.personId)).toBe(0)
    expect(await told(careless.personId)).toBe(0)
    expect((await undo(careless.personId, 1)).status).toBe(404)
    const back = await manager.send('DELETE', `/api/moderation/undos/${undone.body.id}`)
    expect(back.status, back.text).toBe(200)
    expect(await standing(careless.personId)).toBe(4)
    expect((await manager.send('DELETE', `/api/moderation/undos/${undone.body.id}`)).status).toBe(409)
  })

  it('are not taken back where one more comes at that very moment', async () => {
    const busy = await world.signIn('member')
    for (let n = 0; n < 2; n += 1) await post(busy, { priceMinor: 5000 + n })
    // The moment between counting and taking back, made sure of: what comes in it is written as the undo is.
    await sql`create function one_more() returns trigger language plpgsql as $$ begin
      insert into sighting (id, product_id, store_id, condition, price_minor, seen_on, evidence, reporter_id, received_at)
      select gen_random_uuid(), product_id, store_id, condition, price_minor, seen_on, evidence, reporter_id, received_at
      from sighting where reporter_id = new.reporter_id limit 1;
      return null; end $$`.execute(world.db)
    await sql`create trigger one_more after insert on sighting_undo for each row execute function one_more()`.execute(world.db)
    const refused = await undo(busy.personId, 2)
    await sql`drop function one_more cascade`.execute(world.db)
    expect(refused.status).toBe(412)
    expect(await standing(busy.personId)).toBe(2)
    expect((await undo(busy.personId, 2)).status).toBe(201)
  })

  it('put back leave withdrawn what was withdrawn before, or by the reporter meanwhile', async () => {
    const reporter = await world.signIn('member')
    const rows = [await post(reporter, { priceMinor: 5001 }), await post(reporter, { priceMinor: 5002 }), await post(reporter)]
    await reporter.send('POST', `/api/sightings/${rows[0]?.id}/withdraw`)
    const undone = await undo(reporter.personId, 2)
    await reporter.send('POST', `/api/sightings/${rows[1]?.id}/withdraw`)
    await manager.send('DELETE', `/api/moderation/undos/${undone.body.id}`)
    const left = await world.db
      .selectFrom('sighting')
      .select('id')
      .where('reporter_id', '=', reporter.personId)
      .where('withdrawn_at', 'is', null)
      .execute()
    expect(left.map(({ id }) => id)).toEqual([rows[2]?.id])
  })

  it('go with what that person found gone, of anybody’s, which managers are told by name; put back, it is gone again', async () => {
    const [finder, other] = [await world.signIn('member'), await world.signIn('member')]
    const { id } = await post(member)
    const gone = async (by = manager) => (await by.send<Row>('GET', `/api/sightings/${id}`)).body
    const say = (who: Browser) => world.db.transaction().execute((trx) => markGone(trx, { id: who.personId }, phoneId(), [id], day()))
    await say(finder)
    const { name } = await world.db.selectFrom('person').select('name').where('id', '=', finder.personId).executeTakeFirstOrThrow()
    expect(await gone()).toMatchObject({ goneOn: day(), goneBy: [name] })
    expect(await gone(finder), 'members are not told who').toMatchObject({ goneOn: day(), goneBy: null })
    const take = (foundGone: number) =>
      manager.send<{ id: string }>('POST', '/api/moderation/undos', { body: { personId: finder.personId, sightings: 0, foundGone } })
    const listed = (await manager.send<{ reporters: unknown[] }>('GET', '/api/moderation/undos')).body.reporters
    expect(listed).toContainEqual({ id: finder.personId, name, sightings: 0, foundGone: 1 })
    expect((await take(2)).status).toBe(412)
    const undone = await take(1)
    expect(undone, undone.text).toMatchObject({ status: 201, body: { sightings: 0, foundGone: 1 } })
    expect(await gone()).toMatchObject({ goneOn: null, goneBy: null })
    expect((await manager.send('DELETE', `/api/moderation/undos/${undone.body.id}`)).status).toBe(200)
    expect(await gone()).toMatchObject({ goneOn: day(), goneBy: [name] })
    await say(other)
    await take(1)
    expect((await gone()).goneOn, 'what another found gone stays so').toBe(day())
  })

  it('stay taken back after 30 days', async () => {
    const reporter = await world.signIn('member')
    await post(reporter)
    const undone = await undo(reporter.personId, 1)
    const { clock } = world.deps
    world.rebuild({ clock: () => Date.now() + 30 * 86_400_000 + 1000 })
    const late = await manager.send('DELETE', `/api/moderation/undos/${undone.body.id}`)
    world.rebuild({ clock })
    expect(late.status).toBe(409)
    expect(await standing(reporter.personId)).toBe(0)
  })
})
