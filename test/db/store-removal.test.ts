import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { deleteStore, readStoreMentions, type StoreMentions } from '../../db/store-removal.ts'
import { findStore } from '../../db/stores.ts'
import { saveDraft } from '../../db/quotes.ts'
import type { Viewer } from '../../db/viewer.ts'
import type { QuoteDraft } from '../../core/quote/draft.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { draft, issue, quote } from '../support/quote-rows.ts'
import { granted, person, store } from '../support/rows.ts'

let test: TestDatabase
let advisor: Viewer
beforeAll(async () => {
  test = await testDatabase()
  advisor = await person(test.db, 'advisor')
})
afterAll(() => test.close())

const naming = (storeId: string): QuoteDraft => ({ ...draft(), need: { ...draft().need, storeIds: [storeId] } })
const remove = (mentions: StoreMentions) => test.db.transaction().execute((trx) => deleteStore(trx, mentions))
const save = (made: { id: string; customer: { id: string } }, version: number, next: QuoteDraft) =>
  saveDraft(test.db, advisor, made.id, version, { customerId: made.customer.id, draft: next })

describe('a store that is taken out', () => {
  it('is gone where no quote on any page of them names it', async () => {
    const spare = await store(test.db)
    const made = await quote(test.db, advisor)
    const {
      customer_id,
      advisor_id,
      title,
      draft: held,
    } = await test.db.selectFrom('quote').selectAll().where('id', '=', made.id).executeTakeFirstOrThrow()
    const row = { customer_id, advisor_id, title, draft: held }
    await test.db
      .insertInto('quote')
      .values(Array.from({ length: 250 }, () => row))
      .execute()
    const mentions = await readStoreMentions(test.db, spare.id)
    expect(mentions.read.size).toBe(251)
    granted(await remove(mentions))
    expect(await findStore(test.db, spare.id)).toBeUndefined()
  })

  it('stays where a quote of the last page names it', async () => {
    const named = await store(test.db)
    const { id: last } = await test.db.selectFrom('quote').select('id').orderBy('id', 'desc').limit(1).executeTakeFirstOrThrow()
    await test.db
      .updateTable('quote')
      .set({ draft: naming(named.id) })
      .where('id', '=', last)
      .execute()
    expect(await remove(await readStoreMentions(test.db, named.id))).toMatchObject({ refusal: { code: 'in_use' } })
  })

  it('stays where a new quote, a saved draft or an issue came between the reading and the end', async () => {
    const named = await store(test.db)
    const [older, issued] = [await quote(test.db, advisor), await quote(test.db, advisor)]
    const mentions = await readStoreMentions(test.db, named.id)
    granted(await save(older, 1, naming(named.id)))
    granted(await save(issued, 1, naming(named.id)))
    granted(await issue(test.db, advisor, { id: issued.id, version: 2 }))
    granted(await save(await quote(test.db, advisor), 1, naming(named.id)))
    const refused = await remove(mentions)
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'in_use', message: expect.stringContaining('3 quotes name') as string } })
    expect(await findStore(test.db, named.id)).toBeDefined()
  })

  it('goes where the one draft that named it stopped doing so', async () => {
    const named = await store(test.db)
    const made = await quote(test.db, advisor)
    granted(await save(made, 1, naming(named.id)))
    const mentions = await readStoreMentions(test.db, named.id)
    expect(mentions.read.get(made.id)).toEqual({ version: 2, names: true })
    granted(await save(made, 2, draft()))
    granted(await remove(mentions))
  })

  it('stays where an issued document names it and no draft does any more', async () => {
    const named = await store(test.db)
    const made = await quote(test.db, advisor)
    granted(await issue(test.db, advisor, made))
    await test.db
      .insertInto('quote_revision')
      .columns(['quote_id', 'revision', 'document', 'summary', 'issued_at', 'issued_on', 'stands_until'])
      .expression((eb) =>
        eb
          .selectFrom('quote_revision')
          .select(['quote_id', eb.lit(2).as('revision')])
          .select(eb.val<never>({ storeId: named.id } as never).as('document'))
          .select(['summary', 'issued_at', 'issued_on', 'stands_until'])
          .where('quote_id', '=', made.id),
      )
      .execute()
    expect(await remove(await readStoreMentions(test.db, named.id))).toMatchObject({ refusal: { code: 'in_use' } })
  })
})
