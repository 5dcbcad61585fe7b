import type { InstallSettings } from '../../../core/install.ts'
import { request, requestVersioned, type Versioned } from './request.ts'

/** The install as it is sent back: its version travels in the ETag alone. */
export async function getInstall(): Promise<Versioned<InstallSettings>> {
  const { value, etag } = await requestVersioned<InstallSettings & { version: number }>('GET', '/api/install')
  const { version: _version, ...install } = value
  return { value: install, etag }
}
export const updateInstall = (body: InstallSettings, etag: string): Promise<InstallSettings> =>
  request('PUT', '/api/install', { body, etag })
