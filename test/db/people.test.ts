import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createInstall, findInstall, updateInstall } from '../../db/install.ts'
import { createOneUseLink, deleteOneUseLinks, findOneUseLink, useOneUseLink } from '../../db/one-use-links.ts'
import { createPerson, findPersonBySignIn, listPeople, updatePerson } from '../../db/people.ts'
import { deleteExpiredSessions, deleteSessionsOf, findSessionByHash, insertSession, touchSession } from '../../db/sessions.ts'
import { clearFailures, deleteFailuresBefore, failuresSince, recordFailure } from '../../db/sign-in-attempts.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, install, person } from '../support/rows.ts'

let test: TestDatabase
beforeAll(async () => {
  test = await testDatabase()
})
afterAll(() => test.close())

const at = (time: string): Date => new Date(`2026-11-01T${time}Z`)

describe('people', () => {
  it('are found by their sign-in name in any case, and the name is taken in any case', async () => {
    const fields = { name: 'Ines Marlow', signInName: 'Ines', role: 'member', passwordHash: 'h', invitedBy: null } as const
    granted(await createPerson(test.db, fields))
    expect((await findPersonBySignIn(test.db, 'iNES'))?.passwordHash).toBe('h')
    expect(await createPerson(test.db, { ...fields, signInName: 'INES' })).toMatchObject({
      ok: false,
      refusal: { code: 'sign_in_name_taken' },
    })
  })

  it('are listed to managers only, and a manager who was disabled is none', async () => {
    const manager = await person(test.db, 'manager')
    const second = await person(test.db, 'manager')
    expect(await listPeople(test.db, await person(test.db, 'advisor'))).toEqual([])
    expect((await listPeople(test.db, second)).length).toBeGreaterThan(2)
    granted(await test.db.transaction().execute((trx) => updatePerson(trx, manager, second.id, 1, { disabled: true })))
    expect(await listPeople(test.db, second)).toEqual([])
    granted(await test.db.transaction().execute((trx) => updatePerson(trx, manager, second.id, 2, { disabled: false })))
  })

  it('keep a last manager, and a stale change is refused', async () => {
    const managers = (
      await test.db.selectFrom('person').selectAll().where('role', '=', 'manager').where('disabled_at', 'is', null).execute()
    ).map((row) => ({ id: row.id, role: row.role, version: row.version }))
    const [keeper, ...others] = managers
    if (!keeper) throw new Error('There is a manager.')
    const change = (id: string, version: number, to: { disabled: boolean }) =>
      test.db.transaction().execute((trx) => updatePerson(trx, keeper, id, version, to))
    for (const other of others) granted(await change(other.id, other.version, { disabled: true }))
    expect(await change(keeper.id, keeper.version, { disabled: true })).toMatchObject({ ok: false, refusal: { code: 'last_manager' } })
    const other = await person(test.db, 'member')
    expect(await change(other.id, 7, { disabled: true })).toMatchObject({ ok: false, refusal: { code: 'stale' } })
  })
})

describe('sessions', () => {
  it('bring their person, and end when that person is disabled or signed out everywhere', async () => {
    const someone = await person(test.db)
    await insertSession(test.db, { idHash: 'hash-a', personId: someone.id, createdAt: at('10:00:00'), expiresAt: at('12:00:00') })
    await touchSession(test.db, 'hash-a', { expiresAt: at('14:00:00'), lastSeenAt: at('11:00:00') })
    const session = await findSessionByHash(test.db, 'hash-a')
    expect(session).toMatchObject({ person: { id: someone.id, role: 'member' }, expiresAt: at('14:00:00'), lastSeenAt: at('11:00:00') })
    await test.db
      .updateTable('person')
      .set({ disabled_at: at('11:30:00') })
      .where('id', '=', someone.id)
      .execute()
    expect(await findSessionByHash(test.db, 'hash-a')).toBeUndefined()
    await deleteSessionsOf(test.db, someone.id)
    await test.db.updateTable('person').set({ disabled_at: null }).where('id', '=', someone.id).execute()
    expect(await findSessionByHash(test.db, 'hash-a')).toBeUndefined()
  })

  it('are cleared away once they have expired', async () => {
    const someone = await person(test.db)
    await insertSession(test.db, { idHash: 'hash-b', personId: someone.id, createdAt: at('08:00:00'), expiresAt: at('09:00:00') })
    expect(await deleteExpiredSessions(test.db, at('08:59:59'))).toBe(0)
    expect(await deleteExpiredSessions(test.db, at('09:00:00'))).toBe(1)
  })
})

describe('one-use links', () => {
  const link = { purpose: 'invite', role: 'advisor', name: 'Teo', createdBy: null, expiresAt: at('12:00:00') } as const

  it('work for exactly one of two people at the same moment', async () => {
    await createOneUseLink(test.db, { ...link, tokenHash: 'once' })
    const use = () => test.db.transaction().execute((trx) => useOneUseLink(trx, 'once', at('11:00:00')))
    const answers = await Promise.all([use(), use()])
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1)
    expect(await findOneUseLink(test.db, 'once', at('11:00:00'))).toBeUndefined()
  })

  it('expire, and an unused one for the first manager ends when a new one is made', async () => {
    await createOneUseLink(test.db, { ...link, purpose: 'first_manager', tokenHash: 'first' })
    expect(await findOneUseLink(test.db, 'first', at('11:59:59'))).toMatchObject({ role: 'advisor', name: 'Teo' })
    expect(await findOneUseLink(test.db, 'first', at('12:00:00'))).toBeUndefined()
    await deleteOneUseLinks(test.db, 'first_manager')
    expect(await findOneUseLink(test.db, 'first', at('11:00:00'))).toBeUndefined()
  })
})

it('counts failed sign-ins of one key since a moment, until they are cleared or forgotten', async () => {
  for (const time of ['10:00:00', '10:05:00', '10:10:00']) await recordFailure(test.db, 'ines', at(time))
  await recordFailure(test.db, 'other', at('10:10:00'))
  expect(await failuresSince(test.db, 'ines', at('10:05:00'))).toBe(2)
  await deleteFailuresBefore(test.db, at('10:06:00'))
  expect(await failuresSince(test.db, 'ines', at('09:00:00'))).toBe(1)
  await clearFailures(test.db, 'ines')
  expect(await failuresSince(test.db, 'ines', at('09:00:00'))).toBe(0)
  expect(await failuresSince(test.db, 'other', at('09:00:00'))).toBe(1)
})

it('has one install, which a manager changes at the version he read', async () => {
  granted(await createInstall(test.db, install))
  expect(await createInstall(test.db, install)).toMatchObject({ ok: false, refusal: { code: 'exists' } })
  const manager = await person(test.db, 'manager')
  expect(granted(await updateInstall(test.db, manager, 1, { ...install, currency: 'EUR' }))).toMatchObject({ currency: 'EUR', version: 2 })
  expect(await updateInstall(test.db, manager, 1, install)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
  expect(await updateInstall(test.db, await person(test.db, 'advisor'), 2, install)).toMatchObject({
    ok: false,
    refusal: { code: 'not_found' },
  })
  expect(await findInstall(test.db)).toMatchObject({ currency: 'EUR', units: { gallon: 'us' }, energyPriceMinor: 17.5 })
})
