import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { getLivestockGroup } from '../client/livestock.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { EditGroup } from './edit-group.tsx'
import { NewGroup } from './new-group.tsx'

/** One group, or a new one. */
export function GroupScreen(): ReactElement {
  const { groupId } = useParams({ from: '/settings/livestock/$groupId' })
  return groupId === 'new' ? <NewGroup /> : <OneGroup key={groupId} groupId={groupId} />
}

function OneGroup({ groupId }: { groupId: string }): ReactElement {
  const group = useQuery({
    queryKey: ['livestock', groupId],
    queryFn: () => getLivestockGroup(groupId),
    refetchOnWindowFocus: false,
    staleTime: 0,
    gcTime: 0,
  })
  if (group.data) {
    const reload = async () => (await group.refetch({ throwOnError: true })).data
    return <EditGroup read={group.data} reload={reload} />
  }
  return (
    <Screen title="Livestock group" above={<Link to="/settings/livestock">Livestock groups</Link>} width="narrow">
      {group.error ? <ErrorNotice error={group.error} onRetry={() => void group.refetch()} /> : <LoadingRows what="the group" />}
    </Screen>
  )
}
