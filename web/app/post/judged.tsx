import type { ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { doubtOf } from '../../../core/pricing/doubt.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { judgePrice } from '../../../core/pricing/standing.ts'
import { DipSign } from '../parts/signs.tsx'
import { useCurrency } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { PriceRule } from './price-rule.tsx'
import type { SightingDraft } from './sighting-draft.ts'

interface Props {
  draft: SightingDraft
  priceMinor: number
  regularMinor: number | null
  record: PriceRecord
  stores: Store[]
  currency: string
}

/** How good the price is, while it is typed, by the same rules as the server's; and whether it will wait for a second member. */
export function Judged({ draft, priceMinor, regularMinor, record, stores, currency }: Props): ReactElement {
  const { condition, storeId, seenOn } = draft
  const candidate = { productId: record.product.id, storeId, condition, priceMinor, printedRegularMinor: regularMinor, seenOn }
  const currencyOf = useStoreCurrency()
  const home = useCurrency()
  const seen = record.sightings.filter((sighting) => currencyOf(sighting.storeId) === currency)
  const doubt = doubtOf(candidate, seen, { currency, home, othersThatDay: [] })
  if (doubt)
    return (
      <Odd
        title="This one waits for a second member"
        words={`${doubt.words} Post it if the tag says so: it counts once another member confirms it.`}
      />
    )
  const standing = judgePrice({
    priceMinor,
    condition,
    printedRegularMinor: regularMinor,
    storeId,
    views: record.views,
    stores,
    currency,
    home,
    asOf: record.asOf,
  })
  return (
    <div className="good">
      <p className="say">
        {['good', 'lowest'].includes(standing.word) && <DipSign />}
        {standing.title}
      </p>
      <PriceRule priceMinor={priceMinor} standing={standing} currency={currency} />
      <p>{standing.words}</p>
    </div>
  )
}

const Odd = ({ title, words }: { title: string; words: string }): ReactElement => (
  <div className="good">
    <p className="say">{title}</p>
    <p>{words}</p>
  </div>
)
