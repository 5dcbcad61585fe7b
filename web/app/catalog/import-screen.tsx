import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { KIND_NAMES, KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import { importProducts, templateAddress } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { SelectField } from '../parts/choice-fields.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { ColumnGuide } from './column-guide.tsx'
import { CsvEntry } from './csv-entry.tsx'
import { ImportOutcome } from './import-outcome.tsx'
import './catalog.css'

/** Reads a file or pasted rows, tries them without writing, then writes all or nothing. */
export function ImportScreen(): ReactElement {
  const queries = useQueryClient()
  const [kind, setKind] = useState<Kind>('tank')
  const [csv, setCsv] = useState('')
  const run = useMutation({
    mutationFn: ({ dryRun }: { dryRun: boolean }) => importProducts({ kind, csv, dryRun }),
    onSuccess: async (report) => {
      if (report.applied) await queries.invalidateQueries({ queryKey: ['products'] })
    },
  })
  const report = run.data
  const ready = report !== undefined && report.dryRun && report.faults.length === 0 && report.creates + report.updates > 0
  const empty = csv.trim() === ''
  return (
    <Screen
      title="Import products"
      above={<Link to="/catalog">Catalog</Link>}
      below="Rows are tried first; nothing is written while a single one has a fault."
    >
      <div className="form">
        <SelectField
          label="Kind of every row"
          value={kind}
          options={KINDS.map((value) => ({ value, label: KIND_NAMES[value] }))}
          onChange={(next) => {
            if (next) setKind(next)
            run.reset()
          }}
          help={
            <a href={templateAddress(kind)} download={`driploop-${kind}.csv`}>
              Template for {KIND_NAMES[kind].toLowerCase()}, with its columns and an example
            </a>
          }
        />
        <ColumnGuide kind={kind} />
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
