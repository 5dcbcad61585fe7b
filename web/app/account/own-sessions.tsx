import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { endOtherSessions, endOwnSession, listOwnSessions, type OwnSession } from '../client/own-sessions.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { sayInstant } from '../parts/say-instant.ts'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import './account.css'
import { useInstall, useToday } from '../session/session.ts'

const KEY = ['own-sessions'] as const
const OTHERS = 'others'

const deviceWords = ({ device, current }: OwnSession): string =>
  `${device.slice(0, 1).toUpperCase()}${device.slice(1)}${current ? ', this one' : ''}`

/** On a phone without its heading above it. */
const LastUsed = ({ at }: { at: string }): ReactElement => (
  <>
    <span className="used-word">last used </span>
    <time>{at}</time>
  </>
)

/** Where one is signed in; a lost phone is signed out from here. */
export function OwnSessions(): ReactElement {
  const queries = useQueryClient()
  const own = useQuery({ queryKey: KEY, queryFn: listOwnSessions, staleTime: 0 })
  const end = useMutation({
    mutationFn: (which: string) => (which === OTHERS ? endOtherSessions() : endOwnSession(which)),
    onSettled: () => queries.invalidateQueries({ queryKey: KEY }),
  })
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const at = (instant: string): string => sayInstant(instant, timeZone, thisYear)
  const others = own.data?.filter(({ current }) => !current).length ?? 0
  const columns: Array<Column<OwnSession>> = [
    { key: 'device', head: 'Device', rowHead: true, phone: 'lead', cell: deviceWords },
    { key: 'begun', head: 'Signed in', cell: ({ begunAt }) => at(begunAt) },
    { key: 'used', head: 'Last used', phone: 'below', cell: ({ lastUsedAt }) => <LastUsed at={at(lastUsedAt)} /> },
    {
      key: 'act',
      head: 'State',
      end: true,
      phone: 'state',
      cell: (session) =>
        session.current ? (
          'in use'
        ) : (
          <Button
            small
            busy={end.isPending}
            aria-label={`Sign out the ${session.device} last used ${at(session.lastUsedAt)}`}
            onClick={() => end.mutate(session.id)}
          >
            Sign out
          </Button>
        ),
    },
  ]
  return (
    <section className="form" aria-labelledby="sessions-head">
      <div className="sechead">
        <h2 id="sessions-head">Where you are signed in</h2>
        <p className="quiet">A device that is not yours: sign it out, then change your password.</p>
      </div>
      <ErrorNotice error={own.error ?? end.error} onRetry={() => void own.refetch()} retryWords="Read again" />
      {own.isPending && <LoadingRows rows={2} what="where you are signed in" />}
      {own.data && <RuledTable caption="Where you are signed in" columns={columns} rows={own.data} rowKey={({ id }) => id} />}
      {others > 1 && (
        <p className="acts">
          <Button busy={end.isPending} onClick={() => end.mutate(OTHERS)}>
            Sign out everywhere else
          </Button>
        </p>
      )}
    </section>
  )
}
