import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { civilDateAt, sayWeekday, yearOf } from '../../../core/dates.ts'
import { listInvitations, withdrawInvitation, type OpenInvitation } from '../client/people.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { TakeBackDialog } from './take-back-dialog.tsx'
import { useInstall, useToday } from '../session/session.ts'

const KEY = ['people', 'invitations'] as const

/** Invitations that nobody has used yet; nothing where there are none. */
export function OpenInvitations(): ReactElement | null {
  const queries = useQueryClient()
  const open = useQuery({ queryKey: KEY, queryFn: listInvitations })
  const [asked, setAsked] = useState<OpenInvitation | null>(null)
  const withdraw = useMutation({
    mutationFn: withdrawInvitation,
    onSettled: () => queries.invalidateQueries({ queryKey: KEY }),
    onSuccess: () => setAsked(null),
  })
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
      cell: (invitation) => (
        <Button small aria-label={`Take back the invitation of ${invitation.name}`} onClick={() => setAsked(invitation)}>
          Take back
        </Button>
      ),
    },
  ]
  if (!open.error && !asked && !open.data?.length) return null
  return (
    <section className="form" aria-labelledby="invitations-head">
      <div className="sechead">
        <h2 id="invitations-head">Open invitations</h2>
        <p className="quiet">Made, and not used yet.</p>
      </div>
      <ErrorNotice error={open.error} onRetry={() => void open.refetch()} retryWords="Read again" />
      {open.data && open.data.length > 0 && (
        <RuledTable caption="Open invitations" columns={columns} rows={open.data} rowKey={({ id }) => id} />
      )}
      <TakeBackDialog
        name={asked?.name ?? null}
        busy={withdraw.isPending}
        error={withdraw.error}
        onClose={() => {
          setAsked(null)
          withdraw.reset()
        }}
        onTakeBack={() => asked && withdraw.mutate(asked.id)}
      />
    </section>
  )
}
