import { sql } from 'kysely'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { createInstall } from '../../db/install.ts'
import { goneWasDisputed } from '../../db/migrations/2026-12-10-gone-was-disputed.ts'
import { voteOnSighting } from '../../db/sighting-votes.ts'
import { insertSighting } from '../../db/sightings.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, install, person, phoneId, product, sighting, store } from '../support/rows.ts'

let test: TestDatabase
beforeAll(async () => {
  test = await testDatabase()
  granted(await createInstall(test.db, install))
})
afterAll(() => test.close())

it('a dispute that "gone" was kept as becomes that word, and the report counts again; one that was meant stays', async () => {
  const [reporter, who] = [await person(test.db), await person(test.db)]
  const disputed = async (answeredAt: string, votedAt: string) => {
    const [{ id: productId }, { id: storeId }, watch] = [await product(test.db), await store(test.db), phoneId()]
    const { id } = granted(await insertSighting(test.db, reporter, sighting(productId, storeId), null)).sighting
    await test.db.transaction().execute((trx) => voteOnSighting(trx, who, id, 'dispute'))
    await sql`update sighting_vote set at = ${votedAt}::timestamptz where sighting_id = ${id}`.execute(test.db)
    await sql`insert into watch (id, person_id, product_id, limit_minor, currency, conditions)
      values (${watch}, ${who.id}, ${productId}, 9000, 'USD', '{new}')`.execute(test.db)
    await sql`insert into notice (id, watch_id, person_id, product_id, store_id, condition, price_minor, currency, total_minor, total_currency, deal_key, sighting_id, seen_on,
        deal_from, deal_until, answer, answered_at)
      values (${phoneId()}, ${watch}, ${who.id}, ${productId}, ${storeId}, 'shelf', 5000, 'USD', 5000, 'USD', 'k', ${id}, '2026-10-01', '2026-10-01', '2026-10-30', 'gone',
        ${answeredAt}::timestamptz)`.execute(test.db)
    return id
  }
  const pressed = await disputed('2026-10-05T12:00:00Z', '2026-10-05T11:59:59Z')
  const meant = await disputed('2026-10-05T12:00:00Z', '2026-10-04T11:00:00Z')
  const since = await disputed('2999-10-05T12:00:00Z', '2999-10-05T12:00:00Z')
  await goneWasDisputed.up(test.db)
  const said = async (id: string) => {
    const { rows } =
      await sql`select v.vote, v.gone_on as said, cardinality(v.gone_by) as answers, s.gone_on as gone, s.disputes, s.accepted
      from sighting s join sighting_vote v on v.sighting_id = s.id where s.id = ${id}`.execute(test.db)
    return rows[0]
  }
  expect(await said(pressed)).toEqual({ vote: null, said: '2026-10-05', answers: 1, gone: '2026-10-05', disputes: 0, accepted: true })
  for (const id of [meant, since])
    expect(await said(id)).toMatchObject({ vote: 'dispute', said: null, gone: null, disputes: 1, accepted: false })
})
