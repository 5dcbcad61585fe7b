import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { Button } from '../parts/button.tsx'
import type { SightingDraft } from './sighting-draft.ts'

/** The product that is posted, and the way to another. */
export function WhatRow({ product, onChange }: { product: SightingDraft['product']; onChange: () => void }): ReactElement {
  return (
    <div className="what">
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
