import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { Screen } from '../parts/screen.tsx'
import { usePerson } from '../session/session.ts'
import { CurrentImport } from './current-import.tsx'
import { ExportForm } from './export-form.tsx'
import { ImportForm } from './import-form.tsx'
import { PastImports } from './past-imports.tsx'
import '../catalog/catalog.css'
import './exchange.css'

/** Files in and out, for a manager: what is read is tried first, and written all at once or not at all. */
export function ExchangeScreen(): ReactElement {
  const { role } = usePerson()
  const [shown, setShown] = useState<string | null>(null)
  const [started, setStarted] = useState<string | null>(null)
  const onStarted = (id: string): void => {
    setStarted(id)
    setShown(id)
  }
  const above = <Link to="/catalog">Catalog</Link>
  if (role !== 'manager')
    return (
      <Screen title="Import and export" above={above}>
        <p>Only a manager imports and exports. Ask one to do it.</p>
      </Screen>
    )
  return (
    <Screen
      title="Import and export"
      above={above}
      below="A file is tried first. With a single fault nothing of it is written; without one, all of it is."
    >
      <div className="exchange">
        <ImportForm onStarted={onStarted} />
        <ExportForm />
      </div>
      {shown !== null && <CurrentImport key={shown} id={shown} started={shown === started} />}
      <PastImports shown={shown} onShow={setShown} />
    </Screen>
  )
}
