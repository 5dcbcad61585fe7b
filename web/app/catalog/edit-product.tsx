import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { problemOf } from '../client/problem.ts'
import { updateProduct, type ProductBody } from '../client/products.ts'
import type { Versioned } from '../client/request.ts'
import { Button } from '../parts/button.tsx'
import { MergedTold, StaleTold, type Clash } from '../parts/conflict-told.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Screen } from '../parts/screen.tsx'
import { Told } from '../parts/told.tsx'
import { useReader } from '../session/session.ts'
import { mergeProduct } from './merge-product.ts'
import { draftOf, readDraft } from './product-draft.ts'
import { ProductForm } from './product-form.tsx'

type Read = Versioned<Product> & { partNames: Map<string, string> }

/** Edits one product on the version it was read at; a newer one is brought in without losing what was typed. */
export function EditProduct({ read, reload }: { read: Read; reload: () => Promise<Read | undefined> }): ReactElement {
  const reader = useReader()
  const navigate = useNavigate()
  const queries = useQueryClient()
  const spell = (from: Read) => ({
    product: from.value,
    draft: draftOf(from.value, (id) => from.partNames.get(id) ?? 'a product of the catalog', reader),
  })
  const [based, setBased] = useState(() => ({ etag: read.etag, stored: spell(read) }))
  const [draft, setDraft] = useState(based.stored.draft)
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const [asking, setAsking] = useState(false)
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
      const theirs = spell(newest)
      const merged = mergeProduct(based.stored.draft, draft, theirs.draft)
      setBased({ etag: newest.etag, stored: theirs })
      setDraft(merged.draft)
      setClashes(merged.clashes)
      save.reset()
    },
  })
  const stale = save.error !== null && problemOf(save.error).status === 412
  const setArchived = (archived: boolean): void => {
    setAsking(false)
    save.mutate({ ...readDraft(based.stored.draft, reader, based.stored).body, archived })
  }
  return (
    <Screen
      title={based.stored.product.name}
      pageTitle={`${based.stored.product.name} · edit`}
      above={
        <>
          <Link to="/catalog">Catalog</Link> · {KIND_NAMES[read.value.kind]}
        </>
      }
      actions={
        <>
          <Link to="/prices/$productId" params={{ productId: read.value.id }} className="btn">
            See its prices
          </Link>
          <Button onClick={() => (read.value.archived ? setArchived(false) : setAsking(true))}>
            {read.value.archived ? 'Take out of the archive' : 'Archive'}
          </Button>
        </>
      }
    >
      {read.value.archived && (
        <Told kind="note" title="Archived">
          <p>It stays in old quotes and takes no new sightings.</p>
        </Told>
      )}
      <ProductForm
        draft={draft}
        onChange={setDraft}
        stored={based.stored}
        error={save.error}
        busy={save.isPending}
        saveWords={`Save ${draft.name.trim() || 'the product'}`}
        conflict={
          stale ? (
            <StaleTold busy={compare.isPending} onCompare={() => compare.mutate()} />
          ) : clashes ? (
            <MergedTold clashes={clashes} />
          ) : undefined
        }
        onSave={(body) => save.mutate(body)}
      />
      <Dialog
        open={asking}
        title={`Archive ${based.stored.product.name}?`}
        onClose={() => setAsking(false)}
        actions={
          <>
            <Button onClick={() => setAsking(false)}>Keep it in the catalog</Button>
            <Button look="main" onClick={() => setArchived(true)}>
              Archive it
            </Button>
          </>
        }
      >
        <p>
          It stays in old quotes and takes no new sightings. Builds that hold it say so. You can take it out of the archive again. What is
          typed in the form now is not saved with it.
        </p>
      </Dialog>
    </Screen>
  )
}
