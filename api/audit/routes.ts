import { Hono } from 'hono'
import { AUDIT_SUBJECTS } from '../../core/audit/audit-actions.ts'
import { civilDate, oneOf, rowId, strict } from '../../core/schema.ts'
import { listAudit } from '../../db/audit.ts'
import { getInstall } from '../../db/install.ts'
import { AuditAnswer } from '../answers/people.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { paging } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { valid } from '../http/valid.ts'

const AuditQuery = strict('Query', {
  person: rowId('Person').optional(),
  subject: oneOf('Subject', AUDIT_SUBJECTS).optional(),
  day: civilDate('Day').optional(),
  ...paging(50, 500),
})

/** Who changed what. There is nothing here to change it with. */
export const auditTrail = new Hono<Env>().get(
  '/',
  operation('listAudit', { summary: 'Who changed what, newest first', tag: 'People', answers: { 200: AuditAnswer } }),
  valid('query', AuditQuery),
  async (c) => {
    const { person: personId, day, ...filter } = c.req.valid('query')
    const { timeZone } = await getInstall(c.get('db'))
    const { items, total } = await listAudit(c.get('db'), signedIn(c), {
      ...filter,
      personId,
      ...(day === undefined ? {} : { day: { date: day, timeZone } }),
    })
    return c.json({ items: items.map((entry) => ({ ...entry, at: entry.at.toISOString(), changes: [...entry.changes] })), total }, 200)
  },
)
