import type { Role } from '../../../core/people/roles.ts'
import { request } from './request.ts'

export interface PersonRow {
  id: string
  name: string
  signInName: string
  role: Role
  disabled: boolean
  version: number
}
export interface Invitation {
  url: string
  expiresAt: string
}

/** Everyone who may sign in. */
export const listPeople = async (): Promise<PersonRow[]> => (await request<{ items: PersonRow[] }>('GET', '/api/people')).items
export const invite = (body: { name: string; role: Role }): Promise<Invitation> => request('POST', '/api/people/invitations', { body })
export const changePerson = (person: PersonRow, body: { role?: Role; disabled?: boolean }): Promise<PersonRow> =>
  request('PATCH', `/api/people/${person.id}`, { body, etag: `"${person.version}"` })
