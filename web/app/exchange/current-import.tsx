import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef, type ReactElement } from 'react'
import type { ImportFault } from '../../../core/exchange/data-set.ts'
import type { ImportView } from '../../../core/exchange/import-view.ts'
import { cancelImport, faultsAddress, getImport, writeImport } from '../client/imports.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { countWords, endWords, fileWords, progressWords, shareDone } from './import-words.ts'

/** Between two looks at an import under way: often enough to be seen moving. */
const LOOK_MS = 700

/** What many rows have in common is told once. */
const messageCell = ({ message, rows }: ImportFault): string =>
  rows === undefined ? message : `${message} The same in ${rows.toLocaleString('en-US')} rows, this one the first.`

const COLUMNS: Array<Column<ImportFault>> = [
  { key: 'row', head: 'Row', num: true, phone: 'figure', cell: ({ row, rows }) => (rows === undefined ? row : `${row} …`) },
  { key: 'column', head: 'Column', rowHead: true, phone: 'lead', cell: ({ column }) => column ?? 'whole row' },
  { key: 'message', head: 'What is wrong, and how to mend it', phone: 'below', cell: messageCell },
]

interface Props {
  id: string
  /** True where it was started on this screen: whoever waits for it is led to what came of it. */
  started: boolean
}

/** One import: how far it is, then what came of it and what can be done. */
export function CurrentImport({ id, started }: Props): ReactElement {
  const heading = useRef<HTMLHeadingElement>(null)
  const awaited = useRef(started)
  const queries = useQueryClient()
  const read = useQuery({
    queryKey: ['imports', id],
    queryFn: () => getImport(id),
    refetchInterval: ({ state }) => (state.data?.endedAt == null ? LOOK_MS : false),
  })
  const keep = async (view: ImportView): Promise<void> => {
    queries.setQueryData(['imports', id], view)
    await queries.invalidateQueries({ queryKey: ['imports'] })
  }
  // The button that was pressed leaves with what it did.
  const onMutate = (): void => void (awaited.current = true)
  const write = useMutation({ mutationFn: () => writeImport(id), onMutate, onSuccess: keep })
  const cancel = useMutation({ mutationFn: () => cancelImport(id), onMutate, onSuccess: keep })
  const view = read.data
  const endedAt = view?.endedAt ?? null
  useEffect(() => {
    if (endedAt !== null)
      void queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'imports' || queryKey.length === 1 })
  }, [endedAt, queries])
  useEffect(() => {
    if (endedAt === null || !awaited.current) return
    awaited.current = false
    heading.current?.focus({ preventScroll: true })
    heading.current?.scrollIntoView({ block: 'start' })
  }, [endedAt])
  return (
    <section className="form" aria-labelledby="current-head">
      <div className="sechead">
        <h2 id="current-head" ref={heading} tabIndex={-1}>
          {view ? fileWords(view) : 'This import'}
        </h2>
        {view?.startedBy && <p className="quiet">by {view.startedBy}</p>}
      </div>
      <ErrorNotice error={read.error ?? write.error ?? cancel.error} onRetry={() => void read.refetch()} retryWords="Look again" />
      {read.isPending && <LoadingRows rows={3} what="the import" />}
      {view && endedAt === null && <UnderWay view={view} busy={cancel.isPending} onCancel={() => cancel.mutate()} />}
      <div aria-live="polite">{view && endedAt !== null && <Outcome view={view} />}</div>
      {view && endedAt !== null && (
        <Ended view={view} busy={write.isPending || cancel.isPending} onWrite={() => write.mutate()} onDiscard={() => cancel.mutate()} />
      )}
    </section>
  )
}

function UnderWay({ view, busy, onCancel }: { view: ImportView; busy: boolean; onCancel: () => void }): ReactElement {
  const share = shareDone(view)
  const words = progressWords(view)
  return (
    <>
      <p className="import-progress">
        <progress aria-label={words} {...(share === null ? {} : { value: share })} max={1} />
        <span>{words}</span>
      </p>
      <p className="quiet">It goes on when you leave this page, and after the server was stopped. Nothing of it is seen before its end.</p>
      <p className="acts">
        <Button busy={busy || view.cancelAsked} onClick={onCancel}>
          Cancel this import
        </Button>
      </p>
    </>
  )
}

/** Stands in a line that is read out: it is there before there is anything to say. */
function Outcome({ view }: { view: ImportView }): ReactElement {
  const { outcome } = view
  return (
    <Told kind={outcome === null || outcome.faults > 0 ? 'stop' : 'note'} title={endWords(view)}>
      {outcome && !outcome.applied && (
        <p className="counts">
          {countWords(view).map((words) => (
            <span key={words}>{words}</span>
          ))}
        </p>
      )}
    </Told>
  )
}

interface EndedProps {
  view: ImportView
  busy: boolean
  onWrite: () => void
  onDiscard: () => void
}

function Ended({ view, busy, onWrite, onDiscard }: EndedProps): ReactElement {
  const { outcome, faults } = view
  const told = faults.reduce((sum, { rows }) => sum + (rows ?? 1), 0)
  const due = outcome === null ? 0 : outcome.creates + outcome.updates
  return (
    <>
      {outcome?.ready && due === 0 && <p>All of it is here already, just as the file says. There is nothing to write.</p>}
      {outcome?.ready && (
        <p className="acts">
          {due > 0 && (
            <Button look="main" busy={busy} onClick={onWrite}>
              Write {outcome.creates.toLocaleString('en-US')} new and {outcome.updates.toLocaleString('en-US')} changed
            </Button>
          )}
          <Button busy={busy} onClick={onDiscard}>
            Throw these rows away
          </Button>
          {due > 0 && <span className="reason">All of it at once, or nothing. Kept for a day.</span>}
        </p>
      )}
      {faults.length > 0 && (
        <>
          <p>
            <a href={faultsAddress(view.id)} download>
              All faults as a file
            </a>
          </p>
          <RuledTable
            caption="Faults by row"
            columns={COLUMNS}
            rows={faults}
            rowKey={({ row, column, message }) => `${row} ${column} ${message}`}
          />
          {(outcome?.faults ?? 0) > told && (
            <p className="quiet">The first {told.toLocaleString('en-US')} are listed. The file has the others.</p>
          )}
        </>
      )}
    </>
  )
}
