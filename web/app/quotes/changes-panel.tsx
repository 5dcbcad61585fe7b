import { useQuery } from '@tanstack/react-query'
import { useEffect, useRef, useState, type ReactElement } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { getRevision } from '../client/quotes.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useDesk } from './desk-context.ts'
import { useByDates, type ExpectedBuild } from './use-by-dates.ts'
import { useSameAsIssued } from './use-issued-draft.ts'
import { DRAFT, openingVersions } from './opening-versions.ts'
import { quoteChanges, type ChangeGroup, type Compared } from './quote-changes.ts'

/** Two versions side by side, or one and the draft at today's prices: what is otherwise, in words. */
export function ChangesPanel(): ReactElement {
  const { state, locked } = useDesk()
  const { view } = state
  const [picked, pick] = useState<{ from: string; to: string } | null>(null)
  const usual = openingVersions(view.revisions.length, locked, useSameAsIssued())
  const { from, to } = picked ?? usual
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const year = yearOf(view.asOf)
  const versions = view.revisions.map(({ revision, issuedOn }) => ({
    value: String(revision),
    label: `Version ${revision}, ${sayDate(issuedOn, year)}`,
  }))
  return (
    <section className="changes" aria-labelledby="changes-heading">
      <h3 id="changes-heading" ref={heading} tabIndex={-1}>
        What changed
      </h3>
      <div className="form-row">
        <SelectField label="From" value={from} options={versions} onChange={(value) => value !== '' && pick({ from: value, to })} />
        <SelectField
          label="To"
          value={to}
          options={locked ? versions : [...versions, { value: DRAFT, label: 'The draft, at today’s prices' }]}
          onChange={(value) => value !== '' && pick({ from, to: value })}
        />
      </div>
      <Changes from={from} to={to} />
    </section>
  )
}

function useCompared(which: string): { compared: Compared | null; error: unknown; retry: () => void } {
  const { state, inputs, builds } = useDesk()
  const expected = useByDates(builds)
  const { id } = state.view
  const revision = useQuery({
    queryKey: ['revision', id, Number(which)],
    queryFn: () => getRevision(id, Number(which)),
    staleTime: Infinity,
    enabled: which !== DRAFT,
  })
  if (which === DRAFT)
    return { compared: { inputs, builds: builds.map((build) => withExpected(build, expected)) }, error: null, retry: () => undefined }
  return { compared: revision.data ?? null, error: revision.error, retry: () => void revision.refetch() }
}

/** What is still being asked, or could not be, says nothing. */
function withExpected(build: WorkedBuild, expected: ReadonlyMap<string, ExpectedBuild>): WorkedBuild {
  const told = expected.get(build.id)
  return told && !told.busy && !told.unknown ? { ...build, byDate: told.byDate } : build
}

function Changes({ from, to }: { from: string; to: string }): ReactElement {
  const [before, after] = [useCompared(from), useCompared(to)]
  const failed = before.error ? before : after
  if (failed.error) return <ErrorNotice error={failed.error} onRetry={failed.retry} />
  if (!before.compared || !after.compared) return <LoadingRows what="the versions" rows={4} />
  const groups = quoteChanges(before.compared, after.compared)
  if (groups.length === 0) return <p>Nothing is otherwise: the same lines, prices, totals, expected totals and verdicts.</p>
  return (
    <div className="table-box">
      <table className="ruled">
        <caption className="sr">What is otherwise</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Was</th>
            <th scope="col">Now</th>
          </tr>
        </thead>
        {groups.map((group) => (
          <GroupRows key={group.title} group={group} />
        ))}
      </table>
    </div>
  )
}

const PART_WORDS = {
  terms: '',
  build: '',
  line: 'line',
  price: 'price each, today',
  total: '',
  expected: 'following the advice',
  check: 'check',
} as const

function GroupRows({ group }: { group: ChangeGroup }): ReactElement {
  return (
    <tbody>
      <tr className="group">
        <th scope="rowgroup" colSpan={3}>
          {group.title}
        </th>
      </tr>
      {group.changes.map(({ part, what, was, now }) => (
        <tr key={`${part} ${what}`} data-part={part}>
          <th scope="row">
            {what}
            {PART_WORDS[part] && <span className="quiet"> {PART_WORDS[part]}</span>}
          </th>
          <td>{was}</td>
          <td>{now}</td>
        </tr>
      ))}
    </tbody>
  )
}
