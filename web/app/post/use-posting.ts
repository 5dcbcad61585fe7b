import { useState } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { sayMoney } from '../../../core/money.ts'
import { useCurrency, usePerson } from '../session/session.ts'
import { postOne } from './post-one.ts'
import type { Posted } from './posted-told.tsx'
import { shortName, type SightingDraft, type SightingReading } from './sighting-draft.ts'

/** Posts what the form holds, once, however often the button is pressed. */
export function usePosting(draft: SightingDraft, reading: SightingReading, store: Store | undefined, onDone: (posted: Posted) => void) {
  const person = usePerson()
  const currency = useCurrency()
  const [busy, setBusy] = useState(false)
  const [notKept, setNotKept] = useState(false)
  const post = async (): Promise<void> => {
    const { body } = reading
    const { product, replaces } = draft
    if (!body || !product || busy) return
    setBusy(true)
    setNotKept(false)
    try {
      const storeName = store?.name ?? 'the store'
      const kind = await postOne(person.id, body, { product, storeName, replaces })
      onDone({ kind, productId: product.id, what: `${sayMoney(body.priceMinor, currency)} for ${product.name} at ${shortName(storeName)}` })
    } catch {
      setNotKept(true)
    }
    setBusy(false)
  }
  return { post, busy, notKept }
}
