import { lazy, Suspense, type ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'

export interface ProductPickerProps {
  label: string
  /** Only products of these kinds; absent: of every kind. */
  kind?: Kind
  help?: string
  fault?: string | null
  /** Products that cannot be chosen here, by id. */
  except?: readonly string[]
  onPick: (product: Product) => void
}

const Box = lazy(() => import('./product-picker-box.tsx'))

/** Type-ahead over the catalog. Its list is loaded when a screen first needs it; until then its place is kept. */
export function ProductPicker(props: ProductPickerProps): ReactElement {
  return (
    <Suspense
      fallback={
        <div className="field">
          <span className="label">{props.label}</span>
          <div className="entry" />
        </div>
      }
    >
      <Box {...props} />
    </Suspense>
  )
}
