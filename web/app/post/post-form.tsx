import { useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { getRecord } from '../client/products.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { useCurrency, usePerson, useToday } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { storesQuery } from '../stores/stores-query.ts'
import { Judged } from './judged.tsx'
import { PostDetails } from './post-details.tsx'
import { PostFoot } from './post-foot.tsx'
import type { Posted } from './posted.ts'
import { PriceEntry } from './price-entry.tsx'
import { SameAgain } from './same-again-told.tsx'
import { sameAgain } from './same-again.ts'
import { postWords, readSighting, type SightingDraft } from './sighting-draft.ts'
import { usePosting } from './use-posting.ts'
import { useUnsent } from './use-unsent.ts'
import { WhatRow } from './what-row.tsx'

interface Props {
  draft: SightingDraft
  onChange: (draft: SightingDraft) => void
  onChangeProduct: () => void
  onDone: (posted: Posted) => void
}

/** A fault may be behind the button at the foot, or folded away: the first one is gone to once it is drawn. */
function toFirstFault(form: HTMLFormElement): void {
  requestAnimationFrame(() => form.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus())
}

/** Store, price, how good it is, kind of price, one button. */
export function PostForm({ draft, onChange, onChangeProduct, onDone }: Props): ReactElement {
  const currency = useStoreCurrency()(draft.storeId)
  const home = useCurrency()
  const today = useToday()
  const [tried, setTried] = useState(false)
  const stores = useQuery(storesQuery)
  const productId = draft.product?.id ?? ''
  const record = useQuery({ queryKey: ['record', productId], queryFn: () => getRecord(productId) })
  const open = (stores.data ?? []).filter((store) => !store.archived)
  const store = open.find(({ id }) => id === draft.storeId)
  const reading = readSighting(draft, currency, today)
  const { priceMinor } = reading
  const faults = tried ? reading.faults : {}
  const { post, busy, notKept } = usePosting(onDone)
  const person = usePerson()
  const again = sameAgain(reading.body, record.data?.sightings ?? [], useUnsent(person.id), person.id)
  const set = (part: Partial<SightingDraft>): void => onChange({ ...draft, ...part })
  return (
    <form
      className="post-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (!reading.body) toFirstFault(event.currentTarget)
        const { product, replaces } = draft
        if (reading.body && product) void post(reading.body, { product, storeName: store?.name ?? 'the store', replaces })
      }}
    >
      <WhatRow product={draft.product} onChange={onChangeProduct} />
      <SelectField
        label="Store"
        none="Choose the store you stand in"
        value={draft.storeId}
        onChange={(storeId) => set({ storeId })}
        options={open.map(({ id, name }) => ({ value: id, label: name }))}
        fault={faults.store}
      />
      <PriceEntry draft={draft} reading={reading} store={store} fault={faults.price} onChange={(price) => set({ price })} />
      <div aria-live="polite">
        {again !== null && <SameAgain again={again} today={draft.seenOn === today} />}
        {priceMinor !== null && record.data && store && (
          <Judged
            draft={draft}
            priceMinor={priceMinor}
            regularMinor={reading.regularMinor}
            record={record.data}
            stores={open.filter((one) => (one.currency ?? null) === (store.currency ?? null))}
            currency={currency}
          />
        )}
        {priceMinor !== null && record.isError && <p className="quiet">The record was not reached; it is judged when it is posted.</p>}
      </div>
      <PostDetails draft={draft} set={set} faults={faults} today={today} />
      <PostFoot words={postWords(reading, store, currency, home)} busy={busy !== null} notKept={notKept} />
    </form>
  )
}
