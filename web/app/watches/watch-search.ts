import { KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import { BUILD_LETTERS, type BuildLetter } from '../../../core/quote/draft.ts'

/** What a new watch is to be of, as it stands in the address: a product, or a kind with a filter and maybe a build that it must fit. */
export interface WatchSearch {
  product?: string | undefined
  kind?: Kind | undefined
  spec?: string | undefined
  quote?: string | undefined
  letter?: BuildLetter | undefined
}

const textAt = (search: Record<string, unknown>, key: string): string | undefined =>
  typeof search[key] === 'string' && search[key] !== '' ? search[key] : undefined

/** Reads it; what is no part of it is left out. */
export function readWatchSearch(search: Record<string, unknown>): WatchSearch {
  const product = textAt(search, 'product')
  if (product !== undefined) return { product }
  const kind = KINDS.find((known) => known === search['kind'])
  if (kind === undefined) return {}
  const [spec, quote] = [textAt(search, 'spec'), textAt(search, 'quote')]
  const letter = BUILD_LETTERS.find((known) => known === search['letter'])
  return { kind, ...(spec ? { spec } : {}), ...(quote && letter ? { quote, letter } : {}) }
}
