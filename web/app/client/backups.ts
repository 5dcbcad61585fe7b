import type { BackupsView, BackupView } from '../../../api/answers/backups.ts'
import { request } from './request.ts'

export type { BackupsView, BackupView }

export const listBackups = (): Promise<BackupsView> => request('GET', '/api/backups')
export const makeBackup = (body: { password: string; passphrase: string | null }): Promise<BackupView> =>
  request('POST', '/api/backups', { body })

/** Whether this password lets a kept backup out, and it is still there. Throws ProblemError where not. */
export const checkBackup = (name: string, password: string): Promise<undefined> =>
  request('POST', `/api/backups/${name}/check`, { body: { password } })
/** Where a form with the password is answered with the file. */
export const backupFormAddress = (name: string): string => `/api/backups/${name}/file`
