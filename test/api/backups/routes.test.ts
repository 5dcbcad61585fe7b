import { readdir, rm, stat, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createBackupDesk } from '../../../api/backups/backup-desk.ts'
import { verifyBackup } from '../../../api/backups/read-backup.ts'
import type { BackupsView, BackupView } from '../../../api/answers/backups.ts'
import { createWorld, PASSWORD, type Browser, type World } from '../support/world.ts'
import { scratchFolder } from './support.ts'

const PASSPHRASE = 'tide pool ferry lantern'
let world: World
let manager: Browser
let scratch: Awaited<ReturnType<typeof scratchFolder>>
let nowMs = Date.parse('2026-11-26T10:00:00Z')
const desk = (backupDir: string) =>
  createBackupDesk({
    connection: world.test.connection,
    config: { backupDir, backupPassphrase: null },
    linkKey: world.deps.linkKey,
    clock: () => nowMs,
  })
beforeAll(async () => {
  scratch = await scratchFolder()
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterAll(async () => {
  await world.close()
  await scratch.remove()
})

const FORM = { 'content-type': 'application/x-www-form-urlencoded' }
const list = async (): Promise<BackupsView> => (await manager.send<BackupsView>('GET', '/api/backups')).body
const make = (body: object) => manager.send<BackupView>('POST', '/api/backups', { body })

describe('a manager', () => {
  it('is warned while there is none, makes one with her password, and downloads it as it is', async () => {
    world.rebuild({ backups: desk(scratch.in('kept')) })
    expect(await list()).toMatchObject({ items: [], lastSuccessAt: null, overdue: true, folder: world.deps.config.backupDir })
    const made = await make({ password: PASSWORD, passphrase: PASSPHRASE })
    expect([made.status, made.body.reason, made.body.locked]).toEqual([201, 'asked', true])
    expect(await list()).toMatchObject({ items: [made.body], lastSuccessAt: '2026-11-26T10:00:00.000Z', overdue: false })
    const file = await world.app.request(`http://localhost:8080/api/backups/${made.body.name}/file`, {
      method: 'POST',
      headers: { 'sec-fetch-site': 'same-origin', cookie: manager.cookie() },
      body: new URLSearchParams({ password: PASSWORD }),
    })
    expect([file.status, file.headers.get('content-disposition'), file.headers.get('cache-control')]).toEqual([
      200,
      `attachment; filename="${made.body.name}"`,
      'no-store',
    ])
    const trail = await world.db.selectFrom('audit_entry').select(['actor_id', 'action', 'subject_name']).orderBy('at').execute()
    expect(trail.filter(({ action }) => action.startsWith('backup_'))).toEqual(
      ['backup_made', 'backup_downloaded'].map((action) => ({ actor_id: manager.personId, action, subject_name: made.body.name })),
    )
    const path = scratch.in('downloaded')
    await writeFile(path, new Uint8Array(await file.arrayBuffer()))
    expect((await stat(path)).size).toBe(made.body.bytes)
    expect((await verifyBackup({ path, passphrase: PASSPHRASE })).head.tables.some(({ name }) => name === 'person')).toBe(true)
  })

  it('makes and gets none without her own password', async () => {
    const other = await world.signIn('manager')
    const name = (await list()).items[0]?.name
    const wrong = { password: 'not the password at all' }
    const form = { body: new URLSearchParams(wrong).toString(), headers: FORM }
    for (const [path, sent] of [
      ['/api/backups', { body: wrong }],
      [`/api/backups/${name}/file`, form],
    ] as const) {
      // prettier-ignore
      const answer = await other.send<{ errors: unknown }>('POST', path, sent)
      expect([answer.status, answer.body.errors]).toEqual([
        422,
        [{ field: 'password', message: expect.stringContaining('not your password') }],
      ])
    }
    expect((await list()).items.length).toBe(1)
    const downloads = await world.db.selectFrom('audit_entry').select('id').where('action', '=', 'backup_downloaded').execute()
    expect(downloads.length).toBe(1)
  })

  it('gets the file by a form, which says by its answer that the screen stays', async () => {
    const { name = '', bytes } = (await list()).items[0] ?? {}
    const send = (headers: Record<string, string>, body = new URLSearchParams({ password: PASSWORD })) =>
      world.app.request(`http://localhost:8080/api/backups/${name}/file`, {
        method: 'POST',
        headers: { cookie: manager.cookie(), ...headers },
        body,
      })
    const file = await send({ 'sec-fetch-site': 'same-origin' })
    expect([file.status, file.headers.get('content-disposition'), file.headers.get('content-length')]).toEqual([
      200,
      `attachment; filename="${name}"`,
      String(bytes),
    ])
    expect((await file.arrayBuffer()).byteLength).toBe(bytes)
    expect((await send({ 'sec-fetch-site': 'same-origin' }, new URLSearchParams({ password: 'not the password at all' }))).status).toBe(422)
    const foreign: Array<Record<string, string>> = [
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { origin: 'https://elsewhere.example' },
      {},
    ]
    for (const headers of foreign) expect((await send(headers)).status, JSON.stringify(headers)).toBe(403)
    const advisor = await world.signIn('advisor')
    expect((await send({ 'sec-fetch-site': 'same-origin', cookie: advisor.cookie() })).status).toBe(403)
    expect((await manager.send('POST', `/api/backups/${name}/file`, { body: { password: PASSWORD } })).status).toBe(415)
  })

  it('is told before of what would be refused, and nothing is noted until the file is sent', async () => {
    const name = (await list()).items[0]?.name
    const downloads = () => world.db.selectFrom('audit_entry').select('id').where('action', '=', 'backup_downloaded').execute()
    const before = (await downloads()).length
    const check = (of: string | undefined, password: string) => manager.send('POST', `/api/backups/${of}/check`, { body: { password } })
    expect((await check(name, PASSWORD)).status).toBe(204)
    expect(await check(name, 'not the password at all')).toMatchObject({ status: 422, body: { errors: [{ field: 'password' }] } })
    expect((await check('driploop-20200101-000000-000-asked.backup', PASSWORD)).status).toBe(404)
    expect((await downloads()).length).toBe(before)
  })

  it('is told of a passphrase that is too short, and of a name that is none', async () => {
    expect(await make({ password: PASSWORD, passphrase: 'short' })).toMatchObject({
      status: 422,
      body: { errors: [{ field: 'passphrase' }] },
    })
    for (const name of ['driploop-20200101-000000-000-asked.backup', '..%2Flink-key', 'link-key']) {
      const answer = await manager.send('POST', `/api/backups/${name}/file`, {
        body: new URLSearchParams({ password: PASSWORD }).toString(),
        headers: FORM,
      })
      expect(answer.status, name).toBe(404)
    }
  })

  it('is told where the backup cannot be written, and everything else goes on', async () => {
    await writeFile(scratch.in('a file'), '')
    world.rebuild({ backups: desk(join(scratch.in('a file'), 'kept')) })
    const answer = await make({ password: PASSWORD })
    expect([answer.status, answer.text]).toEqual([503, expect.stringContaining('BACKUP_DIR')])
    expect((await manager.send('GET', '/api/people')).status).toBe(200)
  })
})

describe('by themselves', () => {
  it('are made when their time has come and something changed, and only then', async () => {
    const folder = scratch.in('scheduled')
    const own = desk(folder)
    const every = world.test.connection.engine === 'embedded' ? 15 : 24 * 60
    const later = (turns: number): void => void (nowMs += turns * every * 60_000)
    const count = async (): Promise<number> => (await readdir(folder)).length
    await own.keepUp()
    expect(await count()).toBe(1)
    later(0.9)
    await world.db.insertInto('customer').values({ name: 'Ada Lindqvare' }).execute()
    await own.keepUp()
    expect(await count()).toBe(1)
    later(0.2)
    await own.keepUp()
    expect(await count()).toBe(2)
    // Nothing of what is kept has changed: a session is not.
    later(1.1)
    await world.signIn('member').then(() => world.db.deleteFrom('session').where('person_id', '<>', manager.personId).execute())
    await world.db.deleteFrom('person').where('role', '=', 'member').execute()
    await own.keepUp()
    expect(await count()).toBe(2)
    expect(await own.standing()).toMatchObject({ overdue: false, lastSuccessAt: new Date(nowMs), lastFailure: null })
    later(3.5)
    expect((await own.standing()).overdue).toBe(true)
  })

  it('go on where the clock was wrong for a while: those of the future neither keep one away nor take its place', async () => {
    const folder = scratch.in('future')
    const own = desk(folder)
    const rightMs = nowMs
    for (let day = 400; day < 410; day += 1) {
      nowMs = rightMs + day * 86_400_000
      await world.db
        .insertInto('customer')
        .values({ name: `Odo Fennick ${day}` })
        .execute()
      await own.make('asked', null)
      await own.keepUp()
    }
    nowMs = rightMs
    const again = desk(folder)
    expect(await again.standing()).toMatchObject({ lastSuccessAt: null, overdue: true })
    await world.db.insertInto('customer').values({ name: 'Odo Fennick' }).execute()
    await again.keepUp()
    expect(await again.standing()).toMatchObject({ lastSuccessAt: new Date(rightMs), overdue: false })
    await again.make('asked', null)
    const kept = (await again.standing()).kept.filter(({ madeAt }) => madeAt.getTime() === rightMs)
    expect(kept.map(({ reason }) => reason).toSorted()).toEqual(['asked', 'scheduled'])
  })

  it('say why the last one failed, until one succeeds', async () => {
    const folder = scratch.in('fails')
    await writeFile(folder, '')
    const own = desk(join(folder, 'kept'))
    await expect(own.make('scheduled', null)).rejects.toMatchObject({ code: 'not_writable' })
    expect(await own.standing()).toMatchObject({ kept: [], overdue: true, lastFailure: { message: expect.stringContaining(folder) } })
    await rm(folder)
    await own.make('scheduled', null)
    expect(await own.standing()).toMatchObject({ overdue: false, lastFailure: null })
  })

  it('are made one at a time', async () => {
    const own = desk(scratch.in('alone'))
    const [first, second] = await Promise.allSettled([own.make('asked', null), own.make('asked', null)])
    expect([first?.status, second]).toMatchObject(['fulfilled', { status: 'rejected', reason: { code: 'busy' } }])
  })
})
