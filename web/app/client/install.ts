import type { Install } from '../../../core/install.ts'
import { request, requestVersioned, type Versioned } from './request.ts'

export const getInstall = (): Promise<Versioned<Install>> => requestVersioned('GET', '/api/install')
export const updateInstall = (body: Install, etag: string): Promise<Install> => request('PUT', '/api/install', { body, etag })
