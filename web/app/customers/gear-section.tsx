import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { SLOT_PLAIN_NAMES } from '../../../core/catalog/kinds.ts'
import type { OwnedLine } from '../../../core/quote/draft.ts'
import type { CustomerView } from '../client/customers.ts'
import { getPriceViews } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Empty, ErrorNotice } from '../parts/states.tsx'
import { changeGear } from './change-gear.ts'

/** What they have at home already; offered to each build of a new quote. */
export function GearSection({ view }: { view: CustomerView }): ReactElement {
  const queries = useQueryClient()
  const nameOf = useNames(view.gear)
  const remove = useMutation({
    mutationFn: (id: string) => changeGear(view.id, (gear) => gear.filter((one) => one.id !== id)),
    onSettled: () => queries.invalidateQueries({ queryKey: ['customers'] }),
  })
  const columns: ReadonlyArray<Column<OwnedLine>> = [
    {
      key: 'what',
      head: 'What',
      rowHead: true,
      phone: 'lead',
      cell: (line) => (line.quantity > 1 ? `${line.quantity} × ${nameOf(line)}` : nameOf(line)),
    },
    { key: 'slot', head: 'For', phone: 'below', cell: (line) => SLOT_PLAIN_NAMES[line.slot] },
    {
      key: 'act',
      head: 'Change',
      phone: 'state',
      cell: (line) => (
        <Button small look="plain" busy={remove.isPending} onClick={() => remove.mutate(line.id)}>
          Remove<span className="sr"> {nameOf(line)}</span>
        </Button>
      ),
    },
  ]
  return (
    <section aria-labelledby="their-gear">
      <div className="sechead">
        <h2 id="their-gear">Owned gear</h2>
      </div>
      {view.gear.length === 0 && <Empty>Nothing noted. A slot answered “already owned” in a quote can be kept here.</Empty>}
      {view.gear.length > 0 && <RuledTable caption="Owned gear" columns={columns} rows={view.gear} rowKey={(line) => line.id} />}
      <ErrorNotice error={remove.error} />
    </section>
  )
}

function useNames(gear: readonly OwnedLine[]): (line: OwnedLine) => string {
  const ids = gear.flatMap((line) => line.productId ?? [])
  const found = useQuery({ queryKey: ['price-views', ids], queryFn: () => getPriceViews(ids), enabled: ids.length > 0 })
  return (line) =>
    line.productId === null
      ? line.description
      : (found.data?.products.find((product) => product.id === line.productId)?.name ?? 'a product of the catalog')
}
