import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { civilDateAt, sayWeekday, yearOf } from '../../../core/dates.ts'
import { listInvitations, withdrawInvitation, type OpenInvitation } from '../client/people.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useInstall, useToday } from '../session/session.ts'

const KEY = ['people', 'invitations'] as const

/** Invitations that nobody has used yet; nothing where there are none. */
export function OpenInvitations(): ReactElement | null {
  const queries = useQueryClient()
  const open = useQuery({ queryKey: KEY, queryFn: listInvitations })
  const withdraw = useMutation({ mutationFn: withdrawInvitation, onSettled: () => queries.invalidateQueries({ queryKey: KEY }) })
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  const until = ({ expiresAt }: OpenInvitation): string => `until ${sayWeekday(civilDateAt(Date.parse(expiresAt), timeZone), thisYear)}`
  const columns: Array<Column<OpenInvitation>> = [
    { key: 'name', head: 'Invited', rowHead: true, phone: 'lead', cell: ({ name }) => name },
    { key: 'role', head: 'As', phone: 'figure', cell: ({ role }) => role },
    { key: 'until', head: 'Good', phone: 'below', cell: until },
    { key: 'maker', head: 'By', cell: ({ madeBy }) => madeBy },
    {
      key: 'act',
      head: 'State',
      end: true,
      phone: 'state',
      cell: ({ id, name }) => (
        <Button small busy={withdraw.isPending} aria-label={`Take back the invitation of ${name}`} onClick={() => withdraw.mutate(id)}>
          Take back
        </Button>
      ),
    },
  ]
  if (!open.error && !withdraw.error && !open.data?.length) return null
  return (
    <section className="form" aria-labelledby="invitations-head">
      <div className="sechead">
        <h2 id="invitations-head">Open invitations</h2>
        <p className="quiet">Made, and not used yet.</p>
      </div>
      <ErrorNotice error={open.error ?? withdraw.error} onRetry={() => void open.refetch()} retryWords="Read again" />
      {open.data && open.data.length > 0 && (
        <RuledTable caption="Open invitations" columns={columns} rows={open.data} rowKey={({ id }) => id} />
      )}
    </section>
  )
}
