import { Hono } from 'hono'
import { AUDIT_SUBJECTS } from '../../core/audit/audit-actions.ts'
import { AUDIT_COLUMNS, auditValues } from '../../core/audit/audit-columns.ts'
import type { TextForm } from '../../core/exchange/write-cell.ts'
import { civilDate, oneOf, rowId, strict } from '../../core/schema.ts'
import { auditPages, listAudit, type AuditFilter } from '../../db/audit.ts'
import { getInstall } from '../../db/install.ts'
import { AuditAnswer } from '../answers/people.ts'
import { signedIn, type Ctx, type Env } from '../context.ts'
import { installToday } from '../day.ts'
import { csvHead, csvRows } from '../exchange/export-file.ts'
import { streamFile } from '../exchange/stream-file.ts'
import { paging } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { valid } from '../http/valid.ts'

const filters = {
  person: rowId('Person').optional(),
  subject: oneOf('Subject', AUDIT_SUBJECTS).optional(),
  day: civilDate('Day').optional(),
}
const AuditQuery = strict('Query', { ...filters, ...paging(50, 500) })
const FileQuery = strict('Query', { ...filters, text: oneOf('Text', ['safe', 'raw']).default('safe') })

/** What was asked for, its day as one of the place. */
function filterOf(asked: { person?: string; subject?: AuditFilter['subject']; day?: string }, timeZone: string): AuditFilter {
  return { personId: asked.person, subject: asked.subject, day: asked.day === undefined ? undefined : { date: asked.day, timeZone } }
}

async function* fileParts(c: Ctx, filter: AuditFilter, text: TextForm, currency: string): AsyncGenerator<string> {
  yield csvHead(AUDIT_COLUMNS, text)
  for await (const page of auditPages(c.get('db'), signedIn(c), filter))
    yield csvRows(AUDIT_COLUMNS, page.map((entry) => auditValues(entry, currency)), text) // prettier-ignore
}

/** Who changed what. There is nothing here to change it with. */
export const auditTrail = new Hono<Env>()
  .get(
    '/',
    operation('listAudit', { summary: 'Who changed what, newest first', tag: 'People', answers: { 200: AuditAnswer } }),
    valid('query', AuditQuery),
    async (c) => {
      const { limit, offset, ...asked } = c.req.valid('query')
      const { timeZone } = await getInstall(c.get('db'))
      const { items, total } = await listAudit(c.get('db'), signedIn(c), { ...filterOf(asked, timeZone), limit, offset })
      return c.json({ items: items.map((entry) => ({ ...entry, at: entry.at.toISOString(), changes: [...entry.changes] })), total }, 200)
    },
  )
  .get(
    '/file',
    operation('exportAudit', { summary: 'Who changed what, as a file', tag: 'People', answers: { 200: 'text/csv' } }),
    valid('query', FileQuery),
    async (c) => {
      const { text, ...asked } = c.req.valid('query')
      const { install, today } = await installToday(c)
      const parts = fileParts(c, filterOf(asked, install.timeZone), text, install.currency)
      return streamFile(c, parts, { name: `changes-${today}`, format: 'csv' })
    },
  )
