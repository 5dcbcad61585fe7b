import { KINDS, type Kind } from '../../../core/catalog/kinds.ts'

export interface CatalogSearch {
  kind?: Kind | undefined
  q?: string | undefined
  archived?: boolean | undefined
}

/** Reads the filters off an address; what is no filter is left out. */
export function readCatalogSearch(search: Record<string, unknown>): CatalogSearch {
  const kind = KINDS.find((known) => known === search['kind'])
  const q = typeof search['q'] === 'string' && search['q'] !== '' ? search['q'] : undefined
  return { ...(kind ? { kind } : {}), ...(q ? { q } : {}), ...(search['archived'] === true ? { archived: true } : {}) }
}
