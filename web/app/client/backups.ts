import type { BackupsView, BackupView } from '../../../api/answers/backups.ts'
import { ProblemError, readProblem } from './problem.ts'
import { request } from './request.ts'

export type { BackupsView, BackupView }

export const listBackups = (): Promise<BackupsView> => request('GET', '/api/backups')
export const makeBackup = (body: { password: string; passphrase: string | null }): Promise<BackupView> =>
  request('POST', '/api/backups', { body })

/** The bytes of a kept backup. Throws ProblemError for every refusal. */
export async function fetchBackup(name: string, password: string): Promise<Blob> {
  const response = await fetch(`/api/backups/${name}/file`, {
    method: 'POST',
    credentials: 'same-origin',
    headers: { accept: 'application/octet-stream, application/problem+json', 'content-type': 'application/json' },
    body: JSON.stringify({ password }),
  }).catch(() => {
    throw new ProblemError(readProblem(0, null))
  })
  if (!response.ok) throw new ProblemError(readProblem(response.status, await response.json().catch(() => null)))
  return response.blob()
}
