import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { getPriceViews } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { ProductPicker } from '../parts/product-picker.tsx'
import type { RateDraft } from './store-draft.ts'

interface Props {
  rate: RateDraft
  change: (part: Partial<RateDraft>) => void
}

/** Single products that take a rate whatever their kind. */
export function RateProducts({ rate: { productIds }, change }: Props): ReactElement {
  const known = useQuery({
    queryKey: ['products', 'named', productIds],
    queryFn: () => getPriceViews(productIds),
    enabled: productIds.length > 0,
  })
  const nameOf = (id: string): string => known.data?.products.find((product) => product.id === id)?.name ?? 'a product'
  return (
    <>
      {productIds.length > 0 && (
        <ul className="plain">
          {productIds.map((id) => (
            <li key={id}>
              {nameOf(id)}{' '}
              <Button
                look="plain"
                small
                aria-label={`Take out ${nameOf(id)}`}
                onClick={() => change({ productIds: productIds.filter((one) => one !== id) })}
              >
                Take out
              </Button>
            </li>
          ))}
        </ul>
      )}
      <ProductPicker label="Or a single product" except={productIds} onPick={({ id }) => change({ productIds: [...productIds, id] })} />
    </>
  )
}
