import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { Product } from '../../../core/catalog/product.ts'
import { problemOf } from '../client/problem.ts'
import type { ProductPage } from '../client/products.ts'
import { byName } from './by-name.ts'
import { matchingProducts } from './matching-products.ts'
import { pickedQuery } from './picked-query.ts'
import type { PickedProduct, ProductPickerProps } from './product-picker.tsx'

interface Found {
  /** Hashes of the pictures of those that have one, by product. */
  pictures: ProductPage['pictures']
  /** What the catalog itself said, now or of what was typed before. */
  products: Product[]
  /** What is offered: nothing that does not match what is typed. */
  items: PickedProduct[]
  /** The catalog is out of reach, and the phone's own products stand in. */
  cut: boolean
  /** The catalog has not answered yet to what is typed. */
  busy: boolean
  failed: boolean
}

const NO_PICTURES: ProductPage['pictures'] = {}
const once = (products: readonly PickedProduct[]): PickedProduct[] => [
  ...new Map(products.map((product) => [product.id, product])).values(),
]

/** What the catalog says of what is typed; until it answers, and out of its reach, what is at hand and matches. */
export function useFound({ kind, except = [], kept }: ProductPickerProps, typed: string): Found {
  const found = useQuery({ ...pickedQuery({ kind, typed }), placeholderData: keepPreviousData })
  const failure = found.error ?? found.failureReason
  const answered = found.isSuccess && !found.isPlaceholderData
  const products = (found.isError ? [] : (found.data?.items ?? [])).filter(({ archived }) => !archived)
  const cut = kept !== undefined && !answered && failure !== null && problemOf(failure).status === 0
  const known = once([...products, ...(kept?.() ?? [])]).filter((product) => kind === undefined || product.kind === kind)
  const atHand = answered ? products : matchingProducts(known, typed)
  const sorted = typed.trim() === '' ? atHand.toSorted(byName) : atHand
  return {
    products,
    pictures: found.data?.pictures ?? NO_PICTURES,
    items: sorted.filter(({ id }) => !except.includes(id)),
    cut,
    busy: !answered && !found.isError && !cut,
    failed: found.isError,
  }
}
