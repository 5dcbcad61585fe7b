import type { AuditChange } from '../../../core/audit/audit-changes.ts'
import type { AuditLine } from '../../../core/audit/say-audit.ts'
import { queryOf, request } from './request.ts'

export interface TrailEntry extends AuditLine {
  id: string
  at: string
  changes: AuditChange[]
}
export interface TrailFilter {
  person?: string | undefined
  subject?: string | undefined
  day?: string | undefined
}

export const getTrail = (filter: TrailFilter, limit: number): Promise<{ items: TrailEntry[]; total: number }> =>
  request('GET', `/api/audit${queryOf({ ...filter, limit })}`)

/** Where the whole of what matches is downloaded. */
export const trailFileAddress = (filter: TrailFilter): string => `/api/audit/file${queryOf({ ...filter })}`
