import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { Fragment, type ReactElement } from 'react'
import type { Product } from '../../../core/catalog/product.ts'
import { getPriceViews } from '../client/products.ts'

/** What is in the box, in one line, each part leading to its own prices. */
export function KitContents({ kit }: { kit: Product }): ReactElement {
  const read = useQuery({ queryKey: ['products', 'kit', kit.id, kit.version], queryFn: () => getPriceViews([kit.id]) })
  const names = new Map(read.data?.products.map(({ id, name }) => [id, name]))
  const count = kit.parts.length === 1 ? 'one part' : `${kit.parts.length} parts`
  // Without their names the parts are still counted: the prices below do not wait for them.
  if (!read.data) return <>in the box: {count}</>
  return (
    <>
      in the box:{' '}
      {kit.parts.map(({ productId, quantity }, index) => (
        <Fragment key={productId}>
          {index > 0 && ', '}
          {quantity > 1 && `${quantity} × `}
          <Link to="/prices/$productId" params={{ productId }}>
            {names.get(productId) ?? 'a product no longer listed'}
          </Link>
        </Fragment>
      ))}
    </>
  )
}
