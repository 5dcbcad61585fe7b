import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { Told } from '../parts/told.tsx'
import { useInstall, usePerson } from '../session/session.ts'
import { storesQuery } from '../stores/stores-query.ts'

/** What keeps the list from being used: without a store of one's own there is no tax and delivery to go with the prices. */
export function OwnStoreTold(): ReactElement | null {
  const { mode } = useInstall()
  if (mode === 'club')
    return (
      <Told kind="note" title="This place is run as a club">
        <p>Quotes are made of what members saw. The list is kept, and used once the settings say that this is a store.</p>
      </Told>
    )
  return <OwnStoreMissing />
}

/** The same beside what needs a price; nothing in a club, or where a store is marked. */
export function OwnStoreMissing(): ReactElement | null {
  const { mode } = useInstall()
  const stores = useQuery({ ...storesQuery, enabled: mode === 'store' })
  const manages = usePerson().role === 'manager'
  if (mode === 'club' || !stores.data || stores.data.some(({ own, archived }) => own && !archived)) return null
  return (
    <Told kind="warn" title="No store is marked as our own">
      <p>
        Until one is, no quote has a price and none can be issued: the list does not say what tax and delivery go with it.{' '}
        {manages ? 'Mark one under ' : 'A manager marks one under '}
        <Link to="/stores">Stores</Link>.
      </p>
    </Told>
  )
}
