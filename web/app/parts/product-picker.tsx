import { lazy, Suspense, type ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'

/** As much of a product as a choice shows. */
export type PickedProduct = Pick<Product, 'id' | 'name' | 'kind'>

export interface ProductPickerProps {
  label: string
  /** Only products of these kinds; absent: of every kind. */
  kind?: Kind
  help?: string
  fault?: string | null
  /** Products that cannot be chosen here, by id. */
  except?: readonly string[]
  onPick: (product: Product) => void
  /** Products to search where the catalog is out of reach. */
  kept?: () => readonly PickedProduct[]
  onPickKept?: (product: PickedProduct) => void
}

/** What stands in the list's place where its part could not be loaded: a phone that lost its signal before it ever searched. */
const NotLoaded = ({ label }: ProductPickerProps): ReactElement => (
  <div className="field">
    <span className="label">{label}</span>
    <p className="quiet">The search could not be loaded. Load this page again once there is a signal; nothing that is kept here is lost.</p>
  </div>
)

const load = (): Promise<{ default: (props: ProductPickerProps) => ReactElement }> =>
  import('./product-picker-box.tsx').catch(() => ({ default: NotLoaded }))

/** Loads the list ahead of its use, for a screen that will need it when there may be no signal any more. */
export function preloadProductPicker(): void {
  void load()
}

const Box = lazy(load)

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
