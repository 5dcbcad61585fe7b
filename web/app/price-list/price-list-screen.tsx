import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import { sayDate, yearOf, type CivilDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { priceInForce, saleOn, type ListPrice } from '../../../core/pricing/price-list.ts'
import { listPriceList, type PriceListEntry } from '../client/price-list.ts'
import { TickField } from '../parts/choice-fields.tsx'
import { MoreRows } from '../parts/more-rows.tsx'
import { SaleSign } from '../parts/prices.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { SearchField } from '../parts/search-field.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useCurrency, usePerson } from '../session/session.ts'
import { OwnStoreTold } from './own-store-told.tsx'

const PAGE = 100

const FILES = (
  <Link to="/catalog/price-list/import" className="btn main">
    Import or export
  </Link>
)

/** What the own store asks for each product, with its number and how many there are. */
export function PriceListScreen(): ReactElement {
  const [q, setQ] = useState<string | undefined>()
  const [open, setOpen] = useState(false)
  const [shown, setShown] = useState(PAGE)
  const manages = usePerson().role === 'manager'
  const currency = useCurrency()
  const found = useQuery({
    queryKey: ['price-list', q, open, shown],
    queryFn: () => listPriceList({ q, ...(open && { listed: false }), limit: shown }),
    placeholderData: keepPreviousData,
  })
  const items = found.data?.items ?? []
  return (
    <Screen
      title="Price list"
      above={<Link to="/catalog">Catalog</Link>}
      below="Our own prices. In store mode every quote is made of them, and they do not age."
      actions={manages ? FILES : undefined}
    >
      <OwnStoreTold />
      <search className="filters form-row">
        <SearchField label="Search by name, barcode or stock number" value={q} onChange={setQ} />
        <TickField label="Without a price" checked={open} onChange={setOpen} />
      </search>
      <ErrorNotice error={found.error} onRetry={() => void found.refetch()} />
      {found.isPending && <LoadingRows rows={10} what="the price list" />}
      {found.data && items.length === 0 && (
        <Empty>{open ? 'Every product has a price.' : q ? 'No product matches.' : 'The catalog is empty. Products come first.'}</Empty>
      )}
      {items.length > 0 && (
        <RuledTable
          caption="Price list"
          columns={columnsOf(found.data?.today ?? '', currency)}
          rows={items}
          rowKey={({ productId }) => productId}
        />
      )}
      {items.length > 0 && (
        <MoreRows
          shown={items.length}
          total={found.data?.total ?? 0}
          page={PAGE}
          busy={found.isFetching}
          onMore={() => setShown(shown + PAGE)}
        />
      )}
    </Screen>
  )
}

/** What is asked on a day; where that is a sale, with the full price under it. */
function Asked({ price, today, currency }: { price: ListPrice; today: CivilDate; currency: string }): ReactElement {
  const say = (minor: number): string => sayMoney(minor, currency, { symbol: false })
  const sale = saleOn(price, today)
  if (sale === undefined) return <>{say(price.priceMinor)}</>
  return (
    <>
      {say(sale.priceMinor)} <SaleSign until={sale.until} thisYear={yearOf(today)} />
      <br />
      <span className="quiet">full {say(price.priceMinor)}</span>
    </>
  )
}

function columnsOf(today: CivilDate, currency: string): Array<Column<PriceListEntry>> {
  const day = (date: CivilDate): string => sayDate(date, yearOf(today))
  const inForce = ({ prices }: PriceListEntry) => priceInForce(prices, today)
  return [
    {
      key: 'name',
      head: 'Product',
      rowHead: true,
      phone: 'lead',
      cell: ({ productId, name }) => (
        <Link to="/catalog/price-list/$productId" params={{ productId }}>
          {name}
        </Link>
      ),
    },
    { key: 'kind', head: 'Kind', cell: ({ kind }) => KIND_NAMES[kind] },
    { key: 'number', head: 'Stock number', phone: 'below', cell: ({ stockNumber }) => stockNumber ?? '' },
    {
      key: 'stock',
      head: 'In stock',
      num: true,
      phone: 'state',
      cell: ({ stockCount }) => (stockCount === null ? <span className="quiet">not counted</span> : stockCount),
    },
    {
      key: 'price',
      head: `Price, ${currency}`,
      num: true,
      phone: 'figure',
      cell: (entry) => {
        const price = inForce(entry)
        return price ? <Asked price={price} today={today} currency={currency} /> : <span className="quiet">no price</span>
      },
    },
    {
      key: 'from',
      head: 'Valid from',
      cell: (entry) => {
        const price = inForce(entry)
        return price ? day(price.validFrom) : ''
      },
    },
    {
      key: 'next',
      head: 'Then',
      cell: ({ prices }) => {
        const next = prices.find(({ validFrom }) => validFrom > today)
        return next ? `${sayMoney(next.priceMinor, currency, { symbol: false })} from ${day(next.validFrom)}` : ''
      },
    },
  ]
}
