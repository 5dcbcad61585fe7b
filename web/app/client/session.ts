import type { Install } from '../../../core/install.ts'
import type { Role } from '../../../core/people/roles.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { request } from './request.ts'

export interface SignedIn {
  id: string
  name: string
  role: Role
  /** Chosen on the account screen; null: the install's. */
  units: ReaderUnits | null
}
export interface Session {
  person: SignedIn | null
  install: Install
}
export interface LinkPurpose {
  purpose: 'first_manager' | 'invite' | 'new_password'
  role: Role
  name: string | null
  /** Whose password it sets; null for a link that makes an account. */
  signInName: string | null
}

export const getSession = (): Promise<Session> => request('GET', '/api/session')
export const signIn = (signInName: string, password: string): Promise<Session> =>
  request('POST', '/api/session', { body: { signInName, password } })
export const signOut = (): Promise<void> => request('DELETE', '/api/session')

export const changePassword = (current: string, password: string): Promise<void> =>
  request('PUT', '/api/session/password', { body: { current, password } })

/** Gives the own password once more: for some minutes managers may be made and unmade. */
export const proveOwnPassword = (password: string): Promise<void> => request('POST', '/api/session/proof', { body: { password } })

export const setOwnUnits = (units: ReaderUnits | null): Promise<Session> => request('PUT', '/api/session/units', { body: { units } })

export const getLink = (token: string): Promise<LinkPurpose> => request('GET', `/api/links/${encodeURIComponent(token)}`)
export const setPasswordByLink = (token: string, password: string): Promise<Session> =>
  request('PUT', `/api/links/${encodeURIComponent(token)}/password`, { body: { password } })
export interface NewAccount {
  name: string
  signInName: string
  password: string
  /** Of the place: the first manager's alone. */
  timeZone?: string
}
export const takeLink = (token: string, body: NewAccount): Promise<Session> =>
  request('POST', `/api/links/${encodeURIComponent(token)}`, { body })
