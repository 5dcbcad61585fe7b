import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Install } from '../../core/install.ts'
import type { Viewer } from '../../db/viewer.ts'
import { createInstall, findInstall, updateInstall } from '../../db/install.ts'
import { createOneUseLink, deleteOneUseLinks, findOneUseLink, useOneUseLink } from '../../db/one-use-links.ts'
import { createPerson, findPersonBySignIn, listPeople, updatePerson } from '../../db/people.ts'
import {
  changePassword,
  deleteExpiredSessions,
  deleteSessionsOf,
  findSessionByHash,
  insertSession,
  touchSession,
} from '../../db/sessions.ts'
import { attemptsSince, deleteAttemptsBefore, forgetAttempt, forgetAttemptsUnder, recordAttempt } from '../../db/sign-in-attempts.ts'
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

  it('whose names read alike are one, but for accounts of before, which are each found by their own spelling', async () => {
    const kept = (sign_in_name: string) =>
      test.db.insertInto('person').values({ name: 'Of before', sign_in_name, role: 'member', password_hash: sign_in_name }).execute()
    const foundBy = async (typed: string) => (await findPersonBySignIn(test.db, typed))?.signInName
    const fields = { name: 'Maja', role: 'member', passwordHash: 'h', invitedBy: null } as const
    await kept('ｍａｊａ')
    expect(await foundBy('MAJA')).toBe('ｍａｊａ')
    expect(await createPerson(test.db, { ...fields, signInName: 'maja' })).toMatchObject({ refusal: { code: 'sign_in_name_taken' } })
    await kept('maja')
    expect([await foundBy('Maja'), await foundBy('ＭＡＪＡ'), await foundBy('ⓜaja')]).toEqual(['maja', 'ｍａｊａ', 'maja'])
    await kept('weiß')
    await kept('ｗeiß')
    expect([await foundBy('weiß'), await foundBy('ｗEIß'), await foundBy('weiss')]).toEqual(['weiß', 'ｗeiß', undefined])
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
  const begin = (idHash: string, personId: string, given = {}, db = test.db) =>
    insertSession(db, { idHash, personId, verifiedHash: 'a hash', createdAt: at('10:00:00'), expiresAt: at('12:00:00'), ...given })

  it('bring their person, and end when that person is disabled or signed out everywhere', async () => {
    const someone = await person(test.db)
    expect(await begin('hash-a', someone.id)).toBe(true)
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

  it('begin only for the password that is still theirs, and never for a person who was disabled', async () => {
    const someone = await person(test.db)
    expect(await begin('hash-wrong', someone.id, { verifiedHash: 'an older hash' })).toBe(false)
    await test.db
      .updateTable('person')
      .set({ disabled_at: at('09:00:00') })
      .where('id', '=', someone.id)
      .execute()
    expect(await begin('hash-wrong', someone.id)).toBe(false)
    expect(await test.db.transaction().execute((trx) => changePassword(trx, someone.id, 'a hash', 'another'))).toBe(false)
  })

  it('do not outlive a change of password that runs at the same moment, whichever comes first', async () => {
    const someone = await person(test.db)
    await begin('hash-before', someone.id)
    let late: Promise<boolean> | undefined
    const changed = await test.db.transaction().execute(async (trx) => {
      const done = await changePassword(trx, someone.id, 'a hash', 'a new hash')
      late = begin('hash-late', someone.id)
      await wait(200)
      return done
    })
    expect([changed, await late]).toEqual([true, false])
    let change: Promise<boolean> | undefined
    await test.db.transaction().execute(async (trx) => {
      expect(await begin('hash-first', someone.id, { verifiedHash: 'a new hash' }, trx)).toBe(true)
      change = test.db.transaction().execute((other) => changePassword(other, someone.id, 'a new hash', 'a third hash'))
      await wait(200)
    })
    expect(await change).toBe(true)
    expect(await test.db.selectFrom('session').select('id_hash').where('person_id', '=', someone.id).execute()).toEqual([])
    expect(await test.db.transaction().execute((trx) => changePassword(trx, someone.id, 'a new hash', 'a fourth hash'))).toBe(false)
  })

  it('are cleared away once they have expired', async () => {
    const someone = await person(test.db)
    await begin('hash-b', someone.id, { createdAt: at('08:00:00'), expiresAt: at('09:00:00') })
    expect(await deleteExpiredSessions(test.db, at('08:59:59'))).toBe(0)
    expect(await deleteExpiredSessions(test.db, at('09:00:00'))).toBe(1)
  })
})

describe('one-use links', () => {
  const link = { purpose: 'first_manager', role: 'advisor', name: 'Teo', createdBy: null, expiresAt: at('12:00:00') } as const

  it('work for exactly one of two people at the same moment', async () => {
    await createOneUseLink(test.db, { ...link, tokenHash: 'once' })
    const use = () => test.db.transaction().execute((trx) => useOneUseLink(trx, 'once', at('11:00:00')))
    const answers = await Promise.all([use(), use()])
    expect(answers.filter((answer) => answer.ok)).toHaveLength(1)
    expect(await findOneUseLink(test.db, 'once', at('11:00:00'))).toBeUndefined()
  })

  it('expire, and an unused one for the first manager ends when a new one is made', async () => {
    await createOneUseLink(test.db, { ...link, tokenHash: 'first' })
    expect(await findOneUseLink(test.db, 'first', at('11:59:59'))).toMatchObject({ role: 'advisor', name: 'Teo' })
    expect(await findOneUseLink(test.db, 'first', at('12:00:00'))).toBeUndefined()
    await deleteOneUseLinks(test.db, 'first_manager')
    expect(await findOneUseLink(test.db, 'first', at('11:00:00'))).toBeUndefined()
  })

  it.each([
    ['was disabled', { disabled: true }],
    ['lost the role', { role: 'advisor' }],
  ] as const)('end with the manager who made them: one who %s takes the invitations along', async (_, change) => {
    const [keeper, leaving] = [await person(test.db, 'manager'), await person(test.db, 'manager')]
    const invite = (tokenHash: string, createdBy: string | null) =>
      createOneUseLink(test.db, { ...link, purpose: 'invite', createdBy, tokenHash: `${tokenHash} ${leaving.id}` })
    await invite('kept', keeper.id)
    await invite('left', leaving.id)
    await invite('nobody', null)
    const left = `left ${leaving.id}`
    const use = (tokenHash: string) => test.db.transaction().execute((trx) => useOneUseLink(trx, tokenHash, at('11:00:00')))
    expect(await findOneUseLink(test.db, left, at('11:00:00'))).toBeDefined()
    // Whatever took the role away, a link left behind opens nothing.
    await test.db.updateTable('person').set({ role: 'member' }).where('id', '=', leaving.id).execute()
    expect(await findOneUseLink(test.db, left, at('11:00:00'))).toBeUndefined()
    expect(await use(left)).toMatchObject({ ok: false, refusal: { code: 'link_gone' } })
    await test.db.updateTable('person').set({ role: 'manager' }).where('id', '=', leaving.id).execute()
    granted(await test.db.transaction().execute((trx) => updatePerson(trx, keeper, leaving.id, 1, change)))
    // Gone for good: coming back does not bring it back.
    granted(await test.db.transaction().execute((trx) => updatePerson(trx, keeper, leaving.id, 2, { disabled: false, role: 'manager' })))
    expect(await use(left)).toMatchObject({ ok: false, refusal: { code: 'link_gone' } })
    expect(await use(`nobody ${leaving.id}`)).toMatchObject({ ok: false, refusal: { code: 'link_gone' } })
    expect(granted(await use(`kept ${leaving.id}`))).toMatchObject({ createdBy: keeper.id })
  })
})

it('counts tries to sign in since a moment, until they are taken back or forgotten', async () => {
  for (const time of ['10:00:00', '10:05:00', '10:10:00']) await recordAttempt(test.db, ['ines', 'here'], at(time))
  const last = await recordAttempt(test.db, ['other', 'here'], at('10:10:00'))
  expect(await attemptsSince(test.db, ['here', 'ines', 'nobody'], at('10:05:00'))).toEqual([3, 2, 0])
  await deleteAttemptsBefore(test.db, at('10:06:00'))
  expect(await attemptsSince(test.db, ['here', 'ines', 'other'], at('09:00:00'))).toEqual([2, 1, 1])
  await forgetAttempt(test.db, last)
  expect(await attemptsSince(test.db, ['here', 'ines', 'other'], at('09:00:00'))).toEqual([1, 1, 0])
  await forgetAttemptsUnder(test.db, ['ines'])
  expect(await attemptsSince(test.db, ['here', 'ines', 'other'], at('09:00:00'))).toEqual([1, 0, 0])
})

it('has one install, which a manager changes at the version he read', async () => {
  granted(await createInstall(test.db, install))
  expect(await createInstall(test.db, install)).toMatchObject({ ok: false, refusal: { code: 'exists' } })
  const manager = await person(test.db, 'manager')
  const change = async (viewer: Viewer, version: number, changed: Install) =>
    test.db.transaction().execute((trx) => updateInstall(trx, viewer, version, changed))
  expect(granted(await change(manager, 1, { ...install, currency: 'EUR' }))).toMatchObject({ currency: 'EUR', version: 2 })
  expect(await change(manager, 1, install)).toMatchObject({ ok: false, refusal: { code: 'stale' } })
  expect(await change(await person(test.db, 'advisor'), 2, install)).toMatchObject({ ok: false, refusal: { code: 'not_found' } })
  expect(await findInstall(test.db)).toMatchObject({ currency: 'EUR', units: { gallon: 'us' }, energyPriceMinor: 17.5 })
})
