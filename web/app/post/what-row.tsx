import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { Button } from '../parts/button.tsx'
import { pictureQuery } from '../parts/picture-query.ts'
import { ProductThumb } from '../parts/product-thumb.tsx'
import type { SightingDraft } from './sighting-draft.ts'

/** The product that is posted, with its picture where it has one, and the way to another. */
export function WhatRow({ product, onChange }: { product: SightingDraft['product']; onChange: () => void }): ReactElement {
  const picture = useQuery({ ...pictureQuery(product?.id ?? ''), enabled: product !== null })
  const hash = picture.data?.value.hash
  return (
    <div className="what">
      {hash && <ProductThumb hash={hash} name="" />}
      <div>
        <p className="pn">{product?.name}</p>
        {product?.kind && <p className="note">{KIND_NAMES[product.kind]}</p>}
      </div>
      <Button look="plain" onClick={onChange}>
        Change<span className="sr"> the product</span>
      </Button>
    </div>
  )
}
