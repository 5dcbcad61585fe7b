import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { deleteStore } from '../client/stores.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { usePerson } from '../session/session.ts'

/** For a store entered by a slip. One that sightings or quotes name is archived instead, and the server says so. */
export function DeleteStore({ store }: { store: Store }): ReactElement | null {
  const [asked, setAsked] = useState(false)
  const navigate = useNavigate()
  const queries = useQueryClient()
  const remove = useMutation({
    mutationFn: () => deleteStore(store.id),
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['stores'] })
      await navigate({ to: '/stores' })
    },
  })
  const close = (): void => {
    setAsked(false)
    remove.reset()
  }
  if (usePerson().role !== 'manager') return null
  return (
    <>
      <p className="acts">
        <Button look="plain" onClick={() => setAsked(true)}>
          Delete this store
        </Button>
      </p>
      <Dialog
        open={asked}
        title={`Delete ${store.name}?`}
        onClose={close}
        actions={
          <>
            <Button onClick={close}>Keep it</Button>
            <Button look="main" busy={remove.isPending} onClick={() => remove.mutate()}>
              Delete {store.name}
            </Button>
          </>
        }
      >
        <p>This cannot be undone. A store that a sighting or a quote names stays: archive it instead.</p>
        <ErrorNotice error={remove.error} />
      </Dialog>
    </>
  )
}
