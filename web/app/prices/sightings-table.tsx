import { useState, type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { SightingRow } from '../../../core/pricing/record.ts'
import { isAccepted } from '../../../core/pricing/sighting.ts'
import { RuledTable } from '../parts/ruled-table.tsx'
import { useCurrency, usePerson, useToday } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { sightingColumns } from './sighting-columns.tsx'
import { useSightingAct } from './use-sighting-act.ts'
import { WithdrawDialog } from './withdraw-dialog.tsx'

/** Every sighting behind the figures, newest first; what waits is hatched and says why. */
export function SightingsTable({ sightings }: { sightings: readonly SightingRow[] }): ReactElement {
  const currencyOf = useStoreCurrency()
  const home = useCurrency()
  const person = usePerson()
  const act = useSightingAct()
  const [asked, setAsked] = useState<SightingRow | null>(null)
  const columns = sightingColumns({
    currencyOf,
    home,
    thisYear: yearOf(useToday()),
    personId: person.id,
    busyId: act.isPending ? act.variables.id : null,
    errorAt: (id) => (!asked && act.variables?.id === id ? act.error : null),
    onAct: (id, name) => act.mutate({ id, act: name }),
    onWithdraw: setAsked,
  })
  return (
    <>
      <RuledTable
        caption="Sightings, newest first"
        columns={columns}
        rows={sightings}
        rowKey={({ id }) => id}
        isHeld={(row) => !isAccepted(row)}
      />
      <WithdrawDialog
        what={asked && `${sayMoney(asked.priceMinor, currencyOf(asked.storeId), { home })} at ${asked.storeName}`}
        busy={act.isPending}
        error={act.error}
        onClose={() => setAsked(null)}
        onWithdraw={() => asked && act.mutate({ id: asked.id, act: 'withdraw' }, { onSuccess: () => setAsked(null) })}
      />
    </>
  )
}
