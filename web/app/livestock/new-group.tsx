import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { createLivestockGroup } from '../client/livestock.ts'
import { Screen } from '../parts/screen.tsx'
import { EMPTY_GROUP } from './group-draft.ts'
import { GroupForm } from './group-form.tsx'

/** A group of this place's own. */
export function NewGroup(): ReactElement {
  const navigate = useNavigate()
  const queries = useQueryClient()
  const [draft, setDraft] = useState(EMPTY_GROUP)
  const save = useMutation({
    mutationFn: createLivestockGroup,
    onSuccess: async () => {
      await Promise.all([queries.invalidateQueries({ queryKey: ['livestock'] }), queries.invalidateQueries({ queryKey: ['session'] })])
      await navigate({ to: '/settings/livestock' })
    },
  })
  return (
    <Screen title="New livestock group" above={<Link to="/settings/livestock">Livestock groups</Link>} width="narrow">
      <GroupForm
        draft={draft}
        onChange={setDraft}
        error={save.error}
        busy={save.isPending}
        saveWords={`Add ${draft.name.trim() || 'the group'}`}
        onSave={(body) => save.mutate(body)}
      />
    </Screen>
  )
}
