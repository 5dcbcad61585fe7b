import { useMutation, useQuery, useQueryClient, keepPreviousData } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { judgeSighting, listWaiting, type Judgement } from '../client/moderation.ts'
import { MoreRows } from '../parts/more-rows.tsx'
import { RuledTable } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { readPricesAnew } from '../prices/read-anew.ts'
import '../prices/prices.css'
import { usePerson, useToday } from '../session/session.ts'
import { useStoreMoney } from '../stores/store-currency.ts'
import { ReasonDialog } from './reason-dialog.tsx'
import { TakenBack } from './taken-back.tsx'
import { waitingColumns } from './waiting-columns.tsx'

const PAGE = 50
const KEY = ['moderation'] as const

/** Doubted and disputed sightings in one list, and all of one member's taken back. */
export function WaitingScreen(): ReactElement {
  const queries = useQueryClient()
  const [shown, setShown] = useState(PAGE)
  const [asked, setAsked] = useState<SightingRow | null>(null)
  const waiting = useQuery({
    queryKey: [...KEY, 'waiting', shown],
    queryFn: () => listWaiting(shown),
    placeholderData: keepPreviousData,
    staleTime: 0,
  })
  const judge = useMutation({
    mutationFn: ({ id, ...judgement }: { id: string } & Judgement) => judgeSighting(id, judgement),
    onSuccess: () => setAsked(null),
    onSettled: () => Promise.all([queries.invalidateQueries({ queryKey: KEY }), readPricesAnew(queries)]),
  })
  const columns = waitingColumns({
    say: useStoreMoney(),
    thisYear: yearOf(useToday()),
    personId: usePerson().id,
    busyId: judge.isPending ? judge.variables.id : null,
    onJudge: (id, decision) => judge.mutate({ id, decision }),
    onWithdraw: setAsked,
  })
  const items = waiting.data?.items ?? []
  return (
    <Screen
      title="Sightings that wait"
      below="Doubted or disputed: none of these counts until a second person has seen it too."
      actions={
        <Link to="/people" className="btn">
          People
        </Link>
      }
    >
      <ErrorNotice error={waiting.error ?? (asked ? null : judge.error)} conflict="Your word was not taken" />
      {waiting.isPending && <LoadingRows what="the sightings that wait" />}
      {waiting.data && items.length === 0 && <Empty>Nothing waits: every sighting counts or was withdrawn.</Empty>}
      {items.length > 0 && (
        <>
          <RuledTable caption="Sightings that wait, newest first" columns={columns} rows={items} rowKey={({ id }) => id} />
          <MoreRows
            shown={items.length}
            total={waiting.data?.total ?? 0}
            page={PAGE}
            busy={waiting.isFetching}
            onMore={() => setShown(shown + PAGE)}
          />
        </>
      )}
      <TakenBack />
      <ReasonDialog
        key={asked?.id}
        sighting={asked}
        busy={judge.isPending}
        error={judge.error}
        onClose={() => {
          judge.reset()
          setAsked(null)
        }}
        onWithdraw={(reason) => asked && judge.mutate({ id: asked.id, decision: 'withdraw', reason })}
      />
    </Screen>
  )
}
