import type { CellValue, ExchangeColumn } from '../exchange/column.ts'
import { sayAudit, sayChanges, type AuditLine } from './say-audit.ts'
import type { AuditChange } from './audit-changes.ts'

const told = (heading: string, help: string): ExchangeColumn => ({ heading, type: 'text', required: true, help, told: true })

/** The trail as a file to read and to keep. Nothing reads it back: what was changed is no longer there to be changed. */
export const AUDIT_COLUMNS: readonly ExchangeColumn[] = [
  told('at', 'When, in coordinated universal time (ISO 8601).'),
  told('what_was_done', 'The entry as a sentence.'),
  told('changed', 'The fields that changed, with what they were and are where the trail keeps it.'),
  told('done_by', 'Name of who did it; empty for the service itself, or someone at its console.'),
  told('done_by_id', 'Id of who did it.'),
  told('action', 'The action by its name, which stays the same in every release.'),
  told('about', 'What kind of thing it was done to.'),
  told('about_name', 'What that was called; of customers the trail keeps no name.'),
  told('about_id', 'Its id.'),
]

/** An entry as the row of a file; amounts in money of the currency, but for those of a store, which may have another one. */
export const auditValues = (entry: AuditLine & { at: Date; changes: readonly AuditChange[] }, currency: string): Map<string, CellValue> =>
  new Map<string, CellValue>([
    ['at', entry.at.toISOString()],
    ['what_was_done', sayAudit(entry)],
    ['changed', sayChanges(entry.changes, entry.subject.kind === 'store' ? undefined : currency).join(' | ')],
    ['done_by', entry.actor?.name ?? null],
    ['done_by_id', entry.actor?.id ?? null],
    ['action', entry.action],
    ['about', entry.subject.kind],
    ['about_name', entry.subject.name],
    ['about_id', entry.subject.id],
  ])
