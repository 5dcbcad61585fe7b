import { KINDS, type Kind } from '../../../core/catalog/kinds.ts'

export interface CatalogSearch {
  kind?: Kind | undefined
  q?: string | undefined
  archived?: boolean | undefined
  /** What the maker must state, as spelt in core/catalog/spec-filter.ts, which the screen reads; only with a kind. */
  spec?: string | undefined
}

/** Reads the filters off an address; what is no filter is left out. */
export function readCatalogSearch(search: Record<string, unknown>): CatalogSearch {
  const kind = KINDS.find((known) => known === search['kind'])
  const q = typeof search['q'] === 'string' && search['q'] !== '' ? search['q'] : undefined
  const spec = kind && typeof search['spec'] === 'string' && search['spec'] !== '' ? search['spec'] : undefined
  return {
    ...(kind ? { kind } : {}),
    ...(q ? { q } : {}),
    ...(spec ? { spec } : {}),
    ...(search['archived'] === true ? { archived: true } : {}),
  }
}
