import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addDays, civilDateAt } from '../../core/dates.ts'
import { audit, auditPages, listAudit, type AuditEntry } from '../../db/audit.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { person } from '../support/rows.ts'

let test: TestDatabase
beforeAll(async () => {
  test = await testDatabase()
})
afterAll(() => test.close())

const all = { limit: 100, offset: 0 }
const write = (entry: Parameters<typeof audit>[1]) => test.db.transaction().execute((trx) => audit(trx, entry))

describe('the trail of who changed what', () => {
  it('is written with the change or not at all', async () => {
    const manager = await person(test.db, 'manager')
    const failing = test.db.transaction().execute(async (trx) => {
      await audit(trx, {
        actor: manager,
        action: 'install_changed',
        subject: { kind: 'install' },
        before: { paper: 'a4' },
        after: { paper: 'letter' },
      })
      throw new Error('the change failed')
    })
    await expect(failing).rejects.toThrow('the change failed')
    expect((await listAudit(test.db, manager, { ...all, personId: manager.id })).total).toBe(0)
  })

  it('takes no change, no deletion and is not emptied', async () => {
    await write({ actor: null, action: 'backup_made', subject: { kind: 'backup' } })
    const { rows: before } = await sql<{ text: string }>`select audit_entry::text as text from audit_entry order by id`.execute(test.db)
    expect(before.length).toBeGreaterThan(0)
    for (const statement of [
      sql`update audit_entry set action = 'other'`,
      sql`update audit_entry set at = now() where true`,
      sql`delete from audit_entry`,
      sql`truncate audit_entry cascade`,
    ])
      await expect(statement.execute(test.db)).rejects.toThrow('only ever added to')
    expect((await sql<{ text: string }>`select audit_entry::text as text from audit_entry order by id`.execute(test.db)).rows).toEqual(
      before,
    )
  })

  it('is read by managers alone, newest first, by person, subject and day', async () => {
    const [manager, advisor, other] = [await person(test.db, 'manager'), await person(test.db, 'advisor'), await person(test.db)]
    await write({
      actor: manager,
      action: 'person_changed',
      subject: { kind: 'person', id: other.id },
      before: { role: 'member' },
      after: { role: 'advisor' },
    })
    await write({ actor: manager, action: 'store_added', subject: { kind: 'store', id: 'x', name: 'Tarnwick Aquatics' } })
    expect(await listAudit(test.db, advisor, all)).toEqual({ items: [], total: 0 })
    const mine = await listAudit(test.db, manager, { ...all, personId: manager.id })
    expect(mine.items.map((entry) => entry.action)).toEqual(['store_added', 'person_changed'])
    expect(mine.items[1]).toMatchObject({
      actor: { id: manager.id, name: manager.name },
      subject: { kind: 'person', id: other.id, name: other.name },
      changes: [{ field: 'role', before: 'member', after: 'advisor' }],
    })
    const stores = await listAudit(test.db, manager, { ...all, personId: manager.id, subject: 'store' })
    expect(stores.items.map((entry) => entry.subject.name)).toEqual(['Tarnwick Aquatics'])
    // Kept in the westernmost and the easternmost zone there is: a day is the place's own.
    const dayIn = (timeZone: string, days = 0): { date: string; timeZone: string } => ({
      date: addDays(civilDateAt(Date.now(), timeZone), days),
      timeZone,
    })
    for (const zone of ['Pacific/Pago_Pago', 'Pacific/Kiritimati']) {
      expect((await listAudit(test.db, manager, { ...all, personId: manager.id, day: dayIn(zone) })).total).toBe(2)
      expect((await listAudit(test.db, manager, { ...all, personId: manager.id, day: dayIn(zone, 1) })).total).toBe(0)
      expect((await listAudit(test.db, manager, { ...all, personId: manager.id, day: dayIn(zone, -1) })).total).toBe(0)
    }
  })

  it('is read to its end a page at a time, each entry once, also where many are of one moment', async () => {
    const [manager, advisor] = [await person(test.db, 'manager'), await person(test.db, 'advisor')]
    const add = (count: number) =>
      test.db.transaction().execute(async (trx) => {
        for (let index = 0; index < count; index += 1)
          await audit(trx, { actor: manager, action: 'store_added', subject: { kind: 'store', id: String(index) } })
      })
    // One transaction, one moment: more than a page of it, and a few on either side.
    await add(3)
    await add(600)
    await add(3)
    const filter = { personId: manager.id }
    const read = async (viewer: Viewer): Promise<AuditEntry[][]> => {
      const pages = []
      for await (const page of auditPages(test.db, viewer, filter)) pages.push(page)
      return pages
    }
    const pages = await read(manager)
    expect(pages.length).toBe(2)
    const ids = pages.flat().map(({ id }) => id)
    expect(new Set(ids).size).toBe(606)
    expect(ids).toEqual((await listAudit(test.db, manager, { ...filter, limit: 1000, offset: 0 })).items.map(({ id }) => id))
    expect(await read(advisor)).toEqual([])
  })
})
