import type { Kind } from '../../../core/catalog/kinds.ts'
import type { DataSet, ExportSet } from '../../../core/exchange/data-set.ts'
import type { ImportView } from '../../../core/exchange/import-view.ts'
import { queryOf, request } from './request.ts'

export interface Sending {
  set: DataSet
  kind: Kind | null
  file: Blob
  fileName: string
}

/** By the name of the file: browsers do not agree on the type of a CSV. */
const typeOf = (fileName: string): string => (fileName.toLowerCase().endsWith('.json') ? 'application/json' : 'text/csv')

/** Sends a file to be tried; nothing is written before somebody says so. */
export const startImport = ({ set, kind, file, fileName }: Sending): Promise<ImportView> =>
  request('POST', `/api/imports${queryOf({ set, kind, dryRun: true, fileName: fileName.slice(0, 200) })}`, {
    file: new Blob([file], { type: typeOf(fileName) }),
  })
export const listImports = async (): Promise<ImportView[]> => (await request<{ items: ImportView[] }>('GET', '/api/imports')).items
export const getImport = (id: string): Promise<ImportView> => request('GET', `/api/imports/${id}`)
export const writeImport = (id: string): Promise<ImportView> => request('POST', `/api/imports/${id}/write`)
export const cancelImport = (id: string): Promise<ImportView> => request('POST', `/api/imports/${id}/cancel`)
export const faultsAddress = (id: string): string => `/api/imports/${id}/faults`
export const templateAddress = (set: DataSet, kind: Kind | null): string => `/api/imports/template${queryOf({ set, kind })}`
export const FORMATS_ADDRESS = '/api/formats'
export const exportAddress = (asked: { set: ExportSet; kind: Kind | null; format: 'csv' | 'json'; text: 'safe' | 'raw' }): string => {
  const { set, kind, format, text } = asked
  return `/api/exports/${set.replaceAll('_', '-')}${queryOf({ format, text: format === 'csv' ? text : null, kind })}`
}
