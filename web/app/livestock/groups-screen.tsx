import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { sayQuantity } from '../../../core/units/say.ts'
import { listLivestockGroups, type StoredGroup } from '../client/livestock.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useReader } from '../session/session.ts'

const STANDING = { edited: 'edited here', own: 'our own' } as const

/** Every group of animals with what it asks of the water; one that was edited says so. */
export function GroupsScreen(): ReactElement {
  const reader = useReader()
  const groups = useQuery({ queryKey: ['livestock'], queryFn: listLivestockGroups })
  const degrees = (value: number): string => sayQuantity({ value, unit: 'degC', digits: 0 }, reader)
  const columns: Array<Column<StoredGroup>> = [
    {
      key: 'name',
      head: 'Group',
      rowHead: true,
      phone: 'lead',
      cell: (group) => (
        <Link to="/settings/livestock/$groupId" params={{ groupId: group.id }}>
          {group.name}
        </Link>
      ),
    },
    {
      key: 'standing',
      head: 'Figures',
      phone: 'figure',
      cell: ({ standing }) => (standing === undefined ? 'as they came' : STANDING[standing]),
    },
    {
      key: 'warmth',
      head: 'Target',
      phone: 'below',
      cell: ({ targetC, dangerC }) => `${degrees(targetC)}, danger from ${degrees(dangerC)}`,
    },
    {
      key: 'volume',
      head: 'Smallest tank',
      phone: 'state',
      cell: ({ smallestVolumeL }) => sayQuantity({ value: smallestVolumeL, unit: 'L', digits: 0 }, reader),
    },
    { key: 'water', head: 'Water', cell: ({ water }) => water },
  ]
  return (
    <Screen
      title="Livestock groups"
      above={<Link to="/settings">Settings</Link>}
      below="What each asks of the water. Quotes keep the figures that they were issued with."
      actions={
        <Link to="/settings/livestock/$groupId" params={{ groupId: 'new' }} className="btn main">
          Add a group
        </Link>
      }
    >
      <ErrorNotice error={groups.error} onRetry={() => void groups.refetch()} />
      {groups.isPending && <LoadingRows what="the groups" />}
      {groups.data && <RuledTable caption="Livestock groups" columns={columns} rows={groups.data} rowKey={({ id }) => id} />}
    </Screen>
  )
}
