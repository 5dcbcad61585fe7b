import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { problemOf } from '../client/problem.ts'
import type { Versioned } from '../client/request.ts'
import { updateStore, type StoreBody } from '../client/stores.ts'
import { TickField } from '../parts/choice-fields.tsx'
import { MergedTold, StaleTold, type Clash } from '../parts/conflict-told.tsx'
import { mergeTyped } from '../parts/merge.ts'
import { Screen } from '../parts/screen.tsx'
import { useCurrency, useReader } from '../session/session.ts'
import { DeleteStore } from './delete-store.tsx'
import { draftOfStore, type StoreDraft } from './store-draft.ts'
import { StoreForm } from './store-form.tsx'

const LABELS: Record<keyof StoreDraft, string> = {
  name: 'Name', kind: 'Kind', town: 'Town', country: 'Country', subdivision: 'State or province', timeZone: 'Time zone', taxPercent: 'Tax', taxName: 'Name of the usual rate', rates: 'Other rates', pricesIncludeTax: 'Prices include the tax',
  deliveryTaxed: 'Delivery is taxed', deliveryRate: 'Rate of delivery', deliveryKind: 'Delivery', fee: 'Delivery fee', freeOver: 'Free from', oversize: 'Oversize surcharge', returnDays: 'Return days', warrantyMonths: 'Warranty', currency: 'Currency', own: 'Own store', note: 'Note', archived: 'Archived',
} // prettier-ignore

/** A list of rates is told by their names. */
const sayTyped = (value: StoreDraft[keyof StoreDraft]): string =>
  Array.isArray(value) ? value.map(({ name, percent }) => `${name} ${percent} %`).join(', ') || 'none' : String(value)

type Read = Versioned<Store>

/** Edits one store on the version it was read at; a newer one is brought in without losing what was typed. */
export function EditStore({ read, reload }: { read: Read; reload: () => Promise<Read | undefined> }): ReactElement {
  const currency = useCurrency()
  const reader = useReader()
  const navigate = useNavigate()
  const queries = useQueryClient()
  const [based, setBased] = useState(() => ({ etag: read.etag, draft: draftOfStore(read.value, currency, reader) }))
  const [draft, setDraft] = useState(based.draft)
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const save = useMutation({
    mutationFn: (body: StoreBody) => updateStore(read.value.id, body, based.etag),
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['stores'] })
      await navigate({ to: '/stores' })
    },
  })
  const compare = useMutation({
    mutationFn: reload,
    onSuccess: (newest) => {
      if (!newest) return
      const theirs = draftOfStore(newest.value, currency, reader)
      const { merged, clashes: both } = mergeTyped(based.draft, draft, theirs)
      setClashes(both.map((key) => ({ label: LABELS[key], mine: sayTyped(draft[key]), theirs: sayTyped(theirs[key]) })))
      setBased({ etag: newest.etag, draft: theirs })
      setDraft(merged)
      save.reset()
    },
  })
  const stale = save.error !== null && problemOf(save.error).status === 412
  return (
    <Screen title={based.draft.name} pageTitle={`${based.draft.name} · store`} above={<Link to="/stores">Stores</Link>} width="narrow">
      <TickField
        label="Archived"
        help="It stays in old quotes; nobody is sent there, and no sighting is taken for it."
        checked={draft.archived}
        onChange={(archived) => setDraft({ ...draft, archived })}
      />
      <StoreForm
        draft={draft}
        onChange={setDraft}
        error={save.error}
        busy={save.isPending}
        saveWords={`Save ${draft.name.trim() || 'the store'}`}
        conflict={
          stale ? (
            <StaleTold busy={compare.isPending} onCompare={() => compare.mutate()} />
          ) : clashes ? (
            <MergedTold clashes={clashes} />
          ) : undefined
        }
        onSave={(body) => save.mutate(body)}
      />
      <DeleteStore store={read.value} />
    </Screen>
  )
}
