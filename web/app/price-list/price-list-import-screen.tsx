import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { PRICE_LIST_COLUMNS } from '../../../core/pricing/price-list-csv.ts'
import { CsvEntry } from '../catalog/csv-entry.tsx'
import { ImportOutcome } from '../catalog/import-outcome.tsx'
import { importPriceList } from '../client/price-list.ts'
import { Button } from '../parts/button.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { OwnStoreTold } from './own-store-told.tsx'
import '../catalog/catalog.css'

/** Reads the own price list from a file, tries it without writing, then writes all or nothing. */
export function PriceListImportScreen(): ReactElement {
  const queries = useQueryClient()
  const [csv, setCsv] = useState('')
  const run = useMutation({
    mutationFn: ({ dryRun }: { dryRun: boolean }) => importPriceList({ csv, dryRun }),
    onSuccess: async (report) => {
      if (report.applied) await queries.invalidateQueries({ queryKey: ['price-list'] })
    },
  })
  const report = run.data
  const ready = report !== undefined && report.dryRun && report.faults.length === 0 && report.creates + report.updates > 0
  const empty = csv.trim() === ''
  return (
    <Screen
      title="Import a price list"
      above={<Link to="/catalog/price-list">Price list</Link>}
      below="Rows are tried first; nothing is written while a single one has a fault."
    >
      <OwnStoreTold />
      <div className="form">
        <details className="column-guide" open>
          <summary>Columns of the file, in any order</summary>
          <dl className="rows">
            {PRICE_LIST_COLUMNS.map(({ heading, required, help }) => (
              <div key={heading}>
                <dt>{required ? `${heading} (needed)` : heading}</dt>
                <dd>{help}</dd>
              </div>
            ))}
          </dl>
        </details>
        <CsvEntry
          csv={csv}
          onChange={(text) => {
            setCsv(text)
            run.reset()
          }}
        />
        <ErrorNotice error={run.error} />
        {report && <ImportOutcome report={report} />}
        <p className="acts">
          <Button look={ready ? 'outlined' : 'main'} busy={run.isPending} off={empty} onClick={() => run.mutate({ dryRun: true })}>
            Try it, write nothing
          </Button>
          {ready && (
            <Button look="main" busy={run.isPending} onClick={() => run.mutate({ dryRun: false })}>
              Write {report.creates} new and {report.updates} changed
            </Button>
          )}
          {empty && <span className="reason">Choose a file or paste rows first.</span>}
        </p>
      </div>
    </Screen>
  )
}
