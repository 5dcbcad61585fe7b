import { useQuery, useQueryClient } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { ProductPicker } from '../parts/product-picker.tsx'
import { boardQuery } from '../prices/board-query.ts'
import { offeredProducts, productsInMemory } from './known-products.ts'
import { readRecent, type RecentProduct } from './recent.ts'

/** A thumb reaches six rows without scrolling. */
const OFFERED = 6

/** Search by name, or one tap on what was posted from here lately, filled up with what others posted last. */
export function ChooseProduct({ personId, onPick }: { personId: string; onPick: (product: RecentProduct) => void }): ReactElement {
  const queries = useQueryClient()
  const recent = readRecent(personId).products
  const board = useQuery({ ...boardQuery(), enabled: recent.length < OFFERED })
  const offered = offeredProducts(recent, board.data?.rows ?? [], OFFERED)
  return (
    <>
      <ProductPicker
        label="Which product?"
        onPick={onPick}
        help="Type a part of its name or its maker."
        kept={() => productsInMemory(queries, personId)}
        onPickKept={onPick}
      />
      {offered.length > 0 && (
        <section aria-labelledby="recent-head">
          <h2 id="recent-head" className="label">
            {recent.length === 0
              ? 'Newest here'
              : recent.length < offered.length
                ? 'Posted from here lately, then the newest'
                : 'Posted from here lately'}
          </h2>
          <ul className="recent">
            {offered.map((product) => (
              <li key={product.id}>
                <button type="button" onClick={() => onPick(product)}>
                  <span className="pn">{product.name}</span>
                  <span className="note">{KIND_NAMES[product.kind]}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  )
}
