import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { getPriceViews, getProduct } from '../client/products.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { EditProduct } from './edit-product.tsx'
import type { ProductRead } from './use-product-edit.ts'

/** The product with the names of its parts: a kit's own answer holds their ids alone. */
async function readProduct(id: string): Promise<ProductRead> {
  const read = await getProduct(id)
  const parts = read.value.parts.length > 0 ? (await getPriceViews([id])).products : []
  return { ...read, partNames: new Map(parts.map((part) => [part.id, part.name])) }
}

export function EditProductScreen(): ReactElement {
  const { productId } = useParams({ from: '/catalog/$productId' })
  const product = useQuery({
    queryKey: ['products', 'one', productId],
    queryFn: () => readProduct(productId),
    refetchOnWindowFocus: false,
    staleTime: 0,
    gcTime: 0,
  })
  if (product.data) {
    const reload = async () => (await product.refetch({ throwOnError: true })).data
    return <EditProduct key={productId} read={product.data} reload={reload} />
  }
  return (
    <Screen title="Product" above={<Link to="/catalog">Catalog</Link>}>
      {product.error ? <ErrorNotice error={product.error} onRetry={() => void product.refetch()} /> : <LoadingRows what="the product" />}
    </Screen>
  )
}
