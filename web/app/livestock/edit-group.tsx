import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { updateLivestockGroup, type GroupBody, type StoredGroup } from '../client/livestock.ts'
import { problemOf } from '../client/problem.ts'
import type { Versioned } from '../client/request.ts'
import { MergedTold, StaleTold, type Clash } from '../parts/conflict-told.tsx'
import { mergeTyped } from '../parts/merge.ts'
import { Screen } from '../parts/screen.tsx'
import { useReader } from '../session/session.ts'
import { CameWith } from './came-with.tsx'
import { draftOfGroup, type GroupDraft } from './group-draft.ts'
import { GroupForm } from './group-form.tsx'

type Read = Versioned<StoredGroup>

/** Figures and texts in one row of fields, so that two people's changes are compared field by field. */
const flat = ({ figures, ...draft }: GroupDraft) => ({ ...draft, ...figures })
type Flat = ReturnType<typeof flat>
function deep(one: Flat): GroupDraft {
  const { name, examples, lidNeeded, water, source, ...figures } = one
  return { name, examples, lidNeeded, water, source, figures }
}

const LABELS: Record<keyof Flat, string> = {
  name: 'Name', examples: 'Examples', lidNeeded: 'Needs a lid', water: 'Water', source: 'Source', lowestC: 'Lowest safe', targetC: 'Target', highestC: 'Highest comfortable',
  dangerC: 'Danger mark', flowFloorPerHour: 'Least turnover', flowCeilingPerHour: 'Most turnover', smallestVolumeL: 'Smallest tank', feedGramsPerDay: 'Feed a day',
} // prettier-ignore

/** Edits one group on the version it was read at; a newer one is brought in without losing what was typed. */
export function EditGroup({ read, reload }: { read: Read; reload: () => Promise<Read | undefined> }): ReactElement {
  const reader = useReader()
  const navigate = useNavigate()
  const queries = useQueryClient()
  const [based, setBased] = useState(() => ({ etag: read.etag, stored: read.value, draft: draftOfGroup(read.value, reader) }))
  const [draft, setDraft] = useState(based.draft)
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const save = useMutation({
    mutationFn: (body: GroupBody) => updateLivestockGroup(read.value.id, body, based.etag),
    onSuccess: async () => {
      await Promise.all([queries.invalidateQueries({ queryKey: ['livestock'] }), queries.invalidateQueries({ queryKey: ['session'] })])
      await navigate({ to: '/settings/livestock' })
    },
  })
  const compare = useMutation({
    mutationFn: reload,
    onSuccess: (newest) => {
      if (!newest) return
      const theirs = draftOfGroup(newest.value, reader)
      const { merged, clashes: both } = mergeTyped(flat(based.draft), flat(draft), flat(theirs))
      setClashes(both.map((key) => ({ label: LABELS[key], mine: String(flat(draft)[key]), theirs: String(flat(theirs)[key]) })))
      setBased({ etag: newest.etag, stored: newest.value, draft: theirs })
      setDraft(deep(merged))
      save.reset()
    },
  })
  const stale = save.error !== null && problemOf(save.error).status === 412
  return (
    <Screen
      title={based.stored.name}
      pageTitle={`${based.stored.name} · livestock group`}
      above={<Link to="/settings/livestock">Livestock groups</Link>}
      below={
        based.stored.standing === undefined
          ? 'As it came. Once it is saved with other figures, findings say that they were edited here.'
          : based.stored.standing === 'edited'
            ? 'Edited here.'
            : 'Our own group.'
      }
      width="narrow"
    >
      <CameWith stored={based.stored} busy={save.isPending} onBack={(body) => save.mutate(body)} />
      <GroupForm
        draft={draft}
        onChange={setDraft}
        stored={based.stored}
        error={save.error}
        busy={save.isPending}
        saveWords={`Save ${draft.name.trim() || 'the group'}`}
        conflict={
          stale ? (
            <StaleTold busy={compare.isPending} onCompare={() => compare.mutate()} />
          ) : clashes ? (
            <MergedTold clashes={clashes} />
          ) : undefined
        }
        onSave={(body) => save.mutate(body)}
      />
    </Screen>
  )
}
