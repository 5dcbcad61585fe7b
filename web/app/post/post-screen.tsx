import { useQuery } from '@tanstack/react-query'
import { Link, useSearch } from '@tanstack/react-router'
import { useEffect, useState, type ReactElement } from 'react'
import { getProduct } from '../client/products.ts'
import { preloadProductPicker } from '../parts/product-picker.tsx'
import { Screen } from '../parts/screen.tsx'
import { BackSign } from '../parts/signs.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { usePerson, useToday } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { ChooseProduct } from './choose-product.tsx'
import { PostForm } from './post-form.tsx'
import type { Posted } from './posted.ts'
import { PostedTold } from './posted-told.tsx'
import { readRecent } from './recent.ts'
import { draftOfUnsent, emptySighting, type SightingDraft } from './sighting-draft.ts'
import { UnsentList } from './unsent-list.tsx'
import { usePosted } from './use-posted.ts'
import './post.css'

/** Phone first: which product, then its price, then one button. */
export function PostScreen(): ReactElement {
  const { product: asked } = useSearch({ from: '/post' })
  useEffect(preloadProductPicker, [])
  const person = usePerson()
  const today = useToday()
  const currencyOf = useStoreCurrency()
  const [draft, setDraft] = useState<SightingDraft>(() => emptySighting(today, readRecent(person.id).storeId ?? ''))
  const [posted, setPosted] = usePosted(person.id)
  const [used, setUsed] = useState(false)
  const wanted = useQuery({
    queryKey: ['products', 'one', asked],
    queryFn: () => getProduct(asked ?? ''),
    enabled: asked !== undefined && draft.product === null && !used,
  })
  if (asked !== undefined && draft.product === null && !used && wanted.data) {
    const { id, name, kind } = wanted.data.value
    setDraft({ ...draft, product: { id, name, kind } })
  }
  const opening = asked !== undefined && !used && draft.product === null && wanted.isPending
  const start = (next: SightingDraft): void => {
    setUsed(true)
    setPosted(null)
    setDraft(next)
  }
  const done = (outcome: Posted): void => {
    setUsed(true)
    setPosted(outcome)
    setDraft(emptySighting(today, draft.storeId))
  }
  return (
    <Screen
      title="Post a sighting"
      width="narrow"
      above={
        <Link to="/prices" search={{}} className="back-link">
          <BackSign /> Prices
        </Link>
      }
    >
      {posted && <PostedTold posted={posted} />}
      {!used && wanted.error && <ErrorNotice error={wanted.error} onRetry={() => void wanted.refetch()} />}
      {opening && <LoadingRows rows={2} what="the product" />}
      {!opening && draft.product === null && (
        <ChooseProduct personId={person.id} onPick={({ id, name, kind }) => start({ ...draft, product: { id, name, kind } })} />
      )}
      {draft.product !== null && (
        <PostForm draft={draft} onChange={setDraft} onChangeProduct={() => start({ ...draft, product: null })} onDone={done} />
      )}
      <UnsentList
        personId={person.id}
        onMend={(item) => start(draftOfUnsent(item, currencyOf(item.sighting.storeId)))}
        onRemove={(id) => posted?.id === id && setPosted(null)}
      />
    </Screen>
  )
}
