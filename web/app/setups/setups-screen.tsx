import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { listSetups } from '../client/setups.ts'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { SetupTable } from './setup-table.tsx'
import '../quotes/quotes.css'

/** Every tank being set up, and how far each has come. */
export function SetupsScreen(): ReactElement {
  const setups = useQuery({ queryKey: ['setups'], queryFn: listSetups, staleTime: 0 })
  return (
    <Screen title="Setups">
      {setups.isError && <ErrorNotice error={setups.error} onRetry={() => void setups.refetch()} />}
      {setups.isPending && <LoadingRows what="the setups" />}
      {setups.data?.length === 0 && <Empty>No setups yet. One is made when a quote is issued, with a link that hangs on the tank.</Empty>}
      {setups.data && setups.data.length > 0 && <SetupTable rows={setups.data} caption="Setups" />}
    </Screen>
  )
}
