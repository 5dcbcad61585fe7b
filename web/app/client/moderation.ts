import type { SightingRow } from '../../../core/pricing/record.ts'
import { queryOf, request } from './request.ts'

export type Judgement = { decision: 'accept' } | { decision: 'dispute' } | { decision: 'withdraw'; reason: string }
export interface Reporter {
  id: string
  name: string
  /** How many of theirs stand. */
  sightings: number
  /** Of how many, anybody's, they said that they are gone. */
  foundGone: number
}
export interface Undo {
  id: string
  reporter: { id: string; name: string }
  undoneBy: string
  at: string
  sightings: number
  foundGone: number
  reversibleUntil: string
  reversedAt: string | null
}

export const listWaiting = (limit: number): Promise<{ items: SightingRow[]; total: number }> =>
  request('GET', `/api/moderation/sightings${queryOf({ limit })}`)
export const judgeSighting = (id: string, body: Judgement): Promise<SightingRow> =>
  request('POST', `/api/moderation/sightings/${id}`, { body })
export const listUndos = (): Promise<{ reporters: Reporter[]; undos: Undo[] }> => request('GET', '/api/moderation/undos')
export const undoSightings = (body: { personId: string; sightings: number; foundGone: number }): Promise<Undo> =>
  request('POST', '/api/moderation/undos', { body })
export const reverseUndo = (id: string): Promise<Undo> => request('DELETE', `/api/moderation/undos/${id}`)
