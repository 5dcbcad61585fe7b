import { keepPreviousData, useQueries, useQuery, useQueryClient, type UseQueryResult } from '@tanstack/react-query'
import { useDeferredValue, useMemo } from 'react'
import type { Kind, Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { getPriceViews, listProducts, type ProductPage } from '../client/products.ts'
import { isPackSlot } from '../../../core/quote/pack-cover.ts'
import { farFrom, inOrderOfWant, saysPhrase, triedInOrder, type Candidate } from './candidates.ts'
import { useDesk } from './desk-context.ts'
import { packsOf } from './fill-packs.ts'
import { kindsFor, type Want } from './meets-want.ts'

/** Fetched, then filtered by the finding's wish: more than are shown, so that a wish still finds some. */
const FETCHED = 60
/** Each costs one run of the rules, about two milliseconds: more would be felt while typing, and typing on is faster than scrolling. */
const SHOWN = 20

export interface Found {
  candidates: Candidate[]
  /** Hashes of the pictures of those that have one, by product. */
  pictures: ProductPage['pictures']
  /** The catalog holds more than are shown. */
  more: boolean
  /** Only what settles a finding is among them. */
  settling: boolean
  state: 'reading' | 'ready' | 'failed'
  retry(): void
  partsOf(product: Product): Product[]
  pricesOf(product: Product): PriceView[]
}

interface Search {
  build: WorkedBuild
  slot: Slot
  /** Null: as many packs as it takes, one of anything else. */
  quantity: number | null
  replaces: string[]
  beside: boolean
  words: string
  want: Want | null
  /** What the maker must state of the slot's own kind; a kit states none of it and is left out then. */
  spec: string
}

const NONE = { products: [], prices: [] }

interface Lists {
  items: Product[]
  pictures: ProductPage['pictures']
  total: number
  failed: boolean
  reading: boolean
}
/** A function of its own, so that the combined answer stays the same object while the lists do. */
function combineLists(lists: Array<UseQueryResult<ProductPage>>): Lists {
  return {
    items: lists.flatMap((list) => list.data?.items ?? []).filter((product) => !product.archived),
    pictures: Object.assign({}, ...lists.map((list) => list.data?.pictures ?? {})) as ProductPage['pictures'],
    total: lists.reduce((sum, list) => sum + (list.data?.total ?? 0), 0),
    failed: lists.some((list) => list.isError),
    reading: lists.some((list) => list.isPending),
  }
}

/** The kind that a slot is named after: the one whose spec can be asked for. */
export const ownKind = (slot: Slot): Kind[] =>
  kindsFor(slot)
    .filter((kind) => kind !== 'kit')
    .slice(0, 1)

/** Products for a slot by name, each tried in the build. */
export function useCandidates({ build, slot, quantity, replaces, beside, words, want, spec }: Search): Found {
  const { inputs } = useDesk()
  const queries = useQueryClient()
  const asked = useDeferredValue(words)
  const lists = useQueries({
    queries: (spec === '' ? kindsFor(slot) : ownKind(slot)).map((kind) => ({
      queryKey: ['products', 'slot', kind, asked, spec],
      queryFn: ({ signal }: { signal: AbortSignal }) => listProducts({ kind, q: asked, spec, limit: FETCHED }, signal),
      placeholderData: keepPreviousData<ProductPage>,
    })),
    combine: combineLists,
  })
  const { need } = inputs.draft
  const wanted = useMemo(
    () =>
      inOrderOfWant(lists.items, want)
        .map((product) => ({ product, phrase: saysPhrase(product, asked) ? 0 : 1, far: farFrom(need, product, inputs.products) }))
        .toSorted((a, b) => a.phrase - b.phrase || a.far - b.far)
        .map(({ product }) => product),
    [lists.items, want, need, asked, inputs.products],
  )
  const shown = useMemo(() => wanted.slice(0, SHOWN), [wanted])
  const ids = shown.map((product) => product.id)
  const views = useQuery({
    queryKey: ['price-views', ids],
    queryFn: () => getPriceViews(ids),
    enabled: ids.length > 0,
    placeholderData: keepPreviousData,
  })
  const fetched = views.data ?? NONE
  const candidates = useMemo(() => {
    const quantityOf = (product: Product): number =>
      quantity ?? (isPackSlot(slot) ? packsOf(product, slot, { inputs, build, replaces }) : 1)
    return triedInOrder(shown, { inputs, build, slot, quantityOf, replaces, beside, want, fetched }, { need, words: asked })
  }, [shown, inputs, build, slot, quantity, replaces, beside, want, fetched, need, asked])
  // Until the list is of these words and its prices are known, its first is not the one that would be meant.
  const reading = lists.reading || asked !== words || (ids.length > 0 && (views.isPending || views.isPlaceholderData))
  return {
    candidates,
    pictures: lists.pictures,
    settling: want !== null,
    more: wanted.length > shown.length || lists.total > lists.items.length,
    state: lists.failed || views.isError ? 'failed' : reading ? 'reading' : 'ready',
    retry: () => void Promise.all([queries.refetchQueries({ queryKey: ['products', 'slot'] }), views.refetch()]),
    partsOf: (product) => fetched.products.filter((one) => product.parts.some((part) => part.productId === one.id)),
    pricesOf: (product) => fetched.prices.filter((price) => price.productId === product.id),
  }
}
