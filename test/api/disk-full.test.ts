import { spawnSync } from 'node:child_process'
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { sql } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { saveUpload } from '../../api/exchange/upload.ts'
import type { ProblemError } from '../../api/http/problem.ts'
import type { Worker } from '../../api/jobs/worker.ts'
import { backUp } from './backups/support.ts'
import { importFile, sendFile, workIn } from './support/imports.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
let worker: Worker
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
  worker = workIn(world)
})
afterAll(async () => {
  await worker.stop()
  await world.close()
})

const customers = () => world.db.selectFrom('customer').select('id').execute()

describe('a database whose disk is full', () => {
  /** What PostgreSQL raises where a table cannot grow (Appendix A, class 53: disk_full), at the next customer. */
  const fill = async (): Promise<void> => {
    await sql`create function refuse_for_room() returns trigger language plpgsql as $$
      begin raise exception 'could not extend file "base/1/2": No space left on device' using errcode = 'disk_full'; end $$`.execute(
      world.db,
    )
    await sql`create trigger no_room before insert on customer for each row execute function refuse_for_room()`.execute(world.db)
  }
  const makeRoom = () => sql`drop function if exists refuse_for_room() cascade`.execute(world.db)

  it('is told with 507 in words, and the same request goes through once there is room', async () => {
    const body = { name: 'Ada Lindqvare', reach: '', note: '' }
    await fill()
    try {
      const refused = await manager.send<{ type: string; detail: string }>('POST', '/api/customers', { body })
      expect([refused.status, refused.body.type]).toEqual([507, '/api/reference#no_room'])
      expect(refused.body.detail).toMatch(/disk of the server is full\. Nothing of this request was stored/)
      expect(refused.text).not.toContain('base/1/2')
      expect((await manager.send('GET', '/api/customers')).status, 'reading goes on').toBe(200)
    } finally {
      await makeRoom()
    }
    expect(await customers()).toHaveLength(0)
    expect((await manager.send('POST', '/api/customers', { body })).status).toBe(201)
  })

  it('ends an import with words, none of its rows stored, and the same file is taken later', async () => {
    const before = (await customers()).length
    const file = 'name\nInes Halberg\nOle Brandt\n'
    await fill()
    try {
      const ended = await importFile(manager, file, { set: 'customers' })
      expect(ended.state).toBe('failed')
      expect(JSON.stringify(ended)).toContain('The disk of the server is full. Nothing of it was kept.')
    } finally {
      await makeRoom()
    }
    expect(await customers()).toHaveLength(before)
    expect((await importFile(manager, file, { set: 'customers' })).state).toBe('done')
    expect(await customers()).toHaveLength(before + 2)
  })
})

/** A file system of 256 kB where this account may mount one; else why not. */
async function smallDisk(): Promise<{ folder: string } | { because: string }> {
  const folder = await mkdtemp(join(tmpdir(), 'driploop-small-disk-'))
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k,mode=0700', 'tmpfs', folder], { encoding: 'utf8' })
  if (mounted.status === 0) return { folder }
  await rm(folder, { recursive: true })
  return { because: (mounted.stderr || String(mounted.error)).trim() }
}

const disk = await smallDisk()
describe.skipIf('because' in disk)(
  `a real disk of 256 kB${'because' in disk ? `, which cannot be made here (${disk.because})` : ''}`,
  () => {
    const folder = 'folder' in disk ? disk.folder : ''
    afterAll(async () => {
      spawnSync('umount', [folder])
      await rm(folder, { recursive: true, force: true })
    })
    /** To the last block. */
    const occupy = () => writeFile(join(folder, 'taken'), new Uint8Array(300_000)).catch(({ code }: NodeJS.ErrnoException) => code)

    it('refuses a file that does not fit, leaves no part of it, and takes a smaller one', async () => {
      const path = join(folder, 'sent')
      const refused = await saveUpload(new Blob([new Uint8Array(400_000)]).stream(), path).catch((error: unknown) => error as ProblemError)
      expect(refused).toMatchObject({ problem: { status: 507, type: '/api/reference#no_room' } })
      expect(await readdir(folder)).toEqual([])
      expect(await saveUpload(new Blob([new Uint8Array(20_000)]).stream(), path)).toBe(20_000)
      await rm(path)
    })

    it('answers an import with 507 and queues nothing', async () => {
      const { config } = world.deps
      const jobs = await world.db.selectFrom('job').select('id').execute()
      world.rebuild({ config: { ...config, dataDir: folder } })
      try {
        const sent = await sendFile(manager, `name\n${'Ines Halberg\n'.repeat(40_000)}`, { set: 'customers' })
        expect([sent.status, sent.text]).toEqual([507, expect.stringContaining('Make room')])
      } finally {
        world.rebuild({ config })
      }
      expect(await world.db.selectFrom('job').select('id').execute()).toHaveLength(jobs.length)
      expect((await readdir(folder, { recursive: true })).filter((name) => name.includes('/'))).toEqual([])
    })

    it('takes no half of a backup, says so, and takes the next one once there is room', async () => {
      const backups = join(folder, 'backups')
      await mkdir(backups, { recursive: true })
      expect(await occupy()).toBe('ENOSPC')
      const order = backUp(world.test.connection, join(backups, 'full.backup'))
      await expect(order).rejects.toMatchObject({ code: 'no_room', message: expect.stringContaining('BACKUP_DIR') as string })
      expect(await readdir(backups)).toEqual([])
      await rm(join(folder, 'taken'))
      expect((await backUp(world.test.connection, join(backups, 'next.backup'))).bytes).toBeGreaterThan(1_000)
    })
  },
)
