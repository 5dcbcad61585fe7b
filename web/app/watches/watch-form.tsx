import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement, type ReactNode } from 'react'
import type { WatchTerms, WatchView } from '../../../core/pricing/watches/watch.ts'
import { faultsOf } from '../client/problem.ts'
import { updateWatch } from '../client/watches.ts'
import { Button } from '../parts/button.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useBuyAt } from './use-buy-at.ts'
import { termsOf, WatchFields, type TermsDraft } from './watch-fields.tsx'
import { useTitle } from './watch-table.tsx'

const SHOWN = ['limitMinor', 'byDay', 'conditions', 'regionId', 'storeIds', 'requirement.spec']

interface FormProps {
  title: string
  about?: ReactNode
  terms: TermsDraft
  send: (terms: WatchTerms) => Promise<unknown>
  button: string
  /** Null: of any of a kind. */
  productId: string | null
  onDone: () => void
}

/** The terms of one watch, new or not. */
export function TermsForm({ title, about, productId, terms, send, button, onDone }: FormProps): ReactElement {
  const queries = useQueryClient()
  const [draft, setDraft] = useState(terms)
  const buyAt = useBuyAt(productId, draft, draft.way === 'buy_at')
  const save = useMutation({
    mutationFn: () => send(termsOf(draft)),
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['watches'] })
      onDone()
    },
  })
  return (
    <form
      className="form watch-form"
      noValidate
      aria-labelledby="watch-form-head"
      onSubmit={(event) => {
        event.preventDefault()
        if (!save.isPending) save.mutate()
      }}
    >
      <h2 id="watch-form-head">{title}</h2>
      {about}
      <WatchFields
        draft={draft}
        set={(part) => setDraft((before) => ({ ...before, ...part }))}
        faults={faultsOf(save.error)}
        buyAt={buyAt}
      />
      <ErrorNotice error={save.error} shown={SHOWN} conflict="No more watches fit" />
      <p className="acts">
        <Button onClick={onDone}>Leave it</Button>
        <Button look="main" type="submit" busy={save.isPending}>
          {button}
        </Button>
      </p>
    </form>
  )
}

/** Changes one that runs. */
export function WatchForm({ watch, onDone }: { watch: WatchView; onDone: () => void }): ReactElement {
  const title = useTitle()(watch)
  const { limitMinor, byDay, conditions, regionId, storeIds } = watch
  return (
    <TermsForm
      title={`Change the watch of ${title}`}
      productId={watch.productId}
      terms={{ way: limitMinor === null ? 'buy_at' : 'price', limitMinor, byDay, conditions, regionId, storeIds }}
      send={(terms) => updateWatch(watch, terms)}
      button="Save the watch"
      onDone={onDone}
    />
  )
}
