import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { sayDate, yearOf, type CivilDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { ListedPrice } from '../../../core/pricing/listed-price.ts'
import { SaleSign } from '../parts/prices.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { useCurrency, useToday } from '../session/session.ts'
import { sayInStock, sayStock } from './listed-words.ts'

/** The board of a place that is a store: what its own list asks, one row a product. */
export function ListedBoard({ listed }: { listed: readonly ListedPrice[] }): ReactElement {
  const [currency, today] = [useCurrency(), useToday()]
  return (
    <>
      <RuledTable
        caption="What our list asks today"
        columns={columnsOf(currency, today)}
        rows={listed}
        rowKey={({ productId }) => productId}
      />
      <p className="note">
        As our price list has them, before delivery and any tax that is added. Prices that were seen at other stores are left out.
      </p>
    </>
  )
}

const columnsOf = (currency: string, today: CivilDate): Array<Column<ListedPrice>> => [
  {
    key: 'product',
    head: 'Product',
    rowHead: true,
    phone: 'lead',
    cell: ({ productId, productName, kind }) => (
      <>
        <Link to="/prices/$productId" params={{ productId }}>
          {productName}
        </Link>{' '}
        <span className="note">{KIND_NAMES[kind]}</span>
      </>
    ),
  },
  { key: 'price', head: 'Price', num: true, phone: 'figure', cell: ({ priceMinor }) => sayMoney(priceMinor, currency) },
  {
    key: 'standing',
    head: 'How it stands',
    phone: 'below',
    cell: (price) => (
      <>
        <Standing price={price} currency={currency} today={today} />
        {price.inStock !== null && <span className="phone-only"> · {sayInStock(price)}</span>}
      </>
    ),
  },
  { key: 'stock', head: 'In stock', cell: sayStock },
  { key: 'from', head: 'In the list from', cell: ({ validFrom }) => <span className="whole">{sayDate(validFrom, yearOf(today))}</span> },
]

function Standing({
  price: { fullMinor, saleUntil },
  currency,
  today,
}: {
  price: ListedPrice
  currency: string
  today: CivilDate
}): ReactElement {
  if (fullMinor === null) return <>regular price</>
  return (
    <>
      <SaleSign until={saleUntil} thisYear={yearOf(today)} /> · full {sayMoney(fullMinor, currency)}
    </>
  )
}
