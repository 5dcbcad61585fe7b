import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { Product } from '../../../core/catalog/product.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { problemOf } from '../client/problem.ts'
import { updateProduct, type ProductBody } from '../client/products.ts'
import type { Versioned } from '../client/request.ts'
import type { Clash } from '../parts/conflict-told.tsx'
import { useReader } from '../session/session.ts'
import { mergeProduct } from './merge-product.ts'
import { draftOf } from './product-draft.ts'

export type ProductRead = Versioned<Product> & { partNames: Map<string, string> }

const spell = (read: ProductRead, reader: ReaderUnits) => ({
  product: read.value,
  draft: draftOf(read.value, (id) => read.partNames.get(id) ?? 'a product of the catalog', reader),
})

/** The state of editing one product on the version it was read at; a newer one is brought in without losing what was typed. */
export function useProductEdit(read: ProductRead, reload: () => Promise<ProductRead | undefined>) {
  const reader = useReader()
  const navigate = useNavigate()
  const queries = useQueryClient()
  const [based, setBased] = useState(() => ({ etag: read.etag, stored: spell(read, reader) }))
  const [draft, setDraft] = useState(based.stored.draft)
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const save = useMutation({
    mutationFn: (body: ProductBody) => updateProduct(read.value.id, body, based.etag),
    onSuccess: async (product) => {
      await queries.invalidateQueries({ queryKey: ['products'] })
      await queries.invalidateQueries({ queryKey: ['record'] })
      await navigate({ to: '/prices/$productId', params: { productId: product.id } })
    },
  })
  const compare = useMutation({
    mutationFn: reload,
    onSuccess: (newest) => {
      if (!newest) return
      const theirs = spell(newest, reader)
      const merged = mergeProduct(based.stored.draft, draft, theirs.draft)
      setBased({ etag: newest.etag, stored: theirs })
      setDraft(merged.draft)
      setClashes(merged.clashes)
      save.reset()
    },
  })
  const stale = save.error !== null && problemOf(save.error).status === 412
  return { stored: based.stored, draft, setDraft, clashes, save, compare, stale }
}
