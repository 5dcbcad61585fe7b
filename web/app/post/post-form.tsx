import { useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { currencySign, sayMoney } from '../../../core/money.ts'
import { getRecord } from '../client/products.ts'
import { problemOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { moneyKeyboard } from '../parts/figure.ts'
import { NoSignalSign } from '../parts/signs.tsx'
import { useCurrency, usePerson, useToday } from '../session/session.ts'
import { storesQuery } from '../stores/stores-query.ts'
import { Judged } from './judged.tsx'
import { PostDetails } from './post-details.tsx'
import { postOne } from './post-one.ts'
import type { Posted } from './posted-told.tsx'
import { postWords, readSighting, shortName, type SightingDraft } from './sighting-draft.ts'
import { useOnline } from './use-online.ts'

interface Props {
  draft: SightingDraft
  onChange: (draft: SightingDraft) => void
  onChangeProduct: () => void
  onDone: (posted: Posted) => void
}

export function PostForm({ draft, onChange, onChangeProduct, onDone }: Props): ReactElement {
  const person = usePerson()
  const currency = useCurrency()
  const today = useToday()
  const online = useOnline()
  const [tried, setTried] = useState(false)
  const [busy, setBusy] = useState(false)
  const [broken, setBroken] = useState<string | null>(null)
  const stores = useQuery(storesQuery)
  const productId = draft.product?.id ?? ''
  const record = useQuery({ queryKey: ['record', productId], queryFn: () => getRecord(productId) })
  const open = (stores.data ?? []).filter((store) => !store.archived)
  const store = open.find(({ id }) => id === draft.storeId)
  const reading = readSighting(draft, currency, today)
  const faults = tried ? reading.faults : {}
  const set = (part: Partial<SightingDraft>): void => onChange({ ...draft, ...part })
  const post = async (): Promise<void> => {
    setTried(true)
    const { body } = reading
    if (!body || !draft.product || busy) return
    setBusy(true)
    try {
      const kind = await postOne(person.id, body, { product: draft.product, storeName: store?.name ?? 'a store', replaces: draft.replaces })
      onDone({
        kind,
        productId,
        what: `${sayMoney(body.priceMinor, currency)} for ${draft.product.name} at ${shortName(store?.name ?? 'the store')}`,
      })
    } catch (error) {
      setBroken(problemOf(error).title)
    } finally {
      setBusy(false)
    }
  }
  return (
    <form
      className="post-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void post()
      }}
    >
      <div className="what">
        <div>
          <p className="pn">{draft.product?.name}</p>
          {draft.product?.kind && <p className="note">{KIND_NAMES[draft.product.kind]}</p>}
        </div>
        <Button look="plain" onClick={onChangeProduct}>
          Change<span className="sr"> the product</span>
        </Button>
      </div>
      <SelectField
        label="Store"
        none="Choose the store you stand in"
        value={draft.storeId}
        onChange={(storeId) => set({ storeId })}
        options={open.map(({ id, name }) => ({ value: id, label: name }))}
        fault={faults.store}
      />
      <TextField
        className="price"
        label="Price"
        value={draft.price}
        onChange={(price) => set({ price })}
        before={currencySign(currency).trim()}
        unit={store?.pricesIncludeTax ? 'each, tax in it' : 'each, before tax'}
        inputMode={moneyKeyboard(currency)}
        enterKeyHint="done"
        fault={faults.price ?? (draft.price !== '' && reading.priceMinor === null ? reading.faults.price : undefined)}
        autoFocus
      />
      <div aria-live="polite">
        {reading.priceMinor !== null && record.data && draft.storeId !== '' && (
          <Judged
            draft={draft}
            priceMinor={reading.priceMinor}
            regularMinor={reading.regularMinor}
            record={record.data}
            stores={open}
            currency={currency}
          />
        )}
        {reading.priceMinor !== null && record.isError && (
          <p className="quiet">The record was not reached; it is judged when it is posted.</p>
        )}
      </div>
      <PostDetails draft={draft} set={set} faults={faults} today={today} />
      <div className="foot">
        {broken && (
          <p className="fault" role="alert">
            Not kept: this browser refuses to store it. {broken}
          </p>
        )}
        {!online && (
          <p className="off">
            <NoSignalSign />
            No signal. Kept on this phone; posts once, by itself.
          </p>
        )}
        <Button look="main" type="submit" busy={busy}>
          {postWords(reading, store, currency)}
        </Button>
      </div>
    </form>
  )
}
