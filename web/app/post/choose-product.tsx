import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { getBoard } from '../client/sightings.ts'
import { ProductPicker } from '../parts/product-picker.tsx'
import { readRecent, type RecentProduct } from './recent.ts'

/** Rows that stand in for a newcomer's own recent ones. */
const FROM_BOARD = 6

/** Search by name, or one tap on what was posted from here lately; a newcomer sees what others posted last. */
export function ChooseProduct({ personId, onPick }: { personId: string; onPick: (product: RecentProduct) => void }): ReactElement {
  const recent = readRecent(personId).products
  const board = useQuery({
    queryKey: ['board', 'newest'],
    queryFn: () => getBoard({ limit: FROM_BOARD * 2 }),
    enabled: recent.length === 0,
  })
  const others = [
    ...new Map(
      (board.data?.rows ?? []).map(({ sighting, kind }) => [
        sighting.productId,
        { id: sighting.productId, name: sighting.productName, kind },
      ]),
    ).values(),
  ]
  const offered = recent.length > 0 ? recent : others.slice(0, FROM_BOARD)
  return (
    <>
      <ProductPicker label="Which product?" onPick={onPick} help="Type a part of its name or its maker." />
      {offered.length > 0 && (
        <section aria-labelledby="recent-head">
          <h2 id="recent-head" className="label">
            {recent.length > 0 ? 'Posted from here lately' : 'Newest here'}
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
