import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { createStore } from '../client/stores.ts'
import { Screen } from '../parts/screen.tsx'
import { useInstall } from '../session/session.ts'
import { emptyStore } from './store-draft.ts'
import { StoreForm } from './store-form.tsx'

export function NewStoreScreen(): ReactElement {
  const install = useInstall()
  const navigate = useNavigate()
  const queries = useQueryClient()
  const [draft, setDraft] = useState(() => emptyStore(install))
  const create = useMutation({
    mutationFn: createStore,
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['stores'] })
      await navigate({ to: '/stores' })
    },
  })
  return (
    <Screen title="New store" above={<Link to="/stores">Stores</Link>} width="narrow">
      <StoreForm
        draft={draft}
        onChange={setDraft}
        error={create.error}
        busy={create.isPending}
        saveWords={draft.name.trim() ? `Add ${draft.name.trim()}` : 'Add the store'}
        onSave={(body) => create.mutate(body)}
      />
    </Screen>
  )
}
