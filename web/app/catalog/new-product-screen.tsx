import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { kindInText, KIND_NAMES, KINDS } from '../../../core/catalog/kinds.ts'
import { createProduct } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { Screen } from '../parts/screen.tsx'
import { emptyProduct, type ProductDraft } from './product-draft.ts'
import { ProductForm } from './product-form.tsx'

/** First the kind, which decides the fields; then the form. */
export function NewProductScreen(): ReactElement {
  const navigate = useNavigate()
  const queries = useQueryClient()
  const [draft, setDraft] = useState<ProductDraft | null>(null)
  const create = useMutation({
    mutationFn: createProduct,
    onSuccess: async (product) => {
      await queries.invalidateQueries({ queryKey: ['products'] })
      await navigate({ to: '/prices/$productId', params: { productId: product.id } })
    },
  })
  return (
    <Screen
      title={draft ? `New ${kindInText(draft.kind)}` : 'New product'}
      above={<Link to="/catalog">Catalog</Link>}
      actions={draft && <Button onClick={() => setDraft(null)}>Another kind</Button>}
    >
      {draft === null ? (
        <section aria-labelledby="kind-head" className="form">
          <h2 id="kind-head">What kind is it?</h2>
          <div className="kinds">
            {KINDS.map((kind) => (
              <Button key={kind} onClick={() => setDraft(emptyProduct(kind))}>
                {KIND_NAMES[kind]}
              </Button>
            ))}
          </div>
        </section>
      ) : (
        <ProductForm
          draft={draft}
          onChange={setDraft}
          error={create.error}
          busy={create.isPending}
          saveWords={`Add ${draft.name.trim() || 'it'} to the catalog`}
          onSave={(body) => create.mutate(body)}
        />
      )}
    </Screen>
  )
}
