import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import type { Product } from '../../../core/catalog/product.ts'
import { getPriceViews } from '../client/products.ts'
import { ErrorNotice } from '../parts/states.tsx'

/** What is in the box, each part leading to its own prices. */
export function KitContents({ kit }: { kit: Product }): ReactElement | null {
  const read = useQuery({ queryKey: ['products', 'kit', kit.id, kit.version], queryFn: () => getPriceViews([kit.id]) })
  if (!read.data) return <ErrorNotice error={read.error} onRetry={() => void read.refetch()} />
  const names = new Map(read.data.products.map(({ id, name }) => [id, name]))
  return (
    <section className="form" aria-labelledby="box-head">
      <div className="sechead">
        <h2 id="box-head">In the box</h2>
        <p className="quiet">Each part fills its own place in a build.</p>
      </div>
      <ul>
        {kit.parts.map(({ productId, quantity }) => (
          <li key={productId}>
            {quantity > 1 && `${quantity} × `}
            <Link to="/prices/$productId" params={{ productId }}>
              {names.get(productId) ?? 'A product no longer listed'}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  )
}
