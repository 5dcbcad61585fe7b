import { resolve } from 'node:path'
import { createReadStream } from 'node:fs'
import { Readable } from 'node:stream'
import { Hono } from 'hono'
import * as z from 'zod'
import { BackupDownload, BackupRequest } from '../../core/backups/schema.ts'
import { strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { BackupAnswer, BackupsAnswer, type BackupView } from '../answers/backups.ts'
import { confirmPassword } from '../auth/confirm-password.ts'
import { signedIn, type Ctx, type Env } from '../context.ts'
import { operation } from '../http/operation.ts'
import { problem, problemBody, ProblemError } from '../http/problem.ts'
import { valid } from '../http/valid.ts'
import type { BackupDesk } from './backup-desk.ts'
import { BackupRefused } from './backup-format.ts'
import type { KeptBackup } from './kept-backups.ts'

const tag = 'Backups'
const ByName = strict('Path', { name: z.string().max(100, { error: 'A name is shorter than that.' }) })

function deskOf(c: Ctx): BackupDesk {
  const { backups } = c.get('deps')
  if (backups) return backups
  throw new ProblemError(problemBody(503, 'unavailable', 'No backup can be made while the database has not been reached.'))
}

const viewOf = ({ madeAt, ...backup }: KeptBackup): BackupView => ({ ...backup, madeAt: madeAt.toISOString() })

/** A backup that could not be made: nothing of it is left, and everything else goes on. */
function backupRefused(c: Ctx, { code, message }: BackupRefused) {
  if (code === 'busy') return problem(c, 409, 'busy', message)
  if (code === 'no_room') return problem(c, 507, 'no_room', message)
  return problem(c, 503, 'unavailable', message)
}

export const backups = new Hono<Env>()
  .get(
    '/',
    operation('listBackups', { summary: 'The kept backups and how they stand', tag, answers: { 200: BackupsAnswer } }),
    async (c) => {
      const { kept, lastSuccessAt, lastFailure, everyMinutes, overdue } = await deskOf(c).standing()
      const { engine, config } = c.get('deps')
      return c.json(
        {
          items: kept.map(viewOf),
          engine,
          folder: resolve(config.backupDir),
          everyMinutes,
          lastSuccessAt: lastSuccessAt?.toISOString() ?? null,
          lastFailure: lastFailure && { at: lastFailure.at.toISOString(), message: lastFailure.message },
          overdue,
        },
        200,
      )
    },
  )
  .post(
    '/',
    operation('makeBackup', { summary: 'Make and verify a backup now', tag, answers: { 201: BackupAnswer }, refuses: [409, 429, 507] }),
    valid('json', BackupRequest),
    async (c) => {
      const { password, passphrase } = c.req.valid('json')
      const refusal = await confirmPassword(c, password)
      if (refusal !== null) return refusal
      try {
        const made = await deskOf(c).make('asked', passphrase)
        await noteBackup(c, 'backup_made', made.name)
        return c.json(viewOf(made), 201)
      } catch (error) {
        if (error instanceof BackupRefused) return backupRefused(c, error)
        throw error
      }
    },
  )
  .post(
    '/:name/file',
    operation('downloadBackup', {
      summary: 'A kept backup as a file, in answer to a form with the password, for a browser to write to the disk as it comes',
      tag,
      answers: { 200: 'application/octet-stream' },
      refuses: [404, 429],
    }),
    valid('param', ByName),
    valid('form', BackupDownload),
    (c) => answerFile(c, c.req.valid('param').name, c.req.valid('form').password),
  )
  .post(
    '/:name/check',
    operation('checkBackup', {
      summary: 'Whether a kept backup may be downloaded with this password',
      tag,
      answers: { 204: null },
      refuses: [404, 429],
    }),
    valid('param', ByName),
    valid('json', BackupDownload),
    async (c) => {
      const wanted = await findWanted(c, c.req.valid('param').name, c.req.valid('json').password)
      return 'refusal' in wanted ? wanted.refusal : c.body(null, 204)
    },
  )

/** The kept backup of a name, for whoever gives the right password; else the refusal. */
async function findWanted(c: Ctx, name: string, password: string) {
  const refusal = await confirmPassword(c, password)
  if (refusal !== null) return { refusal }
  const found = await deskOf(c).find(name)
  return found ?? { refusal: problem(c, 404, 'not_found', 'There is no backup of this name. The oldest make room for newer ones.') }
}

/** A kept backup as it is read from the disk. */
async function answerFile(c: Ctx, asked: string, password: string) {
  const wanted = await findWanted(c, asked, password)
  if ('refusal' in wanted) return wanted.refusal
  const { name, bytes } = wanted.backup
  await noteBackup(c, 'backup_downloaded', name)
  return c.body(Readable.toWeb(createReadStream(wanted.path)) as ReadableStream, 200, {
    'Content-Type': 'application/octet-stream',
    'Content-Disposition': `attachment; filename="${name}"`,
    'Content-Length': String(bytes),
  })
}

/** In the trail under the name of its file. */
const noteBackup = (c: Ctx, action: 'backup_made' | 'backup_downloaded', name: string): Promise<void> =>
  c
    .get('db')
    .transaction()
    .execute((trx) => audit(trx, { actor: signedIn(c), action, subject: { kind: 'backup', id: name.slice(0, 60), name } }))
