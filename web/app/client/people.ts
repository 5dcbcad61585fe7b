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
  /** The link names this computer: on any other it leads nowhere. */
  thisComputerOnly: boolean
}
/** One that nobody has used yet; its link is known to whoever was sent it alone. */
export interface OpenInvitation {
  id: string
  name: string
  role: Role
  madeBy: string
  expiresAt: string
}

/** Everyone who may sign in. */
export const listPeople = async (): Promise<PersonRow[]> => (await request<{ items: PersonRow[] }>('GET', '/api/people')).items
export const invite = (body: { name: string; role: Role }): Promise<Invitation> => request('POST', '/api/people/invitations', { body })
export const makePasswordLink = (personId: string): Promise<Invitation> => request('POST', `/api/people/${personId}/password-link`)
export const listInvitations = async (): Promise<OpenInvitation[]> =>
  (await request<{ items: OpenInvitation[] }>('GET', '/api/people/invitations')).items
export const withdrawInvitation = (id: string): Promise<void> => request('DELETE', `/api/people/invitations/${id}`)
export const changePerson = (person: PersonRow, body: { role?: Role; disabled?: boolean }): Promise<PersonRow> =>
  request('PATCH', `/api/people/${person.id}`, { body, etag: `"${person.version}"` })
