import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { getPriceListEntry } from '../client/price-list.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { PriceListForm } from './price-list-form.tsx'

export function PriceListEntryScreen(): ReactElement {
  const { productId } = useParams({ from: '/catalog/price-list/$productId' })
  const entry = useQuery({
    queryKey: ['price-list', 'one', productId],
    queryFn: () => getPriceListEntry(productId),
    refetchOnWindowFocus: false,
    staleTime: 0,
    gcTime: 0,
  })
  if (entry.data) {
    const reload = async () => (await entry.refetch({ throwOnError: true })).data
    return <PriceListForm key={productId} read={entry.data} reload={reload} />
  }
  return (
    <Screen title="Price" above={<Link to="/catalog/price-list">Price list</Link>} width="narrow">
      {entry.error ? <ErrorNotice error={entry.error} onRetry={() => void entry.refetch()} /> : <LoadingRows what="the price" />}
    </Screen>
  )
}
