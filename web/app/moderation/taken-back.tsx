import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { civilDateAt, yearOf } from '../../../core/dates.ts'
import { listUndos, reverseUndo, undoSightings, type Reporter, type Undo } from '../client/moderation.ts'
import { Button } from '../parts/button.tsx'
import { SelectField } from '../parts/choice-fields.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { sayDay } from '../parts/say-instant.ts'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { readPricesAnew } from '../prices/read-anew.ts'
import { useInstall, useToday } from '../session/session.ts'
import { sayStanding } from './say-standing.ts'
import { UndoDialog } from './undo-dialog.tsx'

/** All that one member reported or found gone, taken back at once; and what was, to be put back within thirty days. */
export function TakenBack(): ReactElement {
  const queries = useQueryClient()
  const [personId, setPersonId] = useState('')
  const [asked, setAsked] = useState<Reporter | null>(null)
  const read = useQuery({ queryKey: ['moderation', 'undos'], queryFn: listUndos, staleTime: 0 })
  const onSettled = () => Promise.all([queries.invalidateQueries({ queryKey: ['moderation'] }), readPricesAnew(queries)])
  const undo = useMutation({
    mutationFn: ({ id, sightings, foundGone }: Reporter) => undoSightings({ personId: id, sightings, foundGone }),
    onSuccess: () => {
      setAsked(null)
      setPersonId('')
    },
    onSettled,
  })
  const reverse = useMutation({ mutationFn: reverseUndo, onSettled })
  const reporters = read.data?.reporters ?? []
  const chosen = reporters.find(({ id }) => id === personId)
  return (
    <section className="form" aria-labelledby="undo-head">
      <div className="sechead">
        <h2 id="undo-head">All sightings of one member</h2>
        <p className="quiet">Taken back at once, with what they found gone; for 30 days it can be put back.</p>
      </div>
      <ErrorNotice error={read.error ?? reverse.error} onRetry={() => void read.refetch()} retryWords="Read again" />
      {read.isPending && <LoadingRows rows={1} what="who reported" />}
      {read.data && (
        <div className="form-row">
          <SelectField
            label="Member"
            value={personId}
            none="choose one"
            options={reporters.map((one) => ({ value: one.id, label: `${one.name}, ${sayStanding(one)}` }))}
            onChange={setPersonId}
          />
          <p className="acts">
            <Button off={!chosen} onClick={() => chosen && setAsked(chosen)}>
              {chosen ? `Take back ${sayStanding(chosen)}` : 'Take them back'}
            </Button>
            {!chosen && <span className="reason">Choose a member first.</span>}
          </p>
        </div>
      )}
      {read.data && read.data.undos.length > 0 && (
        <UndoTable undos={read.data.undos} busy={reverse.isPending} onReverse={(id) => reverse.mutate(id)} />
      )}
      <UndoDialog
        reporter={asked}
        busy={undo.isPending}
        error={undo.error}
        onClose={() => {
          undo.reset()
          setAsked(null)
        }}
        onUndo={() => asked && undo.mutate(asked)}
      />
    </section>
  )
}

function UndoTable({ undos, busy, onReverse }: { undos: Undo[]; busy: boolean; onReverse: (id: string) => void }): ReactElement {
  const { timeZone } = useInstall()
  const today = useToday()
  const thisYear = yearOf(today)
  const day = (instant: string): string => sayDay(instant, timeZone, thisYear)
  const columns: Array<Column<Undo>> = [
    { key: 'who', head: 'Member', rowHead: true, phone: 'lead', cell: ({ reporter }) => reporter.name },
    { key: 'count', head: 'Taken back', num: true, phone: 'figure', cell: sayStanding },
    { key: 'when', head: 'On', phone: 'below', cell: ({ at, undoneBy }) => `${day(at)}, by ${undoneBy}` },
    {
      key: 'act',
      head: 'State',
      end: true,
      phone: 'state',
      cell: ({ id, reporter, reversedAt, reversibleUntil }) => {
        if (reversedAt !== null) return `put back ${day(reversedAt)}`
        // By the day: the server decides by the minute.
        if (civilDateAt(Date.parse(reversibleUntil), timeZone) < today) return 'stays taken back'
        return (
          <Button small busy={busy} onClick={() => onReverse(id)}>
            {/* One run of words: between its parts a button has a gap. */}
            <span>
              Put back<span className="sr"> the sightings of {reporter.name}</span>, until {day(reversibleUntil)}
            </span>
          </Button>
        )
      },
    },
  ]
  return <RuledTable caption="Taken back" columns={columns} rows={undos} rowKey={({ id }) => id} />
}
