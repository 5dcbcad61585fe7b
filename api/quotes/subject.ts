import type { AuditSubject } from '../../db/audit.ts'

/** A quote as the trail names it: by its number, once it has one. */
export const quoteSubject = ({ id, number }: { id: string; number: string | null }): AuditSubject => ({
  kind: 'quote',
  id,
  ...(number === null ? {} : { name: number }),
})
