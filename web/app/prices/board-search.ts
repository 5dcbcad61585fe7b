import { KINDS, type Kind } from '../../../core/catalog/kinds.ts'

export interface BoardSearch {
  kind?: Kind | undefined
  store?: string | undefined
  region?: string | undefined
  q?: string | undefined
}

/** Reads the filters off an address; what is no filter is left out. */
export function readBoardSearch(search: Record<string, unknown>): BoardSearch {
  const kind = KINDS.find((known) => known === search['kind'])
  const store = typeof search['store'] === 'string' ? search['store'] : undefined
  const region = typeof search['region'] === 'string' ? search['region'] : undefined
  const q = typeof search['q'] === 'string' && search['q'] !== '' ? search['q'] : undefined
  return { ...(kind ? { kind } : {}), ...(store ? { store } : {}), ...(region ? { region } : {}), ...(q ? { q } : {}) }
}
