import { useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { WatchedRequirement } from '../../../core/pricing/watches/watch.ts'
import { getProduct } from '../client/products.ts'
import { SpecFilters } from '../catalog/spec-filters.tsx'
import { createWatch } from '../client/watches.ts'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { newId } from '../post/new-id.ts'
import { useInstall, useReader } from '../session/session.ts'
import { isUnder, type BuyAtLine } from './buy-at-words.ts'
import { useBuyAt } from './use-buy-at.ts'
import type { TermsDraft } from './watch-fields.tsx'
import { TermsForm } from './watch-form.tsx'
import type { WatchSearch } from './watch-search.ts'
import { sayRequirement } from './watch-words.ts'

const USUAL: TermsDraft = { way: 'price', limitMinor: null, byDay: null, conditions: ['new', 'clearance'], regionId: null, storeIds: [] }

/** A watch of what the address names. */
export function NewWatchForm({ search, onDone }: { search: WatchSearch; onDone: () => void }): ReactElement | null {
  if (search.product !== undefined) return <OfProduct productId={search.product} onDone={onDone} />
  return search.kind === undefined ? null : <OfRequirement search={search} kind={search.kind} onDone={onDone} />
}

/** The price is the one to buy at, where the record says one; else today's. */
function OfProduct({ productId, onDone }: { productId: string; onDone: () => void }): ReactElement {
  const [id] = useState(newId)
  const product = useQuery({ queryKey: ['products', productId], queryFn: () => getProduct(productId) })
  const known = useBuyAt(productId, USUAL, false)
  if (product.error) return <ErrorNotice error={product.error} onRetry={() => void product.refetch()} />
  if (!product.data || known.state === 'busy') return <LoadingRows rows={4} what="its price" />
  return (
    <TermsForm
      title={`Watch ${product.data.value.name}`}
      productId={productId}
      terms={{ ...USUAL, limitMinor: known.state === 'told' ? limitOf(known.line) : null }}
      send={(terms) => createWatch({ id, productId, requirement: null, ...terms })}
      button="Watch this"
      onDone={onDone}
    />
  )
}

/** Where it can be bought already, it is left to whoever waits for less. */
const limitOf = (line: BuyAtLine): number | null => (isUnder(line) ? null : (line.priceToBuyAtMinor ?? line.payTodayMinor))

function OfRequirement({
  search: { spec: asked = '', quote, letter },
  kind,
  onDone,
}: {
  search: WatchSearch
  kind: WatchedRequirement['kind']
  onDone: () => void
}): ReactElement {
  const [id] = useState(newId)
  const [spec, setSpec] = useState(asked)
  const [reader, install] = [useReader(), useInstall()]
  const requirement: WatchedRequirement = { kind, spec, fits: quote && letter ? { quoteId: quote, letter } : null }
  return (
    <TermsForm
      title={`Watch for ${sayRequirement(requirement, null, reader, install).replace('of a quote', 'of the quote').replace(/^Any/, 'any')}`}
      about={
        <>
          {requirement.fits && (
            <p className="note">Only products with which no check of the build says “does not fit”, as far as their makers state.</p>
          )}
          <SpecFilters kind={kind} spec={spec} onChange={setSpec} />
        </>
      }
      productId={null}
      terms={USUAL}
      send={(terms) => createWatch({ id, productId: null, requirement, ...terms })}
      button="Watch for it"
      onDone={onDone}
    />
  )
}
