import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Told } from '../parts/told.tsx'
import { useInstall } from '../session/session.ts'
import { storesQuery } from '../stores/stores-query.ts'

/** What keeps the list from being used: without a store of one's own there is no tax and delivery to go with the prices. */
export function OwnStoreTold(): ReactElement | null {
  const { mode } = useInstall()
  const stores = useQuery(storesQuery)
  if (mode === 'club')
    return (
      <Told kind="note" title="This place is run as a club">
        <p>Quotes are made of what members saw. The list is kept, and used once the settings say that this is a store.</p>
      </Told>
    )
  if (!stores.data || stores.data.some(({ own }) => own)) return null
  return (
    <Told kind="warn" title="No store is marked as our own">
      <p>
        Until one is, no quote has a price: the list does not say what tax and delivery go with it. Mark one under{' '}
        <Link to="/stores">Stores</Link>.
      </p>
    </Told>
  )
}
