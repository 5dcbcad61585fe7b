import { namesApart } from '../../../core/people/names-apart.ts'
import type { Role } from '../../../core/people/roles.ts'
import { request } from './request.ts'

export interface PersonRow {
  id: string
  name: string
  /** The name, with the sign-in name behind it where another has the same. */
  called: string
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
export async function listPeople(): Promise<PersonRow[]> {
  const { items } = await request<{ items: Array<Omit<PersonRow, 'called'>> }>('GET', '/api/people')
  const called = namesApart(items)
  return items.map((person, index) => ({ ...person, called: called[index] ?? person.name }))
}
export const invite = (body: { name: string; role: Role }): Promise<Invitation> => request('POST', '/api/people/invitations', { body })
export const makePasswordLink = (personId: string): Promise<Invitation> => request('POST', `/api/people/${personId}/password-link`)
export const listInvitations = async (): Promise<OpenInvitation[]> =>
  (await request<{ items: OpenInvitation[] }>('GET', '/api/people/invitations')).items
export const withdrawInvitation = (id: string): Promise<void> => request('DELETE', `/api/people/invitations/${id}`)
export const changePerson = (person: PersonRow, body: { role?: Role; disabled?: boolean }): Promise<unknown> =>
  request('PATCH', `/api/people/${person.id}`, { body, etag: `"${person.version}"` })
