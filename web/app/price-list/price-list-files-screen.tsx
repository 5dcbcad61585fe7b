import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { CurrentImport } from '../exchange/current-import.tsx'
import { ExportForm } from '../exchange/export-form.tsx'
import { ImportForm } from '../exchange/import-form.tsx'
import { PastImports } from '../exchange/past-imports.tsx'
import { Screen } from '../parts/screen.tsx'
import { usePerson } from '../session/session.ts'
import { OwnStoreTold } from './own-store-told.tsx'
import '../catalog/catalog.css'
import '../exchange/exchange.css'

/** The own price list from a file and as a file, for a manager. */
export function PriceListFilesScreen(): ReactElement {
  const { role } = usePerson()
  const [shown, setShown] = useState<string | null>(null)
  const [started, setStarted] = useState<string | null>(null)
  const onStarted = (id: string): void => {
    setStarted(id)
    setShown(id)
  }
  const above = <Link to="/catalog/price-list">Price list</Link>
  if (role !== 'manager')
    return (
      <Screen title="Price list as a file" above={above}>
        <p>Only a manager imports and exports. Ask one to do it.</p>
      </Screen>
    )
  return (
    <Screen
      title="Price list as a file"
      above={above}
      below="A file is tried first. With a single fault nothing of it is written; without one, all of it is."
    >
      <OwnStoreTold />
      <div className="exchange">
        <ImportForm only="price_list" onStarted={onStarted} />
        <ExportForm only="price_list" />
      </div>
      {shown !== null && <CurrentImport key={shown} id={shown} started={shown === started} />}
      <PastImports only="price_list" shown={shown} onShow={setShown} />
    </Screen>
  )
}
