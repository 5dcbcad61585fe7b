import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { getStore } from '../client/stores.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { EditStore } from './edit-store.tsx'

export function EditStoreScreen(): ReactElement {
  const { storeId } = useParams({ from: '/stores/$storeId' })
  const store = useQuery({
    queryKey: ['stores', 'one', storeId],
    queryFn: () => getStore(storeId),
    refetchOnWindowFocus: false,
    staleTime: 0,
    gcTime: 0,
  })
  if (store.data) {
    const reload = async () => (await store.refetch({ throwOnError: true })).data
    return <EditStore key={storeId} read={store.data} reload={reload} />
  }
  return (
    <Screen title="Store" above={<Link to="/stores">Stores</Link>} width="narrow">
      {store.error ? <ErrorNotice error={store.error} onRetry={() => void store.refetch()} /> : <LoadingRows what="the store" />}
    </Screen>
  )
}
