import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createCustomer, findCustomer, listCustomers, updateCustomer } from '../../db/customers.ts'
import { answerQuote } from '../../db/quote-answer.ts'
import { listQuotes } from '../../db/quote-list.ts'
import { createQuote, discardDraft, findQuote, lapseQuotes, saveDraft, withdrawQuote } from '../../db/quotes.ts'
import { findLinkedQuote, findRevision } from '../../db/revisions.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { draft, issue, issued, quote } from '../support/quote-rows.ts'
import { granted, person } from '../support/rows.ts'

let test: TestDatabase
let advisor: Viewer
let member: Viewer
beforeAll(async () => {
  test = await testDatabase()
  advisor = await person(test.db, 'advisor')
  member = await person(test.db)
})
afterAll(() => test.close())

const yes = { revision: 1, answer: 'accepted', letter: 'A', note: '', at: new Date('2026-11-12T09:00:00Z'), today: '2026-11-12' } as const
const answer = (id: string, given: Partial<Parameters<typeof answerQuote>[2]> = {}) =>
  test.db.transaction().execute((trx) => answerQuote(trx, id, { ...yes, ...given }))

describe('customers', () => {
  it('exist for advisors only', async () => {
    const made = granted(await createCustomer(test.db, advisor, { name: 'Ola Brandt', reach: 'ola@example.test', note: '' }))
    expect(await findCustomer(test.db, advisor, made.id)).toEqual(made)
    expect((await listCustomers(test.db, advisor, { q: 'BRANDT' })).map((one) => one.id)).toEqual([made.id])
    expect(await findCustomer(test.db, member, made.id)).toBeUndefined()
    expect(await listCustomers(test.db, member)).toEqual([])
    expect((await createCustomer(test.db, member, { name: 'X', reach: '', note: '' })).ok).toBe(false)
    const fields = { name: 'Ola B.', reach: '', note: 'calls back' }
    expect(await updateCustomer(test.db, member, made.id, 1, fields)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
    expect(granted(await updateCustomer(test.db, advisor, made.id, 1, fields))).toMatchObject({ ...fields, version: 2 })
    expect(await updateCustomer(test.db, advisor, made.id, 1, fields)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
  })
})

describe('a draft', () => {
  it('is saved whole, at the version it was based on, by advisors only', async () => {
    const made = await quote(test.db, advisor)
    expect(made).toMatchObject({ number: null, state: 'draft', version: 1, revisions: [], answer: null, setup: null })
    const next = { customerId: made.customer.id, draft: { ...draft('Reading room'), note: "Robert'); drop table quote;--" } }
    expect(granted(await saveDraft(test.db, advisor, made.id, 1, next))).toMatchObject({ version: 2, draft: next.draft })
    expect(await saveDraft(test.db, advisor, made.id, 1, next)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
    expect(await saveDraft(test.db, member, made.id, 2, next)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
    expect(await findQuote(test.db, member, made.id)).toBeUndefined()
    expect((await listQuotes(test.db, advisor, { q: 'reading ROOM' })).map((row) => row.id)).toEqual([made.id])
    expect(await listQuotes(test.db, member)).toEqual([])
  })

  it('two advisors at one moment: one is saved, the other told', async () => {
    const made = await quote(test.db, advisor)
    const save = (title: string) => saveDraft(test.db, advisor, made.id, 1, { customerId: made.customer.id, draft: draft(title) })
    const answers = await Promise.all([save('One'), save('Other')])
    expect(answers.filter((one) => one.ok)).toHaveLength(1)
    expect(answers.find((one) => !one.ok)).toMatchObject({ refusal: { code: 'stale' } })
  })

  it('is discarded by advisors only, at the version that they saw, and the customer stays', async () => {
    const made = await quote(test.db, advisor)
    const discard = (viewer: Viewer, version: number) => discardDraft(test.db, viewer, made.id, version)
    expect(await discard(member, 1)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
    expect(await discard(advisor, 2)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
    expect(await findQuote(test.db, advisor, made.id)).toBeDefined()
    expect(await discard(advisor, 1)).toEqual({ ok: true, value: null })
    expect(await findQuote(test.db, advisor, made.id)).toBeUndefined()
    expect(await discard(advisor, 1)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
    expect(await discardDraft(test.db, advisor, 'no id', 1)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
    expect(await findCustomer(test.db, advisor, made.customer.id)).toBeDefined()
  })

  it('is discarded no more once it was issued, even at the version on the screen: revision and setup stay', async () => {
    const made = await issued(test.db, advisor)
    const before = await findQuote(test.db, advisor, made.id)
    for (const version of [1, before?.version ?? 0])
      expect(await discardDraft(test.db, advisor, made.id, version)).toMatchObject({ ok: false, refusal: { code: 'issued' } })
    expect(await findQuote(test.db, advisor, made.id)).toEqual(before)
    expect(before?.setup).not.toBeNull()
  })

  it('issued and discarded at one moment is one of the two', async () => {
    const made = await quote(test.db, advisor)
    const [discarded] = await Promise.all([discardDraft(test.db, advisor, made.id, 1), issue(test.db, advisor, made).catch(() => null)])
    const left = await findQuote(test.db, advisor, made.id)
    expect(left === undefined).toBe(discarded.ok)
    if (left) expect(left.revisions).toHaveLength(1)
  })

  it('wants a customer that exists', async () => {
    const nobody = { customerId: '00000000-0000-4000-8000-000000000000', draft: draft() }
    expect(await createQuote(test.db, advisor, nobody)).toMatchObject({
      ok: false,
      refusal: { code: 'customer_unknown', field: 'customerId' },
    })
  })

  it('changes its customer until the first issue, and never after: the printed link goes on naming the same person', async () => {
    const other = granted(await createCustomer(test.db, advisor, { name: 'Nell Farrow', reach: '', note: '' }))
    const made = await quote(test.db, advisor)
    const saved = granted(await saveDraft(test.db, advisor, made.id, 1, { customerId: other.id, draft: draft() }))
    granted(await issue(test.db, advisor, saved))
    const back = { customerId: made.customer.id, draft: draft('Someone else') }
    expect(await saveDraft(test.db, advisor, made.id, 3, back)).toMatchObject({
      ok: false,
      refusal: { code: 'customer_fixed', field: 'customerId' },
    })
    expect(await findLinkedQuote(test.db, made.id)).toMatchObject({ customerName: 'Nell Farrow' })
    granted(await saveDraft(test.db, advisor, made.id, 3, { ...back, customerId: other.id }))
  })

  it('ends with the role of the one who edits it', async () => {
    const leaving = await person(test.db, 'advisor')
    const made = await quote(test.db, leaving)
    await test.db.updateTable('person').set({ role: 'member' }).where('id', '=', leaving.id).execute()
    expect(await findQuote(test.db, leaving, made.id)).toBeUndefined()
    expect((await issue(test.db, leaving, made)).ok).toBe(false)
  })
})

describe('issuing', () => {
  it('numbers the quote, freezes the document and makes the setup of the suggested build', async () => {
    const made = await issued(test.db, advisor)
    expect(made.number).toMatch(/^2026-\d{4}$/)
    expect(made).toMatchObject({ state: 'issued', version: 2 })
    expect(made.revisions).toEqual([
      {
        revision: 1,
        issuedOn: '2026-11-10',
        standsUntil: '2026-12-10',
        totals: [
          { letter: 'A', name: 'Build A', todayMinor: 110_703 },
          { letter: 'B', name: 'Build B', todayMinor: null },
        ],
      },
    ])
    const linked = await findLinkedQuote(test.db, made.id)
    expect(linked).toMatchObject({
      state: 'issued',
      revision: 1,
      customerName: made.customer.name,
      setup: made.setup,
      document: { number: made.number },
    })
    expect((await listQuotes(test.db, advisor, { customerId: made.customer.id }))[0]).toMatchObject({
      todayMinor: [110_703, null],
      state: 'issued',
    })
    expect(await findRevision(test.db, member, made.id, 1)).toBeUndefined()
  })

  it('again makes the next revision under the same number, and the first one stays', async () => {
    const made = await issued(test.db, advisor)
    const before = await findRevision(test.db, advisor, made.id, 1)
    const saved = granted(await saveDraft(test.db, advisor, made.id, 2, { customerId: made.customer.id, draft: draft('Larger') }))
    granted(await issue(test.db, advisor, saved))
    const after = await findQuote(test.db, advisor, made.id)
    expect(after).toMatchObject({ number: made.number, setup: made.setup })
    expect(after?.revisions.map((one) => one.revision)).toEqual([1, 2])
    expect(await findRevision(test.db, advisor, made.id, 1)).toEqual(before)
    expect((await findRevision(test.db, advisor, made.id, 2))?.title).toBe('Larger')
  })

  it('at a version that is no longer the newest is refused, and uses no number up', async () => {
    const made = await quote(test.db, advisor)
    expect(await issue(test.db, advisor, { id: made.id, version: 9 })).toMatchObject({ ok: false, refusal: { code: 'stale' } })
    expect(await findLinkedQuote(test.db, made.id)).toBeUndefined()
  })

  it('of ten quotes at one moment gives ten numbers in a row', async () => {
    const made = await Promise.all(Array.from({ length: 10 }, () => quote(test.db, advisor)))
    const documents = await Promise.all(made.map((one) => issue(test.db, advisor, one, '2031-03-01')))
    const numbers = documents.map((one) => granted(one).number).toSorted()
    expect(numbers).toEqual(Array.from({ length: 10 }, (_, index) => `2031-${String(index + 1).padStart(4, '0')}`))
  })

  it('of one quote twice at one moment makes one revision', async () => {
    const made = await quote(test.db, advisor)
    const answers = await Promise.all([issue(test.db, advisor, made), issue(test.db, advisor, made)])
    expect(answers.filter((one) => one.ok)).toHaveLength(1)
    expect((await findQuote(test.db, advisor, made.id))?.revisions).toHaveLength(1)
  })

  it.each([
    ['changed', sql`update quote_revision set document = '{}'`],
    ['dated otherwise', sql`update quote_revision set stands_until = '2030-01-01'`],
    ['deleted', sql`delete from quote_revision`],
    ['emptied', sql`truncate quote_revision cascade`],
  ])('is for good: no revision is ever %s', async (_, statement) => {
    await issued(test.db, advisor)
    await expect(statement.execute(test.db)).rejects.toThrow('an issued revision never changes')
  })
})

describe("the customer's answer", () => {
  it('of two yeses at one moment exactly one stands', async () => {
    const made = await issued(test.db, advisor)
    const answers = await Promise.all([
      answer(made.id, { letter: 'A' }),
      answer(made.id, { letter: 'A', note: 'the other phone' }),
      answer(made.id, { answer: 'declined' }),
    ])
    const [won, ...more] = answers.flatMap((one) => (one.ok ? [one.value] : []))
    expect(more).toEqual([])
    expect(answers.filter((one) => !one.ok)).toMatchObject([{ refusal: { code: 'answered' } }, { refusal: { code: 'answered' } }])
    expect(await findQuote(test.db, advisor, made.id)).toMatchObject({ state: won?.answer, answer: won, version: 3 })
  })

  it('names the build that was accepted, and closes the quote', async () => {
    const made = await issued(test.db, advisor)
    expect(await answer(made.id, { letter: 'C' })).toMatchObject({ ok: false, refusal: { code: 'letter_unknown' } })
    expect(await answer(made.id, { letter: null })).toMatchObject({ ok: false, refusal: { code: 'letter_unknown' } })
    const listed = async () => (await listQuotes(test.db, advisor, { customerId: made.customer.id }))[0]?.acceptedLetter
    expect(await listed()).toBeNull()
    expect(granted(await answer(made.id))).toMatchObject({ answer: 'accepted', letter: 'A', at: '2026-11-12T09:00:00.000Z' })
    expect(await listed()).toBe('A')
    const fields = { customerId: made.customer.id, draft: draft() }
    expect(await saveDraft(test.db, advisor, made.id, 3, fields)).toMatchObject({ ok: false, refusal: { code: 'closed' } })
    expect(await issue(test.db, advisor, { id: made.id, version: 3 })).toMatchObject({ ok: false, refusal: { code: 'closed' } })
    expect(await withdrawQuote(test.db, advisor, made.id)).toMatchObject({ ok: false, refusal: { code: 'closed' } })
  })

  it('takes no yes to a build whose total is not known', async () => {
    const made = await issued(test.db, advisor)
    const refused = await answer(made.id, { letter: 'B' })
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'letter_incomplete', field: 'letter' } })
    expect(refused.ok ? '' : refused.refusal.message).toContain('Build B has no total yet')
    expect(await findQuote(test.db, advisor, made.id)).toMatchObject({ state: 'issued', answer: null })
    granted(await answer(made.id, { letter: 'A' }))
  })

  it('counts for the newest revision only, and after a no another may be issued', async () => {
    const made = await issued(test.db, advisor)
    expect(granted(await answer(made.id, { answer: 'declined', note: 'too large' }))).toMatchObject({ letter: null, note: 'too large' })
    granted(await issue(test.db, advisor, { id: made.id, version: 3 }))
    expect(await answer(made.id)).toMatchObject({ ok: false, refusal: { code: 'superseded' } })
    expect(granted(await answer(made.id, { revision: 2 }))).toMatchObject({ revision: 2, answer: 'accepted' })
  })

  it('comes too late after the last day, on which it is still in time', async () => {
    const made = await issued(test.db, advisor)
    expect(await answer(made.id, { today: '2026-12-11' })).toMatchObject({ ok: false, refusal: { code: 'lapsed' } })
    await lapseQuotes(test.db, '2026-12-10')
    expect((await findQuote(test.db, advisor, made.id))?.state).toBe('issued')
    const lasting = await issued(test.db, advisor)
    granted(await answer(lasting.id, { today: '2026-12-10' }))
    expect(await lapseQuotes(test.db, '2026-12-11')).toBeGreaterThanOrEqual(1)
    expect(await findQuote(test.db, advisor, made.id)).toMatchObject({ state: 'lapsed', version: 3 })
    expect((await findQuote(test.db, advisor, lasting.id))?.state).toBe('accepted')
    expect(await answer(made.id)).toMatchObject({ ok: false, refusal: { code: 'lapsed' } })
  })

  it('to one that was taken back or never issued is refused', async () => {
    const made = await issued(test.db, advisor)
    expect(granted(await withdrawQuote(test.db, advisor, made.id)).state).toBe('withdrawn')
    expect(await answer(made.id)).toMatchObject({ ok: false, refusal: { code: 'withdrawn' } })
    expect(await answer((await quote(test.db, advisor)).id)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
  })
})
