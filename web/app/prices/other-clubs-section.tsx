import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { OtherClubRow } from '../../../core/other-clubs/other-club.ts'
import { listOtherClubPrices } from '../client/other-clubs.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { useCurrency } from '../session/session.ts'
import { CONDITION_WORDS } from './sighting-words.ts'

/** What other clubs told of a product; nothing where no club told anything. */
export function OtherClubsSection({ productId, asOf }: { productId: string; asOf: string }): ReactElement | null {
  const home = useCurrency()
  const told = useQuery({ queryKey: ['other-club-prices', productId], queryFn: () => listOtherClubPrices(productId) })
  if (!told.data || told.data.length === 0) return null
  const columns: Array<Column<OtherClubRow>> = [
    { key: 'store', head: 'Store', rowHead: true, phone: 'lead', cell: ({ storeName }) => storeName },
    {
      key: 'price',
      head: 'Price',
      num: true,
      phone: 'figure',
      cell: ({ priceMinor, currency }) => sayMoney(priceMinor, currency, { home }),
    },
    {
      key: 'seen',
      head: 'Seen',
      phone: 'below',
      cell: ({ seenOn, condition, lastDay, storeId }) =>
        [
          `${sayDate(seenOn, yearOf(asOf))}, ${CONDITION_WORDS[condition]}${lastDay ? ` to ${sayDate(lastDay, yearOf(asOf))}` : ''}`,
          storeId === null ? 'not a store of ours' : '',
        ]
          .filter(Boolean)
          .join(' · '),
    },
    {
      key: 'club',
      head: 'Told by',
      phone: 'state',
      cell: ({ clubName }) => clubName,
    },
  ]
  return (
    <section aria-labelledby="other-clubs-head">
      <div className="sechead">
        <h2 id="other-clubs-head">Seen by other clubs</h2>
        <p className="quiet">It counts in a build only where your own members saw nothing, and in no figure above.</p>
      </div>
      <RuledTable
        caption="Seen by other clubs"
        columns={columns}
        rows={told.data}
        rowKey={(row) => `${row.clubName} ${row.storeName} ${row.seenOn} ${row.condition} ${row.priceMinor}`}
      />
    </section>
  )
}
