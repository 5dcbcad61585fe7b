import { Hono } from 'hono'
import { InstallInput } from '../../core/install/schema.ts'
import { audit } from '../../db/audit.ts'
import { getInstall, updateInstall } from '../../db/install.ts'
import { InstallAnswer } from '../answers/people.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { operation } from '../http/operation.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf, unchanged } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'Install'

export const install = new Hono<Env>()
  .get(
    '/',
    operation('getInstall', {
      summary: 'Name, money, place and units of this club or store',
      tag,
      answers: { 200: InstallAnswer, 304: null },
    }),
    async (c) => {
      const row = await getInstall(c.get('db'))
      c.header('ETag', etagOf(row.version))
      return unchanged(c, etagOf(row.version)) ? c.body(null, 304) : c.json(row, 200)
    },
  )
  .put(
    '/',
    operation('updateInstall', { summary: 'Change them', tag, answers: { 200: InstallAnswer }, refuses: [404, 409, 410, 412, 428] }),
    valid('json', InstallInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const actor = signedIn(c)
      const updated = await transact(c.get('db'), async (trx) => {
        const before = await getInstall(trx)
        const outcome = await updateInstall(trx, actor, version, c.req.valid('json'))
        if (outcome.ok) await audit(trx, { actor, action: 'install_changed', subject: { kind: 'install' }, before, after: outcome.value })
        return outcome
      })
      if (!updated.ok) return refused(c, updated.refusal)
      c.header('ETag', etagOf(updated.value.version))
      return c.json(updated.value, 200)
    },
  )
