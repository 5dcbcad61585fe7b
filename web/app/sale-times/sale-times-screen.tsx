import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { SaleTime } from '../../../core/pricing/sale-time.ts'
import { deleteSaleTime } from '../client/sale-times.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { usePerson } from '../session/session.ts'
import { storesQuery } from '../stores/stores-query.ts'
import { SaleCalendarFigure } from './sale-calendar-figure.tsx'
import { SaleTimeForm } from './sale-time-form.tsx'
import { SaleTimeRows } from './sale-time-rows.tsx'
import { saleCalendarQuery } from './sale-times-query.ts'
import './sale-times.css'

/** The coming year's sale times with what the record says of each; a manager keeps them. */
export function SaleTimesScreen(): ReactElement {
  const calendar = useQuery(saleCalendarQuery)
  const stores = useQuery(storesQuery)
  const manages = usePerson().role === 'manager'
  const queries = useQueryClient()
  const [edited, setEdited] = useState<SaleTime | 'new' | null>(null)
  const [asked, setAsked] = useState<SaleTime | null>(null)
  const refresh = () => queries.invalidateQueries({ queryKey: ['sale-times'] })
  const { data } = calendar
  return (
    <Screen
      title="Sale calendar"
      below="Days of the coming year on which sales are known to happen."
      actions={
        manages && !edited ? (
          <Button look="main" onClick={() => setEdited('new')}>
            Add a sale time
          </Button>
        ) : undefined
      }
    >
      <ErrorNotice error={calendar.error} onRetry={() => void calendar.refetch()} />
      {calendar.isPending && <LoadingRows rows={4} what="the calendar" />}
      {data && edited && (
        <SaleTimeForm
          key={edited === 'new' ? 'new' : edited.id}
          saleTime={edited === 'new' ? null : edited}
          asOf={data.asOf}
          stores={stores.data ?? []}
          onDone={async () => {
            setEdited(null)
            await refresh()
          }}
          onLeave={() => setEdited(null)}
        />
      )}
      {data && data.rows.length === 0 && !edited && <NoSaleTimes manages={manages} onAdd={() => setEdited('new')} />}
      {data && data.rows.length > 0 && (
        <>
          <SaleCalendarFigure calendar={data} />
          <SaleTimeRows
            rows={data.rows}
            asOf={data.asOf}
            stores={stores.data ?? []}
            onChange={manages ? setEdited : undefined}
            onRemove={manages ? setAsked : undefined}
          />
        </>
      )}
      <RemoveDialog saleTime={asked} onClose={() => setAsked(null)} onDone={refresh} />
    </Screen>
  )
}

function NoSaleTimes({ manages, onAdd }: { manages: boolean; onAdd: () => void }): ReactElement {
  if (!manages) return <Empty>No sale times yet. The manager adds those that are known.</Empty>
  return <Empty action={<Button onClick={onAdd}>Add the first one</Button>}>No sale times yet.</Empty>
}

interface RemoveProps {
  saleTime: SaleTime | null
  onClose: () => void
  onDone: () => Promise<void>
}

function RemoveDialog({ saleTime, onClose, onDone }: RemoveProps): ReactElement {
  const remove = useMutation({
    mutationFn: deleteSaleTime,
    onSuccess: async () => {
      onClose()
      await onDone()
    },
  })
  return (
    <Dialog
      open={saleTime !== null}
      title={`Take out ${saleTime?.name ?? ''}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Keep it</Button>
          <Button look="main" busy={remove.isPending} onClick={() => saleTime && remove.mutate(saleTime.id)}>
            Take it out
          </Button>
        </>
      }
    >
      <p>What members reported in its days stays on record.</p>
      <ErrorNotice error={remove.error} />
    </Dialog>
  )
}
