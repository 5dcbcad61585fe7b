import { useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { addDays } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { LineOutlookView } from '../../../core/pricing/outlook-view.ts'
import type { WatchedRequirement } from '../../../core/pricing/watches/watch.ts'
import { getOutlook } from '../client/outlook.ts'
import { getProduct } from '../client/products.ts'
import { SpecFilters } from '../catalog/spec-filters.tsx'
import { createWatch } from '../client/watches.ts'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { newId } from '../post/new-id.ts'
import { useCurrency, useInstall, useReader, useToday } from '../session/session.ts'
import { USUAL_DAYS, type TermsDraft } from './watch-fields.tsx'
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
  const today = useToday()
  const currency = useCurrency()
  const [id] = useState(newId)
  const product = useQuery({ queryKey: ['products', productId], queryFn: () => getProduct(productId) })
  const until = addDays(today, USUAL_DAYS)
  const asked = { lines: [{ productId, quantity: 1, storeId: null }], storeIds: [], until, withTax: true }
  const outlook = useQuery({ queryKey: ['outlook', productId, until, 'with tax'], queryFn: () => getOutlook(asked), staleTime: 300_000 })
  if (product.error) return <ErrorNotice error={product.error} onRetry={() => void product.refetch()} />
  if (!product.data || outlook.isPending) return <LoadingRows rows={4} what="its price" />
  const line = outlook.data?.lines[0]
  return (
    <TermsForm
      title={`Watch ${product.data.value.name}`}
      terms={{ ...USUAL, limitMinor: limitOf(line) }}
      priceHelp={helpOf(line, currency)}
      send={(terms) => createWatch({ id, productId, requirement: null, ...terms })}
      button="Watch this"
      onDone={onDone}
    />
  )
}

/** A price that is there already is no price to wait for: then it is left to whoever waits for less. */
const isUnder = ({ payTodayMinor: today, priceToBuyAtMinor: buyAt }: LineOutlookView): boolean =>
  today !== null && buyAt !== null && today <= buyAt

function limitOf(line: LineOutlookView | undefined): number | null {
  if (!line || isUnder(line)) return null
  return line.priceToBuyAtMinor ?? line.payTodayMinor
}

function helpOf(line: LineOutlookView | undefined, currency: string): string | undefined {
  if (!line || line.payTodayMinor === null) return undefined
  const today = `Today it costs ${sayMoney(line.payTodayMinor, currency)} with tax at the least.`
  const tag =
    line.buyAtTagMinor === null || line.buyAtTagMinor === line.priceToBuyAtMinor
      ? ''
      : `, or ${sayMoney(line.buyAtTagMinor, currency)} on a tag that tax is added to`
  if (line.priceToBuyAtMinor === null) return today
  const buyAt = sayMoney(line.priceToBuyAtMinor, currency)
  return isUnder(line)
    ? `${today} That is under the price to buy at, ${buyAt} with tax${tag}: buy now, or write what you wait for.`
    : `${today} The price to buy at is ${buyAt} with tax${tag}.`
}

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
      terms={USUAL}
      send={(terms) => createWatch({ id, productId: null, requirement, ...terms })}
      button="Watch for it"
      onDone={onDone}
    />
  )
}
