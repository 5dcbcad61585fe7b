import { randomUUID } from 'node:crypto'
import { fc, test as property } from '@fast-check/vitest'
import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addDays } from '../../core/dates.ts'
import { priceViews } from '../../core/pricing/price-views.ts'
import { board } from '../../db/board.ts'
import { SUMMARY_DAYS } from '../../core/pricing/pair-summary.ts'
import type { Doubt } from '../../core/pricing/sighting.ts'
import { createInstall } from '../../db/install.ts'
import { refreshPairs } from '../../db/price-summaries.ts'
import { seenPricesOfProducts } from '../../db/seen-prices.ts'
import { basisOf, sightingContext } from '../../db/sighting-context.ts'
import { insertSighting, sightingsOfProducts, type SightingFields } from '../../db/sightings.ts'
import { markGone, unmarkGone } from '../../db/sighting-gone.ts'
import { takeBackVote, voteOnSighting, withdrawSighting } from '../../db/sighting-votes.ts'
import { reverseUndo, undoSightings } from '../../db/sighting-undo.ts'
import { areSummariesCurrent, rebuildSummaries } from '../../db/summary-rebuild.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, install, person, product, sighting, store } from '../support/rows.ts'

let test: TestDatabase
let members: Viewer[]
let manager: Viewer
const DAY = '2026-10-20'
/** Of notices that somebody was told. */
const noticeIds = [randomUUID(), randomUUID()]

beforeAll(async () => {
  test = await testDatabase()
  granted(await createInstall(test.db, install))
  members = [await person(test.db), await person(test.db), await person(test.db)]
  manager = await person(test.db, 'manager')
})
afterAll(() => test.close())

/** One thing that somebody does; numbers pick who, where and which sighting of those that there are. */
const step = fc.record({
  act: fc.constantFrom(
    'post',
    'post',
    'post',
    'confirm',
    'dispute',
    'take_back',
    'gone',
    'gone',
    'not_gone',
    'withdraw',
    'undo',
    'reverse',
  ),
  who: fc.nat(2),
  where: fc.nat(1),
  which: fc.nat(30),
  condition: fc.constantFrom('shelf' as const, 'shelf' as const, 'sale' as const, 'clearance' as const, 'used' as const),
  step: fc.integer({ min: 3, max: 9 }),
  printed: fc.boolean(),
  // Most come on their day, some weeks late, and some were seen longer ago than a summary reaches.
  daysAgo: fc.oneof(fc.nat(3), fc.nat(60), fc.nat(1200)),
  doubted: fc.integer({ min: 0, max: 5 }).map((draw) => draw === 0),
})
type Step = typeof step extends fc.Arbitrary<infer Value> ? Value : never

/** As a phone's post is taken: added to what the question of its place told of the record. */
async function post(viewer: Viewer, fields: SightingFields, doubt: Doubt | null): Promise<string> {
  const context = await sightingContext(test.db, { ...fields, reporterId: viewer.id }, addDays(fields.seenOn, -SUMMARY_DAYS))
  return granted(await insertSighting(test.db, viewer, fields, doubt, basisOf(context, fields, doubt))).sighting.id
}

async function act(one: Step, productId: string, storeIds: readonly string[], taken: string[], undone: string[]): Promise<void> {
  const viewer = members[one.who] as Viewer
  const id = taken[one.which % Math.max(1, taken.length)] ?? ''
  if (one.act === 'post') {
    const fields = sighting(productId, storeIds[one.where] ?? '', {
      condition: one.condition,
      priceMinor: one.step * 1000,
      printedRegularMinor: one.printed ? 9_000 : null,
      seenOn: addDays(DAY, -one.daysAgo),
    })
    const doubt = one.doubted ? { code: 'too_deep' as const, words: 'deep' } : null
    taken.push(await post(viewer, fields, doubt))
  } else if (one.act === 'withdraw') await withdrawSighting(test.db, viewer, id)
  else if (one.act === 'gone') {
    const day = addDays(DAY, -(one.daysAgo % 70))
    await test.db.transaction().execute((trx) => markGone(trx, viewer, noticeIds[one.where] ?? '', [id, ...taken.slice(-1)], day))
  } else if (one.act === 'not_gone') {
    await test.db.transaction().execute((trx) => unmarkGone(trx, viewer, noticeIds[one.where] ?? ''))
  } else if (one.act === 'undo') {
    const told = await test.db
      .selectFrom('sighting')
      .select((eb) => eb.fn.countAll<number>().as('count'))
      .where('reporter_id', '=', viewer.id)
      .where('withdrawn_at', 'is', null)
      .executeTakeFirstOrThrow()
    const gone = await test.db
      .selectFrom('sighting_vote')
      .select((eb) => eb.fn.countAll<number>().as('count'))
      .where('person_id', '=', viewer.id)
      .where('gone_on', 'is not', null)
      .executeTakeFirstOrThrow()
    if (told.count + gone.count === 0) return
    const undo = await test.db
      .transaction()
      .execute((trx) => undoSightings(trx, manager, viewer.id, { sightings: told.count, foundGone: gone.count }, new Date()))
    undone.push(granted(undo).id)
  } else if (one.act === 'reverse') {
    const last = undone.pop()
    if (last !== undefined) await test.db.transaction().execute((trx) => reverseUndo(trx, manager, last, new Date()))
  } else {
    const { act: vote } = one
    await test.db.transaction().execute(async (trx) => {
      await (vote === 'take_back' ? takeBackVote(trx, viewer, id) : voteOnSighting(trx, viewer, id, vote))
    })
  }
}

const kept = async (): Promise<unknown[]> =>
  (
    await sql<object>`select product_id, store_id, sightings, newest_id, newest_on, newest_at::text, facts from price_summary
      order by product_id, store_id`.execute(test.db)
  ).rows

describe('summaries', () => {
  property.prop([fc.array(step, { minLength: 5, maxLength: 25 })], { numRuns: 12, endOnFailure: true })(
    'kept with each post, vote and withdrawal have the bytes that they are rebuilt to, and say what the sightings say',
    async (steps) => {
      // Nobody posts more than 120 an hour; what other runs posted is older.
      await sql`update sighting set received_at = received_at - interval '1 day' where received_at > now() - interval '1 hour'`.execute(
        test.db,
      )
      await rebuildSummaries(test.db)
      const { id } = await product(test.db)
      const storeIds = [(await store(test.db)).id, (await store(test.db)).id]
      const [taken, undone]: [string[], string[]] = [[], []]
      for (const one of steps) await act(one, id, storeIds, taken, undone)
      const before = await kept()
      expect(await rebuildSummaries(test.db)).toMatchObject({ changed: 0 })
      expect(await kept()).toEqual(before)
      const views = await seenPricesOfProducts(test.db, [id], DAY)
      for (const day of [DAY, addDays(DAY, -1), addDays(DAY, 40)])
        expect(await seenPricesOfProducts(test.db, [id], day), day).toEqual(priceViews(await sightingsOfProducts(test.db, [id]), day))
      for (const { best, today } of views) if (best && today) expect(best.priceMinor).toBeLessThanOrEqual(today.priceMinor)
    },
  )

  it('reach back from the newest price that counts, a used one among them, whatever doubted one is newer', async () => {
    const viewer = members[0] as Viewer
    for (const [condition, doubt] of [
      ['used', null],
      ['sale', { code: 'too_deep', words: 'deep' }],
    ] as const) {
      const [{ id }, at] = [await product(test.db), await store(test.db)]
      await post(viewer, sighting(id, at.id, { condition: 'shelf', priceMinor: 9000, seenOn: '2025-01-10' }), null)
      await post(viewer, sighting(id, at.id, { condition: 'sale', priceMinor: 7000, seenOn: '2026-06-01' }), null)
      await post(viewer, sighting(id, at.id, { condition, priceMinor: 3000, seenOn: '2026-11-20' }), doubt)
      const { facts } = await test.db.selectFrom('price_summary').select('facts').where('product_id', '=', id).executeTakeFirstOrThrow()
      expect(facts.includes('2025-01-10'), condition).toBe(doubt !== null)
      expect(facts.includes('"used"'), condition).toBe(doubt === null)
      expect(await rebuildSummaries(test.db), condition).toMatchObject({ changed: 0 })
    }
  })

  it('lose none of many posts and votes at one moment', async () => {
    const { id } = await product(test.db)
    const storeId = (await store(test.db)).id
    const days = Array.from({ length: 12 }, (_, index) => addDays(DAY, -index))
    const posted = await Promise.all(
      days.map((seenOn, index) =>
        insertSighting(test.db, members[index % 2] as Viewer, sighting(id, storeId, { seenOn, priceMinor: 5000 + index }), null),
      ),
    )
    const ids = posted.map((one) => granted(one).sighting.id)
    await Promise.all(ids.map((one) => test.db.transaction().execute((trx) => voteOnSighting(trx, members[2] as Viewer, one, 'dispute'))))
    const [row] = await test.db.selectFrom('price_summary').selectAll().where('product_id', '=', id).execute()
    expect(row).toMatchObject({ sightings: 12, facts: '[]', newest_id: null })
    expect(await rebuildSummaries(test.db)).toMatchObject({ changed: 0 })
  })

  it('of one pair wait for nobody who makes many, however many of its sightings changed', async () => {
    const [{ id: productId }, one, other] = [await product(test.db), await store(test.db), await store(test.db)]
    const waitsIn = (storeIds: string[]): Promise<boolean> =>
      test.db.transaction().execute(async (trx) => {
        const pairs = storeIds.map((storeId) => ({ productId, storeId }))
        await refreshPairs(trx, pairs, false)
        const { rows } = await sql`select from pg_locks where locktype = 'advisory' and pid = pg_backend_pid()`.execute(trx)
        return rows.length > 0
      })
    expect([await waitsIn([one.id, one.id]), await waitsIn([one.id, other.id])]).toEqual([false, true])
  })

  it('are made anew for what was put there past them, and the board follows', async () => {
    const { id } = await product(test.db)
    const storeId = (await store(test.db)).id
    const { id: first } = granted(
      await insertSighting(test.db, members[0] as Viewer, sighting(id, storeId, { seenOn: DAY }), null),
    ).sighting
    const onBoard = async (): Promise<string[]> =>
      (await board(test.db, manager, { storeId, since: addDays(DAY, -180), limit: 50, offset: 0 })).rows.map(({ sighting: one }) => one.id)
    expect(await onBoard()).toEqual([first])
    await sql`update sighting set withdrawn_at = now() where id = ${first}`.execute(test.db)
    expect(await test.db.transaction().execute((trx) => refreshPairs(trx, [{ productId: id, storeId }], true))).toEqual([
      { productId: id, storeId },
    ])
    expect(await onBoard()).toEqual([])
    await sql`delete from price_summary_method`.execute(test.db)
    expect(await areSummariesCurrent(test.db)).toBe(false)
    await rebuildSummaries(test.db)
    expect(await areSummariesCurrent(test.db)).toBe(true)
  })
})
