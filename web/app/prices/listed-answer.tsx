import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { atLeast } from '../../../core/people/roles.ts'
import { OwnStoreMissing } from '../price-list/own-store-told.tsx'
import { useCurrency, usePerson } from '../session/session.ts'
import { sayListed } from './listed-words.ts'
import { ProductFigure } from './product-figure.tsx'

/** Where the place is a store: what its own list asks for the product, and why nothing is expected of that. */
export function ListedAnswer({ record: { product, listed, asOf } }: { record: PriceRecord }): ReactElement {
  const currency = useCurrency()
  const advises = atLeast(usePerson().role, 'advisor')
  const { title, words } = listed
    ? sayListed(listed, currency, yearOf(asOf))
    : { title: 'Our price list has no price of it', words: 'No price of it is in force today.' }
  return (
    <>
      <OwnStoreMissing />
      <div className="answer-cols">
        <ProductFigure productId={product.id} name={product.name} />
        <div className="answer">
          <h2>{title}</h2>
          <p className="lead">{words}</p>
          <p className="note">As our list has it, before delivery and any tax that is added.</p>
          {advises && (
            <p>
              <Link to="/catalog/price-list/$productId" params={{ productId: product.id }}>
                Its place in our price list
              </Link>
            </p>
          )}
        </div>
      </div>
      <section aria-labelledby="outlook-head" className="outlook">
        <h2 id="outlook-head">What to expect</h2>
        <p>
          Nothing is reckoned here: our own list says itself when a sale comes, and what members see at other stores is not what things cost
          here. A watch tells when the price is at or under what you name.
        </p>
      </section>
    </>
  )
}
